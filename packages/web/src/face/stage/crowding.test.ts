import { expect, test } from 'vitest'
import type { Mark } from '../marks.ts'
import { crowding, nearestMark } from './crowding.ts'

const mark = (hole: string, x: number, y: number): Mark => ({
  hole,
  x,
  y,
  shape: 'plain',
  badge: null,
  under: 'empty',
  dim: false,
})
const picture = { width: 1000, height: 500 }
const view = { scale: 0.5, x: 10, y: 20 }

test('the two nearest marks say how crowded a picture is', () => {
  expect(crowding([mark('1', 0, 0), mark('2', 0.5, 0), mark('3', 0.53, 0.08)], picture)).toBeCloseTo(50)
  expect(crowding([mark('1', 0, 0)], picture)).toBe(Number.POSITIVE_INFINITY)
})

test('a finger means the nearest mark, and none where none is near', () => {
  const marks = [mark('1', 0.1, 0.1), mark('2', 0.14, 0.1)]
  // 1 lies at (60, 45) on the screen, 2 at (80, 45)
  expect(nearestMark(marks, view, picture, { x: 66, y: 45 }, 30)).toBe('1')
  expect(nearestMark(marks, view, picture, { x: 73, y: 45 }, 30)).toBe('2')
  expect(nearestMark(marks, view, picture, { x: 160, y: 45 }, 30)).toBeNull()
})
