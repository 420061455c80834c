import { expect, test } from 'vitest'
import { boltBackedOut } from '../events/boltBackedOut.ts'
import { faceDescribed } from '../events/faceDescribed.ts'
import { handStarted } from '../events/handStarted.ts'
import { holeMarked } from '../events/holeMarked.ts'
import { orderChosen } from '../events/orderChosen.ts'
import { passTorqued } from '../events/passTorqued.ts'
import { resistanceCleared } from '../events/resistanceCleared.ts'
import { resistanceFelt } from '../events/resistanceFelt.ts'
import { runDown } from '../events/runDown.ts'
import { snugged } from '../events/snugged.ts'
import { turnsCounted } from '../events/turnsCounted.ts'
import { stopsFor } from './stopsFor.ts'
import { type Workbench, workbench } from './testing/workbench.ts'

const face = 'pan'
const HOLES = ['1', '2', '3']
const at = (hole: string) => ({ face, hole })
const pass = (hole: string, number: number, final = false) => passTorqued({ ...at(hole), pass: number, final })

/** A face with three holes; what is given of each hole is added. */
function pan(more: { snug?: boolean; holes?: Record<string, { visit?: number; locates?: boolean }> } = {}): Workbench {
  const bench = workbench()
  bench.does(0, faceDescribed({ face, torque: 10, ...(more.snug === undefined ? {} : { snug: more.snug }) }))
  for (const hole of HOLES) bench.does(0, holeMarked({ ...at(hole), thread: 'M6', ...more.holes?.[hole] }))
  return bench
}

const stops = (bench: Workbench, happening: { type: string; body: unknown }) =>
  stopsFor(bench.folded(), happening).map(({ gate, why }) => ({ gate, ...why }))

test('no bolt is run down, snugged or torqued before all bolts of the face are started by hand', () => {
  const bench = pan()
  for (const hole of ['1', '2']) bench.does(0, handStarted(at(hole)))
  const notStarted = [{ gate: 'hand-start', code: 'not-hand-started', holes: ['3'] }]
  for (const happening of [
    runDown(at('1')),
    snugged(at('1')),
    turnsCounted({ ...at('1'), turns: 8, seated: true }),
    pass('1', 1),
  ])
    expect(stops(bench, happening), happening.type).toEqual(notStarted)
  expect(stops(bench, handStarted(at('3')))).toEqual([])
  bench.does(0, handStarted(at('3')))
  expect(stops(bench, runDown(at('1')))).toEqual([])
})

test('a stop is at the hole that the hands are at', () => {
  expect(stopsFor(pan().folded(), runDown(at('2')))[0]).toMatchObject({ gate: 'hand-start', face, hole: '2' })
})

test('turns that ended before the head seated are a report and never stopped', () => {
  expect(stops(pan(), turnsCounted({ ...at('1'), turns: 3, seated: false }))).toEqual([])
})

test('dowel places are started first', () => {
  const bench = pan({ holes: { 2: { locates: true } } })
  expect(stops(bench, handStarted(at('1')))).toEqual([{ gate: 'hand-start', code: 'locating-first', holes: ['2'] }])
  expect(stops(bench, handStarted(at('2')))).toEqual([])
  bench.does(0, handStarted(at('2')))
  expect(stops(bench, handStarted(at('1')))).toEqual([])
})

test('a bolt that is backed out has to be started again before another is run down', () => {
  const bench = pan()
  for (const hole of HOLES) bench.does(0, handStarted(at(hole)))
  bench.does(0, boltBackedOut(at('2')))
  expect(stops(bench, runDown(at('1')))).toEqual([{ gate: 'hand-start', code: 'not-hand-started', holes: ['2'] }])
})

test('no pass before the pass before is complete; a final pass counts for all before it', () => {
  const bench = pan()
  for (const hole of HOLES) bench.does(0, handStarted(at(hole)))
  expect(stops(bench, pass('1', 1))).toEqual([])
  bench.does(0, pass('1', 1))
  bench.does(0, pass('2', 1, true))
  expect(stops(bench, pass('1', 2))).toEqual([
    { gate: 'pass before', code: 'pass-not-complete', pass: 1, holes: ['3'] },
  ])
  bench.does(0, pass('3', 1))
  expect(stops(bench, pass('1', 2))).toEqual([])
})

