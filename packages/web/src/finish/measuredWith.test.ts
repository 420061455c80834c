import { expect, test } from 'vitest'
import { isLength, notedWith, usedFor } from './measuredWith.ts'

const dial = {
  name: 'dial indicator',
  number: 'D2',
  plusMinus: 0.01,
  unit: 'mm' as const,
  calibratedUntil: '2026-12-31',
}
const settings = { instruments: [dial], used: { [usedFor('End play')]: dial.name, [usedFor('Coil A')]: ' ohm meter ' } }

test('a length carries the ± and the calibration of its instrument, unless it has a ± of its own', () => {
  expect(notedWith({ value: 0.35, unit: 'mm' }, usedFor('End play'), settings)).toEqual({
    value: 0.35,
    unit: 'mm',
    plusMinus: 0.01,
    instrument: { name: 'dial indicator', number: 'D2', errorLimit: 0.01, calibratedUntil: '2026-12-31' },
  })
  expect(notedWith({ value: 0.35, unit: 'mm', plusMinus: 0.1 }, usedFor('End play'), settings).plusMinus).toBe(0.1)
  expect(notedWith({ value: 0.014, unit: 'in' }, usedFor('End play'), settings).plusMinus).toBe(0.0004)
})

test('another figure names its instrument where one was named', () => {
  expect(notedWith({ value: 12, unit: 'Ω' }, usedFor('Coil A'), settings)).toEqual({
    value: 12,
    unit: 'Ω',
    instrument: { name: 'ohm meter' },
  })
  expect(notedWith({ value: 12, unit: 'Ω' }, usedFor('Coil B'), settings)).toEqual({ value: 12, unit: 'Ω' })
  expect(isLength('Ω')).toBe(false)
})
