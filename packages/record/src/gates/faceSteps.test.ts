import { expect, test } from 'vitest'
import { boltPlaced } from '../events/boltPlaced.ts'
import { faceDescribed } from '../events/faceDescribed.ts'
import { handStarted } from '../events/handStarted.ts'
import { holeMarked } from '../events/holeMarked.ts'
import { orderChosen } from '../events/orderChosen.ts'
import { passTorqued } from '../events/passTorqued.ts'
import { runDown } from '../events/runDown.ts'
import { faceSteps } from './faceSteps.ts'
import { stopsFor } from './stopsFor.ts'
import { type Workbench, workbench } from './testing/workbench.ts'

const face = 'pan'
const at = (hole: string) => ({ face, hole })

function pan(snug = false): Workbench {
  const bench = workbench()
  bench.does(0, faceDescribed({ face, torque: { value: 8, unit: 'lbf·ft' }, ...(snug ? { snug } : {}) }))
  bench.does(0, holeMarked({ ...at('1'), thread: 'M6' }))
  bench.does(0, holeMarked({ ...at('2'), thread: 'M6', locates: true, torque: 10 }))
  return bench
}

const said = (bench: Workbench) =>
  faceSteps(bench.folded(), face).map(({ stage, hole, pass }) =>
    [stage, hole, ...(pass === undefined ? [] : [pass])].join(' '),
  )

test('a face without an order goes in plain passes, those that locate first', () => {
  expect(said(pan())).toEqual([
    'place 2',
    'hand-start 2',
    'place 1',
    'hand-start 1',
    'run-down 1',
    'run-down 2',
    'pass 1 1',
    'pass 2 1',
    'pass 1 2',
    'pass 2 2',
    'pass 1 3',
    'pass 2 3',
    'witness mark 1',
    'witness mark 2',
  ])
  expect(said(pan(true)).slice(6, 8)).toEqual(['snug 1', 'snug 2'])
})

test('the order chosen at the bench rules, with its shares and the torque wanted in the unit it was stated in', () => {
  const bench = pan()
  const passes = [
    { share: 0.3, sequence: ['2', '1'] },
    { share: 1, sequence: ['2', '1'] },
  ]
  bench.does(0, orderChosen({ face, name: 'the manual', passes }))
  const steps = faceSteps(bench.folded(), face)
  expect(steps.filter(({ stage }) => stage === 'run-down').map(({ hole }) => hole)).toEqual(['2', '1'])
  expect(
    steps
      .filter(({ stage }) => stage === 'pass')
      .map(({ hole, pass, share, final, wanted }) => [hole, pass, share, final, wanted]),
  ).toEqual([
    ['2', 1, 0.3, false, 3],
    ['1', 1, 0.3, false, { value: 2.4, unit: 'lbf·ft' }],
    ['2', 2, 1, true, 10],
    ['1', 2, 1, true, { value: 8, unit: 'lbf·ft' }],
  ])
})

test('a bolt that the order leaves out has passes of its own after it, up to its final torque', () => {
  const bench = pan()
  bench.does(0, orderChosen({ face, name: 'the manual', passes: [{ share: 1, sequence: ['2'] }] }))
  const passes = faceSteps(bench.folded(), face).filter(({ stage }) => stage === 'pass')
  expect(passes.map(({ hole, pass, share, final }) => [hole, pass, share, final])).toEqual([
    ['2', 1, 1, true],
    ['1', 2, 0.3, false],
    ['1', 3, 0.6, false],
    ['1', 4, 1, true],
  ])
})

test('a step is done by its entry, or by a later stage of the same bolt', () => {
  const bench = pan()
  bench.does(0, boltPlaced({ ...at('1'), kind: 'b1' }))
  const started = bench.does(0, handStarted(at('1')))
  const down = bench.does(0, runDown(at('1')))
  const tight = bench.does(0, passTorqued({ ...at('2'), pass: 1, final: true }))
  const done = new Map(
    faceSteps(bench.folded(), face).map((step) => [
      [step.stage, step.hole, step.pass ?? ''].join(' '),
      step.done?.event,
    ]),
  )
  expect(done.get('hand-start 1 ')).toBe(started.id)
  expect(done.get('run-down 1 ')).toBe(down.id)
  expect(done.get('pass 1 1')).toBeUndefined()
  expect(done.get('place 2 ')).toBeUndefined()
  for (const step of ['hand-start 2 ', 'run-down 2 ', 'pass 2 1', 'pass 2 3'])
    expect(done.get(step), step).toBe(tight.id)
  expect(done.get('witness mark 2 ')).toBeUndefined()
})

test('whoever goes the way of a face as it is given passes no stop, over two visits and from snug', () => {
  const bench = pan(true)
  bench.does(0, holeMarked({ ...at('3'), thread: 'M6', visit: 2 }))
  for (const step of faceSteps(bench.folded(), face)) {
    const { stage, hole, pass = 1, final = false, wanted } = step
    if (stage === 'place' || stage === 'witness mark') continue
    const happening =
      stage === 'pass'
        ? passTorqued({ ...at(hole), pass, final, ...(wanted === undefined ? {} : { wanted, torque: wanted }) })
        : {
            type: { 'hand-start': 'hand-started', 'run-down': 'run-down', snug: 'snugged' }[stage],
            version: 1,
            body: at(hole),
          }
    expect(stopsFor(bench.folded(), happening), JSON.stringify(step)).toEqual([])
    bench.does(0, happening)
  }
  const left = faceSteps(bench.folded(), face).filter(({ done }) => done === undefined)
  expect(new Set(left.map(({ stage }) => stage))).toEqual(new Set(['place', 'witness mark']))
})

test('a face that nobody spoke of has no steps', () => {
  expect(faceSteps(workbench().folded(), 'constructor')).toEqual([])
})