test('a face that is tightened from snug: run down, then snug, then the first pass', () => {
  const bench = pan({ snug: true })
  for (const hole of HOLES) bench.does(0, handStarted(at(hole)))
  for (const hole of ['1', '2']) bench.does(0, runDown(at(hole)))
  expect(stops(bench, snugged(at('1')))).toEqual([{ gate: 'pass before', code: 'not-run-down', holes: ['3'] }])
  bench.does(0, runDown(at('3')))
  expect(stops(bench, snugged(at('1')))).toEqual([])
  for (const hole of ['1', '2']) bench.does(0, snugged(at(hole)))
  expect(stops(bench, pass('1', 1))).toEqual([{ gate: 'pass before', code: 'not-snug', holes: ['3'] }])
  bench.does(0, snugged(at('3')))
  expect(stops(bench, pass('1', 1))).toEqual([])
})

test('a face that is not tightened from snug goes from hand-started to the first pass', () => {
  const bench = pan({ snug: false })
  for (const hole of HOLES) bench.does(0, handStarted(at(hole)))
  expect(stops(bench, pass('1', 1))).toEqual([])
})

test('bolts of a later visit wait for the first, and do not keep it from going on', () => {
  const bench = pan({ holes: { 3: { visit: 2 } } })
  for (const hole of ['1', '2']) bench.does(0, handStarted(at(hole)))
  expect(stops(bench, runDown(at('1')))).toEqual([])
  expect(stops(bench, handStarted(at('3')))).toEqual([
    { gate: 'pass before', code: 'visit-not-complete', visit: 1, holes: ['1', '2'] },
  ])
  for (const hole of ['1', '2']) bench.does(0, pass(hole, 1, true))
  expect(stops(bench, handStarted(at('3')))).toEqual([])
  bench.does(0, handStarted(at('3')))
  expect(stops(bench, pass('3', 1, true))).toEqual([])
})

test('by an order the passes are those of the order, and a final torque in an early one skips what lies between', () => {
  const bench = pan()
  const passes = [
    { share: 0.5, sequence: HOLES },
    { share: 1, sequence: HOLES },
  ]
  bench.does(0, orderChosen({ face, name: 'the manual', passes }))
  for (const hole of HOLES) bench.does(0, handStarted(at(hole)))
  expect(stops(bench, pass('1', 1))).toEqual([])
  expect(stops(bench, pass('1', 1, true))).toEqual([
    { gate: 'pass before', code: 'pass-not-complete', pass: 1, holes: HOLES },
  ])
})

test('an order that comes back to the first bolts in the second visit keeps neither visit from going on', () => {
  const bench = pan({ holes: { 3: { visit: 2 } } })
  const passes = [
    { share: 0.5, sequence: ['1', '2'] },
    { share: 0.5, sequence: ['3'] },
    { share: 1, sequence: HOLES },
  ]
  bench.does(0, orderChosen({ face, name: 'the manual', passes }))
  for (const hole of ['1', '2']) bench.does(0, handStarted(at(hole)))
  for (const hole of ['1', '2']) {
    expect(stops(bench, pass(hole, 1))).toEqual([])
    bench.does(0, pass(hole, 1))
  }
  for (const happening of [handStarted(at('3')), pass('3', 2), pass('1', 3, true)]) {
    expect(stops(bench, happening)).toEqual([])
    bench.does(0, happening)
  }
})

test('resistance stops every bolt of the face until it is cleared', () => {
  const bench = pan()
  for (const hole of HOLES) bench.does(0, handStarted(at(hole)))
  bench.does(0, resistanceFelt({ ...at('2'), feel: 'gritty' }))
  for (const happening of [handStarted(at('1')), runDown(at('1')), pass('3', 1)])
    expect(stops(bench, happening), happening.type).toEqual([{ gate: 'resistance', code: 'resistance', holes: ['2'] }])
  bench.does(0, resistanceCleared({ ...at('2'), found: 'sealant in the thread' }))
  expect(stops(bench, runDown(at('1')))).toEqual([])
})

test('resistance that one cleared while another felt more of it stands', () => {
  const bench = pan()
  for (const hole of HOLES) bench.does(0, handStarted(at(hole)))
  bench.does(0, resistanceFelt({ ...at('2'), feel: 'gritty' }))
  bench.tell(1)
  bench.does(0, resistanceCleared({ ...at('2'), found: 'sealant' }))
  bench.does(1, resistanceFelt({ ...at('2'), feel: 'springy' }))
  expect(stops(bench, runDown(at('1')))).toEqual([{ gate: 'resistance', code: 'resistance', holes: ['2'] }])
})

test('a face or hole that nobody described stops the hands at what is not started, and never fails', () => {
  const folded = workbench().folded()
  for (const name of ['pan', 'constructor', 'toString'])
    expect(stopsFor(folded, runDown({ face: name, hole: name })).map(({ why }) => why.code)).toEqual([
      'not-hand-started',
    ])
})
