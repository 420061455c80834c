import { expect, test } from 'vitest'
import { holeWindow, wholeWindow } from './holeWindow.ts'

const picture = { width: 1600, height: 1200 }

test('the hole lies in the middle, its nearest neighbour in sight', () => {
  const hole = [0.5, 0.5] as const
  const near = [0.6, 0.5] as const
  const { x, y, width, height } = holeWindow(hole, [hole, near, [0.1, 0.1]], picture, 1)
  expect(x + width / 2).toBe(800)
  expect(y + height / 2).toBe(600)
  expect(near[0] * picture.width).toBeLessThan(x + width)
})

test('it has the shape of its place on the screen', () => {
  const { width, height } = holeWindow([0.5, 0.5], [[0.5, 0.7]], picture, 1.5)
  expect(width / height).toBeCloseTo(1.5, 9)
})

test('a hole at the edge is shown without what lies beside the picture', () => {
  const { x, y } = holeWindow([0.02, 0.98], [[0.2, 0.9]], picture, 1.2)
  expect(x).toBe(0)
  expect(y).toBeGreaterThan(0)
  const { y: low, height } = holeWindow([0.02, 0.98], [[0.2, 0.9]], picture, 1.2)
  expect(low + height).toBeCloseTo(1200, 9)
})

test('crowded holes are not blown up until nothing is known again, lone ones not shown with the whole picture', () => {
  expect(holeWindow([0.5, 0.5], [[0.501, 0.5]], picture, 1).width).toBeGreaterThan(200)
  expect(holeWindow([0.5, 0.5], [[0.5, 0.5]], picture, 1).width).toBe(800)
})

test('a window that is wider than the picture has it in its middle', () => {
  const { x, width } = holeWindow([0.5, 0.5], [[0.5, 0.5]], picture, 3)
  expect(width).toBe(2400)
  expect(x).toBe(-400)
})

test('the whole picture is all of it', () => {
  expect(wholeWindow(picture)).toEqual({ x: 0, y: 0, width: 1600, height: 1200 })
})
