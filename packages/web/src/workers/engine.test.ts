import type { PlacementAnswer, Unit } from '@gripbook/engine'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { Asked } from './asked.ts'
import type { EngineWorker } from './asking.ts'
import { startEngine } from './engine.ts'

const unit = (name: string): Unit => ({ gripbook: 'unit/1', name, faces: [] })
const answer: PlacementAnswer = { gripbook: 'placement/1', faces: [] }

let workers: (EngineWorker<PlacementAnswer> & { asked: Asked[]; ended: boolean })[]

function make(): EngineWorker<PlacementAnswer> {
  const worker = {
    asked: [] as Asked[],
    ended: false,
    onmessage: null as EngineWorker<PlacementAnswer>['onmessage'],
    onerror: null as EngineWorker['onerror'],
    postMessage: (asked: Asked) => worker.asked.push(asked),
    terminate: () => {
      worker.ended = true
    },
  }
  workers.push(worker as unknown as (typeof workers)[number])
  return worker as unknown as EngineWorker<PlacementAnswer>
}

const reply = (worker: (typeof workers)[number], number: number) =>
  worker.onmessage!({ data: { number, ok: true, answer } } as MessageEvent)

beforeEach(() => {
  workers = []
  vi.useFakeTimers({ toFake: ['performance'] })
})
afterEach(() => {
  vi.useRealTimers()
})

test('one question at a time; of those that wait only the newest is asked', async () => {
  const engine = startEngine(make)
  const [first, second, third] = [engine.ask(unit('1')), engine.ask(unit('2')), engine.ask(unit('3'))]
  expect(await second).toBeNull()
  expect(workers[0]!.asked.map((asked) => asked.unit.name)).toEqual(['1'])
  reply(workers[0]!, 1)
  expect(await first).toEqual({ ok: true, answer })
  expect(workers[0]!.asked.map((asked) => asked.unit.name)).toEqual(['1', '3'])
  reply(workers[0]!, 3)
  expect(await third).toEqual({ ok: true, answer })
  expect(workers).toHaveLength(1)
})

test('a question that takes long is given up with its worker when a newer one comes', async () => {
  const engine = startEngine(make)
  const long = engine.ask(unit('long'))
  vi.advanceTimersByTime(1_000)
  const next = engine.ask(unit('next'))
  expect(await long).toBeNull()
  expect(workers[0]!.ended).toBe(true)
  expect(workers[1]!.asked.map((asked) => asked.unit.name)).toEqual(['next'])
  reply(workers[1]!, 2)
  expect(await next).toEqual({ ok: true, answer })
})

test('stopping answers whoever waits, and the next question starts anew', async () => {
  const engine = startEngine(make)
  const [under, waiting] = [engine.ask(unit('a')), engine.ask(unit('b'))]
  engine.stop()
  expect([await under, await waiting]).toEqual([null, null])
  expect(workers[0]!.ended).toBe(true)
  const again = engine.ask(unit('c'))
  reply(workers[1]!, 3)
  expect(await again).toEqual({ ok: true, answer })
})

test('a worker that does not start is told, and the next question has a worker of its own', async () => {
  const engine = startEngine(make)
  const asked = engine.ask(unit('a'))
  workers[0]!.onerror!({ message: 'not found' } as ErrorEvent)
  expect(await asked).toEqual({ ok: false, why: 'not found' })
  void engine.ask(unit('b'))
  expect(workers).toHaveLength(2)
})
