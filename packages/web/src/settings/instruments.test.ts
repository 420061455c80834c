import { expect, test } from 'vitest'
import type { Instrument } from '../device/settings.ts'
import { isOut, nameTaken, rangeOf, singleFigure, withInstrument, withoutInstrument } from './instruments.ts'

const caliper: Instrument = { name: 'caliper', plusMinus: 0.05, unit: 'mm' }
const rule: Instrument = { name: 'rule', plusMinus: 0.5, unit: 'mm' }
const kept = { instruments: [caliper, rule], used: { grip: 'caliper', depth: 'rule' } }

test('a new name goes along to where the instrument was used last', () => {
  const to = { ...caliper, name: 'caliper 3' }
  expect(withInstrument(kept, 0, to)).toEqual({ instruments: [to, rule], used: { grip: 'caliper 3', depth: 'rule' } })
})

test('a further instrument goes to the end', () => {
  const more: Instrument = { name: 'gauge', plusMinus: 0.001, unit: 'in' }
  expect(withInstrument(kept, null, more).instruments).toEqual([caliper, rule, more])
})

test('one that is removed is nobody’s last choice', () => {
  expect(withoutInstrument(kept, 1)).toEqual({ instruments: [caliper], used: { grip: 'caliper' } })
})

test('no two have the same name, and one may keep its own', () => {
  expect(nameTaken(kept.instruments, null, ' Rule ')).toBe(true)
  expect(nameTaken(kept.instruments, 1, 'Rule')).toBe(false)
})

test('a ± is one figure, in its own unit where it names one', () => {
  expect(singleFigure(0.05)).toEqual({ value: 0.05 })
  expect(singleFigure({ value: 0.001, unit: 'in' })).toEqual({ value: 0.001, unit: 'in' })
  expect(singleFigure({ value: 0.05, plusMinus: 0.01, unit: 'mm' })).toBeNull()
  expect(singleFigure({ atLeast: 0.01, atMost: 0.02 })).toBeNull()
})

test('a range has two ends', () => {
  expect(rangeOf({ state: 'read', value: { atLeast: 0, atMost: 150 } })).toEqual([0, 150])
  expect(rangeOf({ state: 'read', value: { atLeast: 0, atMost: 6, unit: 'in' } })).toEqual([0, 6])
  expect(rangeOf({ state: 'read', value: 150 })).toBeNull()
  expect(rangeOf({ state: 'read', value: { atLeast: 5 } })).toBeNull()
  expect(rangeOf({ state: 'empty' })).toBeNull()
})

test('calibration counts on its last day', () => {
  expect(isOut('2026-03-01', '2026-03-01T23:00:00.000Z')).toBe(false)
  expect(isOut('2026-03-01', '2026-03-02T00:00:00.000Z')).toBe(true)
})
