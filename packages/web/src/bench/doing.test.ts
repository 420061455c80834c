import {
  boltPlaced,
  faceDescribed,
  fold,
  gateOverridden,
  type Happening,
  handStarted,
  holeMarked,
  partCameOut,
  passedStops,
  passTorqued,
  resistanceFelt,
  runDown,
} from '@gripbook/record'
import { expect, test } from 'vitest'
import { bracketsAt } from './bracket.ts'
import { happeningsOf, stopsAt, withReason } from './doing.ts'
import { benchSteps, nextOf } from './round.ts'
import { told } from './testing/told.ts'

const face = 'pan'
const BEGIN = [
  faceDescribed({ face, torque: 22 }),
  holeMarked({ face, hole: '1', mark: [10, 10], thread: 'M8' }),
  holeMarked({ face, hole: '2', mark: [20, 10], thread: 'M8' }),
  partCameOut({ part: 'clip-1', what: 'clip', face, hole: '1', wayRound: 'latch to the left' }),
  partCameOut({ part: 'bracket-1', what: 'bracket', name: 'Sensor bracket', face, hole: '1' }),
]
const unit = (more: Happening[] = []) => {
  const { id, events } = told([...BEGIN, ...more])
  return fold(id, events)
}

test('one tap at a start: the bolt is placed, what goes under its head is in, and it is started', () => {
  const folded = unit()
  const step = nextOf(benchSteps(folded, face))!
  const brackets = bracketsAt(folded, face, '1')
  expect(brackets.map(({ what }) => what)).toEqual(['bracket', 'clip'])
  const done = happeningsOf(face, step, { kind: 'a', brackets })
  expect(done.map(({ type }) => type)).toEqual(['bolt-placed', 'part-went-in', 'part-went-in', 'hand-started'])
  expect(done[0]!.body.wayRound).toBe('latch to the left')
  const after = unit(done)
  expect(bracketsAt(after, face, '1')).toEqual([])
  expect(nextOf(benchSteps(after, face))?.hole).toBe('2')
})

test('a count of turns with the head seated is itself the running down', () => {
  const started = ['1', '2'].flatMap((hole) => [boltPlaced({ face, hole, kind: 'a' }), handStarted({ face, hole })])
  const step = nextOf(benchSteps(unit(started), face))!
  expect(step.round.what).toBe('run down')
  const counted = happeningsOf(face, step, { turns: 9.5 })
  expect(counted.map(({ type }) => type)).toEqual(['turns-counted'])
  expect(nextOf(benchSteps(unit([...started, ...counted]), face))?.hole).toBe('2')
})

test('a stop is told before anything is written, and a reason goes before each entry that passes it', () => {
  const folded = unit([handStarted({ face, hole: '1' })])
  const entries = [runDown({ face, hole: '1' })]
  expect(stopsAt(folded, entries, {}).map(({ why }) => why)).toEqual([{ code: 'not-hand-started', holes: ['2'] }])
  const with_ = withReason(folded, entries, {}, 'dowels hold it')
  expect(with_.map(({ type }) => type)).toEqual(['gate-overridden', 'run-down'])
  const after = unit([handStarted({ face, hole: '1' }), ...with_])
  expect(passedStops(after).every(({ override }) => override?.reason === 'dowels hold it')).toBe(true)
})

test('nothing that the bench writes passes a stop silently, whatever stands against it', () => {
  const folded = unit([resistanceFelt({ face, hole: '2', feel: 'springy' })])
  const step = benchSteps(folded, face).find(({ final }) => final)!
  const facts = { today: '2026-03-01' }
  const tool = { name: 'Wrench', number: 'W', calibratedUntil: '2026-01-31' }
  const entries = withReason(folded, happeningsOf(face, step, { torque: 40, tool }), facts, 'seen and accepted')
  const gates = entries.flatMap(({ type, body }) => (type === 'gate-overridden' ? [body.gate] : []))
  expect(new Set(gates)).toEqual(
    new Set(['resistance', 'hand-start', 'pass before', 'torque out of band', 'calibration']),
  )
  const after = unit([resistanceFelt({ face, hole: '2', feel: 'springy' }), ...entries])
  expect(passedStops(after).filter(({ override }) => override === undefined)).toEqual([])
})

test('a face is not closed over bolts without their final pass unless somebody says why', () => {
  const folded = unit([passTorqued({ face, hole: '1', pass: 1, final: true })])
  const close = benchSteps(folded, face).at(-1)!
  const entries = happeningsOf(face, close)
  expect(stopsAt(folded, entries, {}).map(({ why }) => why)).toContainEqual({ code: 'hole-not-final', face, hole: '2' })
  expect(withReason(folded, entries, {}, 'x')[0]).toEqual(gateOverridden({ gate: 'closing step', face, reason: 'x' }))
})
