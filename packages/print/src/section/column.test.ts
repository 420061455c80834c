import fc from 'fast-check'
import { expect, test } from 'vitest'
import { spread } from './column.ts'

test('boxes that have room stand where they want to', () => {
  expect(
    spread(
      [
        { centre: 20, height: 10 },
        { centre: 50, height: 10 },
      ],
      0,
      4,
    ),
  ).toEqual([15, 45])
})

test('two boxes that want one place part evenly', () => {
  expect(
    spread(
      [
        { centre: 50, height: 10 },
        { centre: 50, height: 10 },
      ],
      0,
      4,
    ),
  ).toEqual([38, 52])
})

test('boxes never meet, keep their order and stay under the top', () => {
  const wish = fc.record({ centre: fc.integer({ min: -100, max: 600 }), height: fc.integer({ min: 10, max: 120 }) })
  fc.assert(
    fc.property(fc.array(wish, { maxLength: 15 }), (wishes) => {
      const sorted = wishes.sort((a, b) => a.centre - b.centre)
      const tops = spread(sorted, 5, 4)
      tops.forEach((top, i) => {
        expect(top).toBeGreaterThanOrEqual(i === 0 ? 5 : tops[i - 1]! + sorted[i - 1]!.height + 4 - 1e-9)
      })
    }),
    { seed: 128, numRuns: 300 },
  )
})
