import { expect, test } from 'vitest'
import { LENGTH_UNITS, sizeOf, TORQUE_UNITS, unitsOf } from './units.ts'

test('units are exact to definition', () => {
  expect(sizeOf('in', 'length')).toBe(25.4)
  expect(sizeOf('mm', 'length')).toBe(1)
  expect(sizeOf('kgf·m', 'torque')).toBe(9.80665)
  // pound 0.45359237 kg, standard gravity 9.80665 m/s², foot 0.3048 m, multiplied out to 15 digits
  expect(sizeOf('lbf·ft', 'torque')).toBeCloseTo(1.3558179483314, 14)
  expect(sizeOf('lbf·in', 'torque')).toBeCloseTo(0.112984829027617, 14)
})

test('two spellings of one unit are one unit', () => {
  expect(sizeOf('Nm', 'torque')).toBe(sizeOf('N·m', 'torque'))
  expect(sizeOf('ft-lb', 'torque')).toBe(sizeOf('lbf·ft', 'torque'))
})

test('a unit of another dimension has no size', () => {
  expect(sizeOf('in', 'torque')).toBeUndefined()
  expect(sizeOf('Nm', 'length')).toBeUndefined()
})

test('every dimension lists its own units', () => {
  expect(unitsOf('length')).toEqual(LENGTH_UNITS)
  expect(unitsOf('torque')).toEqual(TORQUE_UNITS)
  expect(LENGTH_UNITS).toEqual(['mm', 'in'])
  expect(TORQUE_UNITS).toHaveLength(6)
})
