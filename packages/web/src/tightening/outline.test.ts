import type { Point } from '@gripbook/engine'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { areaOf, distanceToSide, hullOf, marginFor, outlineAround, withCorner } from './outline.ts'

const square: Point[] = [
  [0, 0],
  [100, 0],
  [100, 100],
  [0, 100],
]
const place = fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 300 }))

test('the margin is one and a half of the thickest bolt', () => {
  expect(marginFor([{ thread: 'M6' }, { thread: ['M8', 'M6'] }])).toBe(12)
  expect(marginFor([{ thread: '1/4-20' }])).toBe(9.5)
  expect(marginFor([])).toBe(12)
})

test('the hull leaves out what lies inside and on its sides', () => {
  expect(hullOf([...square, [50, 50], [50, 0], [0, 0]])).toEqual(square)
  expect(hullOf([])).toEqual([])
  expect(
    hullOf([
      [3, 0],
      [1, 0],
      [2, 0],
    ]),
  ).toEqual([
    [1, 0],
    [3, 0],
  ])
})

test('round four holes there are four corners, round one hole four, round a row four', () => {
  expect(outlineAround(square, 10)).toHaveLength(4)
  expect(outlineAround([[5, 5]], 10)).toHaveLength(4)
  const slot = outlineAround(
    [
      [0, 0],
      [50, 0],
    ],
    10,
  )!
  expect(slot).toHaveLength(4)
  expect(areaOf(slot)).toBeCloseTo(70 * 20, 0)
  expect(outlineAround([], 10)).toBeNull()
})

test('no hole is nearer to the rim than the margin, and none much farther than it must be', () => {
  fc.assert(
    fc.property(fc.array(place, { minLength: 1, maxLength: 20 }), fc.integer({ min: 3, max: 30 }), (places, margin) => {
      const outline = outlineAround(places, margin)!
      const off = (at: Point) =>
        Math.min(...outline.map((from, i) => distanceToSide(at, from, outline[(i + 1) % outline.length]!)))
      const nearest = Math.min(...places.map((at) => off(at)))
      // corners are rounded to a tenth of a millimetre
      expect(nearest).toBeGreaterThan(margin - 0.15)
      expect(nearest).toBeLessThan(margin + 0.15)
    }),
    { seed: 4 },
  )
})

test('a corner goes into the side beside it, and a third one only follows', () => {
  expect(withCorner(square, [50, -5])).toEqual([square[0], [50, -5], ...square.slice(1)])
  expect(withCorner(square, [-5, 50])).toEqual([...square, [-5, 50]])
  expect(withCorner(square.slice(0, 2), [50, -5])).toEqual([square[0], square[1], [50, -5]])
})
