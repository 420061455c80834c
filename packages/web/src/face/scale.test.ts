import { expect, test } from 'vitest'
import { scaleOf } from './scale.ts'

const picture = { width: 4000, height: 3000 }

test('the scale is the distance on the picture over the one on the face', () => {
  // 800 and 600 pixels apart: 1000 pixels
  const points = [
    { x: 0.1, y: 0.1 },
    { x: 0.3, y: 0.3 },
  ]
  expect(scaleOf(points, picture, 50)).toBeCloseTo(20)
})

test('without two points that lie apart there is no scale', () => {
  expect(scaleOf([], picture, 50)).toBeNull()
  expect(scaleOf([{ x: 0.1, y: 0.1 }], picture, 50)).toBeNull()
  expect(
    scaleOf(
      [
        { x: 0.1, y: 0.1 },
        { x: 0.1, y: 0.1 },
      ],
      picture,
      50,
    ),
  ).toBeNull()
  expect(
    scaleOf(
      [
        { x: 0, y: 0 },
        { x: 1, y: 1 },
      ],
      picture,
      0,
    ),
  ).toBeNull()
})
