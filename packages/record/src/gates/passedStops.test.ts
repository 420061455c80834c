import { expect, test } from 'vitest'
import { boltPlaced } from '../events/boltPlaced.ts'
import { faceDescribed } from '../events/faceDescribed.ts'
import { gateOverridden } from '../events/gateOverridden.ts'
import { handStarted } from '../events/handStarted.ts'
import { holeMarked } from '../events/holeMarked.ts'
import { passTorqued } from '../events/passTorqued.ts'
import { resistanceFelt } from '../events/resistanceFelt.ts'
import { runDown } from '../events/runDown.ts'
import { undone } from '../events/undone.ts'
import { fold } from '../fold.ts'
import { UNIT } from '../testing/bench.ts'
import { passedStops } from './passedStops.ts'
import { type Workbench, workbench } from './testing/workbench.ts'

const face = 'pan'
const at = (hole: string) => ({ face, hole })
const override = (hole?: string) =>
  gateOverridden({ gate: 'hand-start', face, ...(hole === undefined ? {} : { hole }), reason: 'the dowel holds it' })

/** Two holes, the first started by hand; both devices know it. */
function pan(): Workbench {
  const bench = workbench()
  bench.does(0, faceDescribed({ face, torque: 10 }))
  for (const hole of ['1', '2']) bench.does(0, holeMarked({ ...at(hole), thread: 'M6' }))
  bench.does(0, handStarted(at('1')))
  bench.tell(1)
  return bench
}

const passed = (bench: Workbench) =>
  passedStops(bench.folded()).map(({ event, stop, override: by }) => [event, stop.why.code, by?.event ?? 'silent'])

test('[GA1] an entry that passes a stop without an override is told as passed silently', () => {
  const bench = pan()
  const { id } = bench.does(0, runDown(at('1')))
  expect(passed(bench)).toEqual([[id, 'not-hand-started', 'silent']])
})

test('[GA1] an override covers the next entry that passes the stop, and no other', () => {
  const bench = pan()
  const said = bench.does(0, override('1'))
  const first = bench.does(0, runDown(at('1')))
  const again = bench.does(0, runDown(at('1')))
  expect(passed(bench)).toEqual([
    [first.id, 'not-hand-started', said.id],
    [again.id, 'not-hand-started', 'silent'],
  ])
  expect(passedStops(bench.folded())[0]!.override).toEqual({
    event: said.id,
    who: 'ann',
    reason: 'the dowel holds it',
  })
})

test('an override of another hole, of the whole face or of another gate covers nothing here', () => {
  const bench = pan()
  bench.does(0, override('2'))
  bench.does(0, override())
  bench.does(0, gateOverridden({ gate: 'resistance', ...at('1'), reason: 'felt nothing' }))
  const { id } = bench.does(0, runDown(at('1')))
  expect(passed(bench)).toEqual([[id, 'not-hand-started', 'silent']])
})

test('an override that the device had not heard of, or that came afterwards, covers nothing', () => {
  const bench = pan()
  bench.does(0, override('1'))
  const { id } = bench.does(1, runDown(at('1')))
  bench.does(1, override('1'))
  expect(passed(bench)).toEqual([[id, 'not-hand-started', 'silent']])
  const later = pan()
  const said = later.does(0, override('1'))
  later.tell(1)
  const covered = later.does(1, runDown(at('1')))
  expect(passed(later)).toEqual([[covered.id, 'not-hand-started', said.id]])
})

test('one override covers all reasons of its gate, and every gate needs its own', () => {
  const bench = pan()
  bench.does(0, resistanceFelt({ ...at('2'), feel: 'gritty' }))
  const said = bench.does(0, override('1'))
  const { id } = bench.does(0, runDown(at('1')))
  expect(passed(bench)).toEqual([
    [id, 'resistance', 'silent'],
    [id, 'not-hand-started', said.id],
  ])
})

test('undone entries pass nothing, override nothing and are no step', () => {
  const bench = pan()
  const started = bench.does(0, handStarted(at('2')))
  const down = bench.does(0, runDown(at('1')))
  expect(passed(bench)).toEqual([])
  bench.does(0, undone({ event: started.id }))
  expect(passed(bench)).toEqual([[down.id, 'not-hand-started', 'silent']])
  bench.does(0, undone({ event: down.id }))
  expect(passed(bench)).toEqual([])
  const said = bench.does(0, override('1'))
  const again = bench.does(0, runDown(at('1')))
  bench.does(0, undone({ event: said.id }))
  expect(passed(bench)).toEqual([[again.id, 'not-hand-started', 'silent']])
})

test('of two who work apart each is judged by what his own device knew', () => {
  const bench = pan()
  bench.does(0, handStarted(at('2')))
  const early = bench.does(1, runDown(at('1')))
  expect(passed(bench), 'the other had not heard that all were started').toEqual([
    [early.id, 'not-hand-started', 'silent'],
  ])
  const apart = pan()
  apart.does(0, handStarted(at('2')))
  apart.tell(1)
  apart.does(0, resistanceFelt({ ...at('2'), feel: 'gritty' }))
  apart.does(1, runDown(at('1')))
  expect(passed(apart), 'the other could not know of the resistance').toEqual([])
})

test('calibration is judged by the day of the entry, placement by the answer that is handed in', () => {
  const bench = pan()
  bench.does(0, handStarted(at('2')))
  const tool = { name: 'wrench', calibratedUntil: '2026-02-28' }
  bench.does(0, passTorqued({ ...at('1'), pass: 1, final: true, torque: 10, tool }), { at: '2026-02-28T23:00:00.000Z' })
  const late = bench.does(0, passTorqued({ ...at('2'), pass: 1, final: true, torque: 10, tool }), {
    at: '2026-03-01T08:00:00.000Z',
  })
  const placed = bench.does(0, boltPlaced({ ...at('1'), kind: 'b9' }))
  expect(passed(bench)).toEqual([[late.id, 'out-of-calibration', 'silent']])
  const all = passedStops(bench.folded(), { belongs: { pan: { 1: ['b1'] } } })
  expect(all.map(({ event }) => event)).toEqual([late.id, placed.id])
})

test('a wrench that says its range and deviation in the entry is held to them', () => {
  const bench = pan()
  bench.does(0, handStarted(at('2')))
  const tool = { name: 'wrench', range: [20, 100] as [number, number], deviation: 0.04 }
  const { id } = bench.does(0, passTorqued({ ...at('1'), pass: 1, final: true, torque: 10.5, tool }))
  expect(passed(bench)).toEqual([
    [id, 'out-of-band', 'silent'],
    [id, 'out-of-range', 'silent'],
  ])
})

test('in 10,000 entries of two people who passed no stop none is found', () => {
  const bench = workbench()
  const holes = Array.from({ length: 40 }, (_, i) => String(i))
  bench.does(0, faceDescribed({ face, torque: 10 }))
  for (const hole of holes) bench.does(0, holeMarked({ ...at(hole), thread: 'M6' }))
  bench.tell(1)
  while (bench.made.length < 10_000)
    for (const hole of holes) {
      const device = bench.made.length % 2
      const said = bench.does(device, bench.made.length % 400 < 200 ? handStarted(at(hole)) : runDown(at(hole)))
      bench.tell(1 - device, said)
    }
  const folded = fold(UNIT, bench.made)
  expect(passedStops(folded)).toEqual([])
})
