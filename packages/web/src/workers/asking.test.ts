import type { TighteningProgress, Unit } from '@gripbook/engine'
import { expect, test } from 'vitest'
import type { Asked, TighteningQuestion } from './asked.ts'
import { type EngineWorker, startAsking } from './asking.ts'

const question = (face: string): TighteningQuestion => ({
  what: 'tightening',
  unit: { gripbook: 'unit/1', faces: [] } as Unit,
  face,
  asked: {},
})

type Made = EngineWorker<string> & { asked: Asked[]; ended: boolean }

function bench() {
  const workers: Made[] = []
  const make = (): EngineWorker<string> => {
    const worker: Made = {
      asked: [],
      ended: false,
      onmessage: null,
      onerror: null,
      postMessage: (asked: Asked) => worker.asked.push(asked),
      terminate: () => {
        worker.ended = true
      },
    }
    workers.push(worker)
    return worker
  }
  const tell = (worker: Made, data: object) => worker.onmessage!({ data } as MessageEvent)
  return { workers, make, tell }
}

test('how far it is comes while it works, and only of the question that is asked', async () => {
  const { workers, make, tell } = bench()
  const asking = startAsking<TighteningQuestion, string>(make, 0)
  const heard: TighteningProgress[] = []
  const answer = asking.ask(question('pan'), (progress) => heard.push(progress))
  tell(workers[0]!, { number: 1, progress: { what: 'plate', done: 1 } })
  tell(workers[0]!, { number: 7, progress: { what: 'search', done: 0.5 } })
  tell(workers[0]!, { number: 1, ok: true, answer: 'done' })
  expect(await answer).toEqual({ ok: true, answer: 'done' })
  expect(heard).toEqual([{ what: 'plate', done: 1 }])
})

test('what is known already comes with how far it is', async () => {
  const { workers, make, tell } = bench()
  const asking = startAsking<TighteningQuestion, string>(make, 0)
  const heard: (string | undefined)[] = []
  const answer = asking.ask(question('pan'), (_, soFar) => heard.push(soFar))
  tell(workers[0]!, { number: 1, progress: { what: 'orders', done: 1 } })
  tell(workers[0]!, { number: 1, progress: { what: 'search', done: 0 }, soFar: 'patterns' })
  tell(workers[0]!, { number: 1, ok: true, answer: 'all' })
  expect(await answer).toEqual({ ok: true, answer: 'all' })
  expect(heard).toEqual([undefined, 'patterns'])
})

test('without patience a newer question ends the worker of the older one at once', async () => {
  const { workers, make, tell } = bench()
  const asking = startAsking<TighteningQuestion, string>(make, 0)
  const first = asking.ask(question('pan'))
  const second = asking.ask(question('cover'))
  expect(await first).toBeNull()
  expect(workers.map(({ ended }) => ended)).toEqual([true, false])
  tell(workers[1]!, { number: 2, ok: true, answer: 'done' })
  expect(await second).toEqual({ ok: true, answer: 'done' })
})

test('what was stopped says nothing more, and the next question has a worker of its own', async () => {
  const { workers, make, tell } = bench()
  const asking = startAsking<TighteningQuestion, string>(make, 0)
  const stopped = asking.ask(question('pan'))
  asking.stop()
  expect(await stopped).toBeNull()
  expect(workers[0]!.ended).toBe(true)
  const again = asking.ask(question('pan'))
  tell(workers[1]!, { number: 2, ok: false, why: 'no room' })
  expect(await again).toEqual({ ok: false, why: 'no room' })
})
