import { expect, test } from 'vitest'
import { dayNumber, sayDay, sayWhen } from './when.ts'

const place = { language: 'en-GB', timeZone: 'Europe/Berlin' }
const NOW = Date.parse('2026-03-12T00:30:00.000Z')

test('what was today or yesterday is told by the hour, what was before by the day', () => {
  expect(sayWhen('2026-03-12T00:10:00.000Z', NOW, place)).toBe('today 01:10')
  expect(sayWhen('2026-03-11T21:10:00.000Z', NOW, place)).toBe('yesterday 22:10')
  expect(sayWhen('2026-03-09T21:10:00.000Z', NOW, place)).toBe('9 Mar 2026')
})

test('a day begins at midnight of the zone, not of Greenwich', () => {
  expect(sayWhen('2026-03-11T23:30:00.000Z', NOW, place)).toBe('today 00:30')
  expect(dayNumber(Date.parse('2026-03-11T23:30:00Z'), 'Europe/Berlin')).toBe(
    dayNumber(Date.parse('2026-03-11T22:30:00Z'), 'Europe/Berlin') + 1,
  )
})

test('a time ahead of this device, by a fast clock elsewhere, is told by its day', () => {
  expect(sayWhen('2026-03-14T09:00:00.000Z', NOW, place)).toBe('14 Mar 2026')
  expect(sayDay('2026-03-14T09:00:00.000Z', place, 'full')).toMatch(/^Saturday,? 14 March 2026$/)
})
