import { expect, test } from 'vitest'
import { angleForClamp, barStiffness, clampFromAngle, frustumStiffness, inSeries } from './stiffness.ts'

test('springs in series give way together', () => {
  expect(inSeries(2, 2)).toBe(1)
  expect(inSeries(5)).toBe(5)
  expect(inSeries(1, 2, 3)).toBeCloseTo(6 / 11, 12)
})

test('a bar is area times modulus over length', () => {
  expect(barStiffness(20, 210_000, 42)).toBe(100_000)
})

test('angle and clamp load undo each other', () => {
  expect(clampFromAngle(90, 1.25, 200_000, 600_000)).toBeCloseTo(0.25 * 1.25 * 150_000, 6)
  expect(angleForClamp(clampFromAngle(37, 1.25, 2e5, 6e5), 1.25, 2e5, 6e5)).toBeCloseTo(37, 9)
})

test('a thicker frustum is softer, a wider one stiffer, and what is no frustum is a bug', () => {
  const base = { thickness: 5, outer: 10, hole: 6, young: 70_000 }
  const k = frustumStiffness(base)
  expect(frustumStiffness({ ...base, thickness: 6 })).toBeLessThan(k)
  expect(frustumStiffness({ ...base, outer: 11 })).toBeGreaterThan(k)
  expect(frustumStiffness({ ...base, young: 140_000 })).toBeCloseTo(2 * k, 6)
  for (const bad of [{ thickness: 0 }, { outer: 6 }, { hole: 0 }])
    expect(() => frustumStiffness({ ...base, ...bad })).toThrow('no frustum')
})
