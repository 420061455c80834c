import { expect, test } from 'vitest'
import { inMillimetres, spanOf, sum } from './span.ts'

const INFINITE = Number.POSITIVE_INFINITY

test('millimetres become whole nanometres', () => {
  expect(spanOf({ lo: 0, hi: 1 })).toEqual({ lo: 0, hi: 1_000_000 })
  expect(spanOf({ lo: 21.8, hi: 31.9 })).toEqual({ lo: 21_800_000, hi: 31_900_000 })
  // 31.9 − 0.1 and 0.1 + 0.2 are no whole hundredths in binary, and are meant to be.
  expect(spanOf({ lo: 31.9 - 0.1, hi: 0.1 + 0.2 })).toEqual({ lo: 31_800_000, hi: 300_000 })
})

test('what is no whole nanometre is rounded outward', () => {
  expect(spanOf({ lo: 1.0000004, hi: 1.0000004 })).toEqual({ lo: 1_000_000, hi: 1_000_001 })
  expect(spanOf({ lo: 1.0000006, hi: 1.0000006 })).toEqual({ lo: 1_000_000, hi: 1_000_001 })
  expect(spanOf({ lo: 1.00000001, hi: 1.00000001 })).toEqual({ lo: 1_000_000, hi: 1_000_001 })
})

test('less than a thousandth of a nanometre is the rounding of the sum before', () => {
  expect(spanOf({ lo: 1.0000000005, hi: 1.0000000005 })).toEqual({ lo: 1_000_000, hi: 1_000_000 })
  expect(spanOf({ lo: 0.9999999995, hi: 0.9999999995 })).toEqual({ lo: 1_000_000, hi: 1_000_000 })
})

test('an inch reading is 25.4 mm', () => {
  expect(spanOf({ lo: 0.987 * 25.4, hi: 0.987 * 25.4 })).toEqual({ lo: 25_069_800, hi: 25_069_800 })
})

test('no upper end stays none', () => {
  expect(spanOf({ lo: 2, hi: INFINITE })).toEqual({ lo: 2_000_000, hi: INFINITE })
})

test('a sum adds the ends apart, and no spans are nothing', () => {
  expect(sum({ lo: 1, hi: 2 }, { lo: 10, hi: 20 }, { lo: 100, hi: 200 })).toEqual({ lo: 111, hi: 222 })
  expect(sum({ lo: 1, hi: 2 }, { lo: 10, hi: INFINITE })).toEqual({ lo: 11, hi: INFINITE })
  expect(sum()).toEqual({ lo: 0, hi: 0 })
})

test('nanometres read as millimetres', () => {
  expect(inMillimetres(31_900_000)).toBe(31.9)
  expect(inMillimetres(-100_000)).toBe(-0.1)
})
