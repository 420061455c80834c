/** Held against sums of another program by the same formulas: a plate 120 × 80 × 8 mm, six bolts of 200 000 N/mm, bed 5 N/mm³. */
import { expect, test } from 'vitest'
import { everyOrder } from '../everyOrder.ts'
import { spreadOf, TwoWayModel } from './twoWayModel.ts'

const [corner, near, far, diagonal, skew, side] = [13.9969, 4.2788, 0.262458, -3.062, -1.86547, 1.40576]
const [middle, across] = [7.49965, -0.711967]
/** Bolts 0 1 2 below from left to right, 3 4 5 above from right to left; 1e-5 mm/N. */
const sink = [
  [corner, near, far, diagonal, skew, side],
  [near, middle, near, skew, across, skew],
  [far, near, corner, side, skew, diagonal],
  [diagonal, skew, side, corner, near, far],
  [skew, across, skew, near, middle, near],
  [side, skew, diagonal, far, near, corner],
].map((row) => row.map((one) => one * 1e-5))
const plate = (runDown: boolean) => new TwoWayModel(sink, new Array(6).fill(1 / 200_000), runDown)

test('loads after each step round the edge are those of the other program', () => {
  const steps = plate(false).steps([0, 1, 2, 3, 4, 5], [1])
  const other = [
    [1],
    [0.7048, 1],
    [0.8708, 0.3764, 1],
    [1.0111, 0.6274, 0.8264, 1],
    [1.1132, 0.4822, 1.0263, 0.6883, 1],
    [0.8683, 0.8169, 1.0446, 0.85, 0.3556, 1],
  ]
  for (const [step, loads] of other.entries())
    for (const [bolt, load] of loads.entries())
      expect(steps[step]![bolt], `step ${step} bolt ${bolt}`).toBeCloseTo(load, 3)
})

test.each([
  ['round the edge', [0, 1, 2, 3, 4, 5], [0.838, 0.29, 0.134, 0.077]],
  ['from the middle outward', [1, 4, 0, 3, 2, 5], [0.816, 0.167, 0.042, 0.014]],
  ['corners first', [0, 3, 2, 5, 1, 4], [0.539, 0.14, 0.065, 0.046]],
])('spreads after passes %s are those of the other program', (_, sequence, spreads) => {
  const steps = plate(false).steps(sequence, [1, 1, 1, 1])
  for (const [pass, spread] of spreads.entries()) expect(spreadOf(steps[6 * pass + 5]!)).toBeCloseTo(spread, 2)
  expect(plate(false).spread(sequence, [1, 1])).toBeCloseTo(spreads[1]!, 2)
})

test('best, median and worst of all 720 orders are those of the other program', () => {
  const spreads: number[] = []
  everyOrder(6, (sequence) => spreads.push(plate(false).spread(sequence, [1])))
  spreads.sort((a, b) => a - b)
  expect(spreads[0]).toBeCloseTo(0.2481, 3)
  expect((spreads[359]! + spreads[360]!) / 2).toBeCloseTo(1.119, 2)
  expect(spreads[719]).toBeCloseTo(2.36, 2)
})

test('bolts run down by hand first take part from the start', () => {
  const [first] = plate(true).steps([0, 1, 2, 3, 4, 5], [1])
  // Change of every bolt per load that bolt 0 gains with all tight.
  const gains = [1, -0.6444, 0.1617, 0.0182, 0.3348, -0.2449]
  for (const [bolt, gain] of gains.entries()) expect(first![bolt], `bolt ${bolt}`).toBeCloseTo(gain, 3)
})
