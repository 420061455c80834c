import { expect, test } from 'vitest'
import { loadOf, numberOf, rangeOf, shareOf } from './figures.ts'

test.each([
  ['8', 8],
  [' 0,8 ', 0.8],
  ['.5', 0.5],
  ['0', null],
  ['-3', null],
  ['8 mm', null],
  ['', null],
])('%j is the number %j', (text, value) => expect(numberOf(text)).toBe(value))

test('a stiffness is one figure or a range', () => {
  expect(rangeOf('5')).toBe(5)
  expect(rangeOf('2.1 to 6.2')).toEqual({ atLeast: 2.1, atMost: 6.2 })
  expect(rangeOf('2,1–6,2')).toEqual({ atLeast: 2.1, atMost: 6.2 })
  for (const text of ['', '6 to 2', '1 to 2 to 3', 'soft', '2 to']) expect(rangeOf(text)).toBeNull()
})

test('a load is in newton unless it says kilonewton', () => {
  expect(loadOf('8000')).toBe(8000)
  expect(loadOf('8.5 kN')).toBe(8500)
  expect(loadOf('8000 n')).toBe(8000)
  expect(loadOf('heavy')).toBeNull()
})

test('a share is typed in per cent', () => {
  expect(shareOf('60')).toBe(0.6)
  expect(shareOf('33.3 %')).toBe(0.333)
  for (const text of ['0', '101', 'all']) expect(shareOf(text)).toBeNull()
})
