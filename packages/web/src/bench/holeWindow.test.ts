import { expect, test } from 'vitest'
import { holeWindow, wholeWindow } from './holeWindow.ts'

const picture = { width: 1600, height: 1200 }

test('the hole lies in the middle, its nearest neighbour in sight', () => {
  const hole = [0.5, 0.5] as const
  const near = [0.6, 0.5] as const
  const { x, y, side } = holeWindow(hole, [hole, near, [0.1, 0.1]], picture)
  expect(x + side / 2).toBe(800)
  expect(y + side / 2).toBe(600)
  expect(near[0] * picture.width).toBeLessThan(x + side)
})

test('crowded holes are not blown up until nothing is known again, lone ones not shown with the whole picture', () => {
  const crowded = holeWindow([0.5, 0.5], [[0.501, 0.5]], picture)
  expect(crowded.side).toBeGreaterThan(200)
  expect(holeWindow([0.5, 0.5], [[0.5, 0.5]], picture).side).toBe(800)
})

test('the whole picture fits in its square', () => {
  expect(wholeWindow(picture)).toEqual({ x: 0, y: -200, side: 1600 })
})
