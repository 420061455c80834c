import type { OrderAnswer, TighteningAnswer } from '@gripbook/engine'
import { expect, test } from 'vitest'
import { barsAt, fullBar, passesFor, passesOf, turnsOf, visitsOf, wayOf, wholeWay } from './steps.ts'

const step = (hole: string, pass: number, share: number, loads: number[], moved = true) => ({
  hole,
  share,
  pass,
  moved,
  loads,
})
const order: OrderAnswer = {
  kind: 'cross',
  name: 'cross',
  passes: [
    { share: 0.5, visit: 1, sequence: ['1', '3', '2'] },
    { share: 1, visit: 1, sequence: ['1', '3', '2'] },
  ],
  steps: [
    step('1', 1, 0.5, [500, 0, 0]),
    step('3', 1, 0.5, [500, 0, 500]),
    step('2', 1, 0.5, [0, 500, 497]),
    step('1', 2, 1, [1000, 420, 460]),
    step('3', 2, 1, [960, 400, 1000]),
    step('2', 2, 1, [930, 1000, 930]),
  ],
  spread: 0.073,
  spreads: [1.5, 0.073],
  overBed: [0.07, 0.073, 0.08],
  bow: 0.01,
  bows: [],
  travel: 400,
  lastRounds: { count: 2, still: true, loads: [1020, 1000, 1010], spread: 0.02 },
}
const answer = {
  holes: ['1', '2', '3'],
  bolts: ['1', '2', '3'].map((hole) => ({ hole, target: 1000, stiffness: 1e5, visit: 1 })),
} as TighteningAnswer

test('the bars stand in the order of the pass, with what changed since the step before', () => {
  expect(
    barsAt(answer, order, 2).map(({ hole, load, change, turn, slack }) => [hole, load, change, turn, slack]),
  ).toEqual([
    ['1', 0, -500, 'done', true],
    // three newton of a thousand: no change that anybody could measure
    ['3', 497, 0, 'done', false],
    ['2', 500, 500, 'now', false],
  ])
  expect(barsAt(answer, order, 0).map(({ change }) => change)).toEqual([500, 0, 0])
  expect(barsAt(answer, order, 3).map(({ turn }) => turn)).toEqual(['now', 'to come', 'to come'])
  expect(barsAt(answer, order, 99)).toEqual([])
})

test('a bolt that the pass does not come to is of another visit', () => {
  const short = { ...order, steps: [step('1', 1, 1, [1000, 0, 0])] }
  expect(barsAt(answer, short, 0).map(({ hole, turn }) => [hole, turn])).toEqual([
    ['1', 'now'],
    ['2', 'other visit'],
    ['3', 'other visit'],
  ])
})

test('passes are told by their first and last step', () => {
  expect(passesOf(order)).toEqual([
    { pass: 1, share: 0.5, from: 0, to: 2 },
    { pass: 2, share: 1, from: 3, to: 5 },
  ])
  expect([...turnsOf(order, 2)]).toEqual([
    ['1', 1],
    ['3', 2],
    ['2', 3],
  ])
  expect(wayOf(order, 1)).toEqual(['1', '3', '2'])
})

test('how many passes bring the spread under a figure', () => {
  expect(passesFor(order, 0.08)).toEqual({ passes: 2, rounds: 0, spread: 0.073 })
  expect(passesFor(order, 0.05)).toEqual({ passes: 2, rounds: 2, spread: 0.02 })
  expect(passesFor(order, 0.01)).toBeNull()
})

test('no load is greater than a full bar', () => {
  expect(fullBar(answer, [order])).toBeCloseTo(1.04 * 1020)
})

test('the order as a whole goes through its visits one after the other', () => {
  const visits = {
    passes: [
      { share: 0.5, visit: 1, sequence: ['2', '1'] },
      { share: 1, visit: 1, sequence: ['1', '2'] },
      { share: 1, visit: 2, sequence: ['3'] },
    ],
  }
  expect(wholeWay(visits)).toEqual(['1', '2', '3'])
  expect(visitsOf(visits)).toEqual([
    { visit: 1, shares: [0.5, 1] },
    { visit: 2, shares: [1] },
  ])
})
