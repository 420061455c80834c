import { expect, test } from 'vitest'
import { readTyped, writeTyped } from './typed.ts'

const START = { reason: '', who: 'Ada' }

test('what was typed is there again', () => {
  const typed = { reason: 'the hose is in the way', who: 'Ada' }
  expect(readTyped(writeTyped(typed, START), START)).toEqual(typed)
})

test('a field that was emptied stays empty', () => {
  const typed = { reason: '', who: '' }
  expect(readTyped(writeTyped(typed, START), START)).toEqual(typed)
})

test('nothing is held of a form that is as it began', () => {
  expect(writeTyped(START, START)).toBe(null)
})

test.each([null, '', '[', '7', 'null', '{"reason":3,"other":"x"}'])('%s is a form as it begins', (held) => {
  expect(readTyped(held, START)).toEqual(START)
})

test('choices, ticks and lists are held too', () => {
  const start = { what: null as string | null, captive: false, features: [] as string[] }
  const typed = { what: 'clip', captive: true, features: ['drilled'] }
  expect(readTyped(writeTyped({ ...start, ...typed }, start), start)).toEqual(typed)
  expect(readTyped('{"what":1,"captive":"x","features":[2]}', start)).toEqual(start)
})
