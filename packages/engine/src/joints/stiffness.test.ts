import { describe, expect, test } from 'vitest'
import { readThread, type Thread } from '../threads/index.ts'
import {
  angleForClamp,
  angleTightening,
  barStiffness,
  boltStiffness,
  clampFromAngle,
  frustumStiffness,
  inSeries,
  partsStiffness,
} from './stiffness.ts'

const thread = (name: string): Thread => {
  const read = readThread(name)
  if (!read.ok) throw new Error(name)
  return read.value
}
const one = (x: number) => ({ lo: x, hi: x })

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

test('the tapped joint of Shigley 9e, example 8-5: frusta 46.46, 197.43 and 32.39 in series are 17.40 Mlbf/in', () => {
  const inches = { clamped: 0.6875, engaged: 0.3125, bearing: 0.9375, hole: 0.625, youngClamped: 30, youngTapped: 16 }
  expect(partsStiffness(inches)).toBeCloseTo(17.4, 1)
  expect(partsStiffness(inches)).toBeCloseTo(1 / (1 / 46.46 + 1 / 197.43 + 1 / 32.39), 1)
})

test('a part thinner than the sprung thread is cut at its own face, from the other side the same', () => {
  const thick = { clamped: 8, engaged: 3, bearing: 12, hole: 8, youngClamped: 200_000, youngTapped: 70_000 }
  const thin = { ...thick, clamped: 3, engaged: 8, youngClamped: 70_000, youngTapped: 200_000 }
  expect(partsStiffness(thin)).toBeCloseTo(partsStiffness(thick), 6)
  const even = { ...thick, clamped: 4, engaged: 4 }
  expect(partsStiffness(even)).toBeCloseTo(
    inSeries(
      frustumStiffness({ thickness: 4, outer: 12, hole: 8, young: 200_000 }),
      frustumStiffness({ thickness: 4, outer: 12, hole: 8, young: 70_000 }),
    ),
    6,
  )
})

test('a bolt is its shank and its thread in series', () => {
  // M8: stress area 36.61 mm², shank 50.27 mm²; 200 000 MPa over 20 mm each
  const shank = (50.265 * 200_000) / 20
  const threaded = (36.609 * 200_000) / 20
  expect(boltStiffness(thread('M8'), 40, 20, 200_000)).toBeCloseTo(1 / (1 / shank + 1 / threaded), -2)
  expect(boltStiffness(thread('M8'), 40, 0, 200_000)).toBeCloseTo(threaded / 2, -2)
})

describe('angle tightening', () => {
  const wanted = {
    thread: thread('M8'),
    angle: one(90),
    clamped: one(30),
    bearing: 11.63,
    hole: 9,
    youngClamped: { lo: 70_000, hi: 75_000 },
    youngTapped: { lo: 70_000, hi: 75_000 },
  }

  test('gives a range whose ends are the softest and the stiffest joint', () => {
    const { bolt, parts, added } = angleTightening(wanted)
    expect(bolt.lo).toBeCloseTo((36.609 * 195_000) / 34, -2)
    // 30 mm of shank and 4 mm of thread
    expect(bolt.hi).toBeCloseTo(210_000 / (30 / 50.265 + 4 / 36.609), -2)
    expect(added.lo).toBeCloseTo((0.25 * 1.25) / (1 / bolt.lo + 1 / parts.lo), 6)
    expect(added.hi).toBeCloseTo((0.25 * 1.25) / (1 / bolt.hi + 1 / parts.hi), 6)
  })

  test('a known shank narrows it, a longer joint and a short engagement change it as springs do', () => {
    const plain = angleTightening(wanted)
    const known = angleTightening({ ...wanted, shank: one(10) })
    expect(known.bolt.lo).toBeGreaterThan(plain.bolt.lo)
    expect(known.bolt.hi).toBeLessThan(plain.bolt.hi)
    expect(angleTightening({ ...wanted, clamped: one(60) }).added.hi).toBeLessThan(plain.added.hi)
    expect(angleTightening({ ...wanted, engagement: one(4) }).bolt.lo).toBeCloseTo((36.609 * 195_000) / 32, -2)
    expect(angleTightening({ ...wanted, engagement: one(20) })).toEqual(plain)
    expect(angleTightening({ ...wanted, angle: one(180) }).added.lo).toBeCloseTo(2 * plain.added.lo, 6)
  })
})
