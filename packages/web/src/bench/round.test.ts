import {
  boltBackedOut,
  boltPlaced,
  faceClosed,
  faceDescribed,
  fold,
  type Happening,
  handStarted,
  holeMarked,
  orderChosen,
  passTorqued,
  runDown,
  witnessMarked,
} from '@gripbook/record'
import { expect, test } from 'vitest'
import { benchSteps, nextOf, roundMates, visitsIn } from './round.ts'
import { told } from './testing/told.ts'

const face = 'pan'
const BEGIN = [
  faceDescribed({ face, torque: 22, snug: true }),
  holeMarked({ face, hole: '1', mark: [10, 10], thread: 'M8' }),
  holeMarked({ face, hole: '2', mark: [20, 10], thread: 'M8', locates: true }),
]
const unit = (more: Happening[] = []) => {
  const { id, events } = told([...BEGIN, ...more])
  return fold(id, events)
}
const way = (more: Happening[] = []) => benchSteps(unit(more), face)

test('the hands’ way: locating holes started first, every round over all, the face closed at the end', () => {
  const steps = way()
  expect(steps.slice(0, 2).map(({ hole }) => hole)).toEqual(['2', '1'])
  expect([...new Set(steps.map(({ round }) => round.what))]).toEqual([
    'start',
    'run down',
    'snug',
    'pass',
    'mark',
    'close',
  ])
  expect(visitsIn(steps)).toBe(1)
})

test('placing and starting is one step: done when both are on the record', () => {
  expect(nextOf(way([boltPlaced({ face, hole: '2', kind: 'a' })]))?.hole).toBe('2')
  const started = [boltPlaced({ face, hole: '2', kind: 'a' }), handStarted({ face, hole: '2' })]
  expect(nextOf(way(started))?.hole).toBe('1')
})

test('a bolt that was backed out has to be started again', () => {
  const started = [boltPlaced({ face, hole: '2', kind: 'a' }), handStarted({ face, hole: '2' })]
  const next = nextOf(way([...started, boltBackedOut({ face, hole: '2' })]))
  expect(next).toMatchObject({ hole: '2', placed: true, round: { what: 'start' } })
})

test('passes are counted within their visit and carry what is wanted', () => {
  const chosen = orderChosen({
    face,
    name: 'by hand',
    passes: [
      { share: 0.5, sequence: ['1', '2'] },
      { share: 1, sequence: ['2', '1'] },
    ],
  })
  const passes = way([chosen]).filter(({ round }) => round.what === 'pass')
  expect(passes.map(({ hole, wanted, final, round: { number, of } }) => [hole, wanted, final, number, of])).toEqual([
    ['1', 11, false, 1, 2],
    ['2', 11, false, 1, 2],
    ['2', 22, true, 2, 2],
    ['1', 22, true, 2, 2],
  ])
  expect(roundMates(way([chosen]), passes[0]!).map(({ hole }) => hole)).toEqual(['1', '2'])
})

test('bolts that the order leaves out have passes that are counted by themselves', () => {
  const chosen = orderChosen({ face, name: 'by hand', passes: [{ share: 1, sequence: ['1'] }] })
  const passes = way([chosen]).filter(({ round }) => round.what === 'pass')
  expect(passes.map(({ hole, round: { number, of, apart } }) => [hole, number, of, apart])).toEqual([
    ['1', 1, 1, false],
    ['2', 1, 3, true],
    ['2', 2, 3, true],
    ['2', 3, 3, true],
  ])
})

test('all done: nothing is next', () => {
  const all = ['2', '1'].flatMap((hole) => [
    boltPlaced({ face, hole, kind: 'a' }),
    handStarted({ face, hole }),
    runDown({ face, hole }),
    passTorqued({ face, hole, pass: 1, final: true, torque: 22 }),
    witnessMarked({ face, hole }),
  ])
  expect(nextOf(way(all))?.round.what).toBe('close')
  expect(nextOf(way([...all, faceClosed({ face })]))).toBeNull()
})

test('a face without holes has no steps', () => {
  const { id, events } = told([faceDescribed({ face })])
  expect(benchSteps(fold(id, events), face)).toEqual([])
})
