import { expect, test } from 'vitest'
import { bytesWords, countdown, fromNow, spanWords } from './figures.ts'

const NOW = Date.UTC(2026, 0, 15, 12)

test('a time is told by its distance', () => {
  expect(fromNow(NOW - 20_000, NOW)).toBe('now')
  expect(fromNow(NOW - 60_000, NOW)).toBe('1 minute ago')
  expect(fromNow(NOW - 3 * 3_600_000, NOW)).toBe('3 hours ago')
  expect(fromNow(NOW - 86_400_000, NOW)).toBe('yesterday')
  expect(fromNow(NOW + 3 * 86_400_000, NOW)).toBe('in 3 days')
})

test('a span has one unit, whichever way it goes', () => {
  expect(spanWords(-1_000)).toBe('1 second')
  expect(spanWords(190_000)).toBe('3 minutes')
  expect(spanWords(-7_300_000)).toBe('2 hours')
})

test('bytes are counted by thousands', () => {
  expect(bytesWords(0)).toBe('0 byte')
  expect(bytesWords(1_234_567)).toBe('1.2 MB')
  expect(bytesWords(999_999)).toBe('1 MB')
  expect(bytesWords(12_345_678_900)).toBe('12 GB')
})

test('a code that is void has no time left', () => {
  expect(countdown(600_000)).toBe('10:00')
  expect(countdown(67_001)).toBe('1:08')
  expect(countdown(-5)).toBe('0:00')
})
