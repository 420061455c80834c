import { expect, test } from 'vitest'
import { USUAL_INSTRUMENTS } from '../device/settings.ts'
import { instrumentFor, inUnit, placeOf, readingOf, shortFigure } from './entry.ts'

const caliper = { name: 'digital caliper', plusMinus: 0.05, unit: 'mm' } as const
const value = (text: string, unit: 'mm' | 'in' = 'mm') => {
  const read = readingOf(text, unit, caliper)
  return read.ok ? read.taken.value : read.fault.code
}

test('a figure takes the unit of the page and the ± of the instrument', () => {
  expect(value('31.92')).toEqual({ value: 31.92, plusMinus: 0.05 })
  expect(value('31,92')).toEqual({ value: 31.92, plusMinus: 0.05 })
  expect(value('+31.92\r')).toEqual({ value: 31.92, plusMinus: 0.05 })
  expect(value('1.257', 'in')).toEqual({ value: 1.257, plusMinus: 0.00197, unit: 'in' })
})

test('a unit or a ± in the text rules', () => {
  expect(value('1.257in')).toEqual({ value: 1.257, plusMinus: 0.00197, unit: 'in' })
  expect(value('31.92 mm', 'in')).toEqual({ value: 31.92, plusMinus: 0.05 })
  expect(value('31.9 ± 0.3')).toEqual({ value: 31.9, plusMinus: 0.3 })
})

test('ends stand as they were written', () => {
  expect(value('11 to 13')).toEqual({ atLeast: 11, atMost: 13 })
  expect(value('≥ 11')).toEqual({ atLeast: 11 })
})

test('what is no length is told, not kept', () => {
  expect(value('abc')).toBe('not-a-length')
  expect(value('-3')).toBe('negative')
})

test('the instrument stands in the entry with its limit in the unit of the reading', () => {
  const numbered = { ...caliper, number: 'C-2' }
  const read = readingOf('1.25 in', 'mm', numbered)
  expect(read.ok && read.taken.instrument).toEqual({ name: 'digital caliper', number: 'C-2', errorLimit: 0.00197 })
})

test('a ± carried into another unit is never narrower', () => {
  expect(inUnit({ plusMinus: 0.001, unit: 'in' }, 'mm')).toBe(0.0254)
  expect(inUnit({ plusMinus: 0.1, unit: 'mm' }, 'in') * 25.4).toBeGreaterThanOrEqual(0.1)
})

test('each quantity keeps its own instrument, and starts with the usual one', () => {
  const instruments = USUAL_INSTRUMENTS
  expect(instrumentFor('grip', { instruments, used: {} }).name).toBe('digital caliper')
  expect(instrumentFor('bottomDepth', { instruments, used: {} }).name).toBe('depth gauge')
  expect(instrumentFor('bottomDepth', { instruments, used: { bottomDepth: 'steel rule' } }).name).toBe('steel rule')
  expect(instrumentFor('bottomDepth', { instruments: instruments.slice(0, 1), used: {} }).name).toBe('digital caliper')
  expect(instrumentFor('grip', { instruments: [], used: {} }).plusMinus).toBe(1)
})

test('a reading says of what it is; a shared kind has no face', () => {
  expect(placeOf('pan', { place: 'hole', id: '3' }, 'grip')).toEqual({ face: 'pan', hole: '3', quantity: 'grip' })
  expect(placeOf('pan', { place: 'face', id: 'pan' }, 'gasket')).toEqual({ face: 'pan', quantity: 'gasket' })
  expect(placeOf('pan', { place: 'kind', id: 'b1' }, 'length')).toEqual({ face: 'pan', kind: 'b1', quantity: 'length' })
  expect(placeOf('pan', { place: 'kind', id: 'b1', shared: true }, 'tip')).toEqual({ kind: 'b1', quantity: 'tip' })
})

test('under a number stands a figure in the unit of the page', () => {
  expect(shortFigure({ value: 31.92, plusMinus: 0.05 }, 'mm')).toBe('31.92')
  expect(shortFigure({ value: 1.257, unit: 'in' }, 'mm')).toBe('31.93')
  expect(shortFigure({ value: 31.92, plusMinus: 0.05 }, 'in')).toBe('1.257')
  expect(shortFigure({ nominal: 45 }, 'mm')).toBe('45')
  expect(shortFigure({ atLeast: 11, atMost: 13 }, 'mm')).toBe('11–13')
  expect(shortFigure({ atLeast: 11 }, 'mm')).toBe('≥ 11')
  expect(shortFigure({ atMost: 13 }, 'mm')).toBe('≤ 13')
})
