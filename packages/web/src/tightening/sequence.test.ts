import { expect, test } from 'vitest'
import { readSequence, tapped, writeSequence } from './sequence.ts'

const holes = ['1', '2', '3', '11', 'left, upper']

test('an order is read however it is parted', () => {
  for (const text of ['3, 1, 11', '3 1 11', '3-1-11', '3 → 1 → 11', ' 3;1 ; 11, '])
    expect(readSequence(text, holes)).toEqual({ holes: ['3', '1', '11'], fault: null })
  expect(readSequence('', holes)).toEqual({ holes: [], fault: null })
  expect(readSequence('1, left, upper, 2', holes).holes).toEqual(['1', 'left, upper', '2'])
})

test('a hole that is not there, or twice, is named', () => {
  expect(readSequence('1, 7, 2', holes).fault).toEqual({ unknown: '7' })
  expect(readSequence('1, 2, 1', holes).fault).toEqual({ twice: '1' })
})

test('taps put holes one behind the other, and the last one back', () => {
  let text = ''
  for (const hole of ['3', '1', '1', '2', '3']) text = tapped(text, hole, holes)
  expect(text).toBe('3, 2')
  expect(tapped('1, 7', '2', holes)).toBe('1, 7')
  expect(readSequence(writeSequence(holes), holes).holes).toEqual(holes)
})
