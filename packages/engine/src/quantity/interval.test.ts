import { describe, expect, test } from 'vitest'
import { Bug } from '../must.ts'
import { add, intervalOf, lengthTolerance, UNKNOWN } from './interval.ts'

describe('the interval that a quantity stands for', () => {
  test('absent is unknown, from 0 up', () => {
    expect(intervalOf(undefined)).toEqual(UNKNOWN)
    expect(UNKNOWN).toEqual({ lo: 0, hi: Number.POSITIVE_INFINITY })
  })

  test('a plain number is exact', () => {
    expect(intervalOf(12.5)).toEqual({ lo: 12.5, hi: 12.5 })
  })

  test('a value reaches as far as its tolerance, either way', () => {
    expect(intervalOf({ value: 32, plusMinus: 0.5 })).toEqual({ lo: 31.5, hi: 32.5 })
    expect(intervalOf({ value: 32 })).toEqual({ lo: 32, hi: 32 })
  })

  test('a length is never below 0', () => {
    expect(intervalOf({ value: 0.25, plusMinus: 0.5 })).toEqual({ lo: 0, hi: 0.75 })
  })

  test('an end that is missing is 0 or infinite', () => {
    expect(intervalOf({ atLeast: 11 })).toEqual({ lo: 11, hi: Number.POSITIVE_INFINITY })
    expect(intervalOf({ atMost: 13 })).toEqual({ lo: 0, hi: 13 })
    expect(intervalOf({ atLeast: 11, atMost: 13 })).toEqual({ lo: 11, hi: 13 })
  })

  test('inches are 25.4 mm each, tolerance and ends too', () => {
    expect(intervalOf({ value: 2, plusMinus: 1, unit: 'in' })).toEqual({ lo: 25.4, hi: 3 * 25.4 })
    expect(intervalOf({ atLeast: 1, atMost: 2, unit: 'in' })).toEqual({ lo: 25.4, hi: 50.8 })
    expect(intervalOf({ nominal: 1, unit: 'in' })).toEqual({ lo: 25.4 - 0.42, hi: 25.4 + 0.42 })
  })

  test('a torque in lbf·ft comes out in N·m', () => {
    const { lo, hi } = intervalOf({ value: 20, unit: 'lbf·ft' }, 'torque')
    expect(lo).toBe(hi)
    expect(lo).toBeCloseTo(27.116358966628006, 9)
  })

  test('a nominal length has the tolerance of its product standard', () => {
    expect(intervalOf({ nominal: 45 })).toEqual({ lo: 44.5, hi: 45.5 })
    expect(intervalOf({ nominal: 0.1 }).lo).toBe(0)
  })

  test('a unit that measures something else is a bug', () => {
    expect(() => intervalOf({ value: 1, unit: 'N·m' })).toThrow(Bug)
    expect(() => intervalOf({ value: 1, unit: 'mm' }, 'torque')).toThrow(Bug)
  })
})

test('the tolerance of a length grows at each end of a step, not before', () => {
  const steps = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250]
  expect(steps.map(lengthTolerance)).toEqual([0.2, 0.24, 0.29, 0.35, 0.42, 0.5, 0.6, 0.7, 0.8, 0.925])
  expect(steps.map((step) => lengthTolerance(step + 0.1))).toEqual([
    0.24, 0.29, 0.35, 0.42, 0.5, 0.6, 0.7, 0.8, 0.925, 1.05,
  ])
})

test('intervals add end by end', () => {
  expect(add({ lo: 1, hi: 2 }, { lo: 10, hi: Number.POSITIVE_INFINITY })).toEqual({
    lo: 11,
    hi: Number.POSITIVE_INFINITY,
  })
})
