import { expect, test } from 'vitest'
import {
  against,
  doubtsOf,
  figureIn,
  newtonMetres,
  quantityIn,
  reachedBy,
  readDegrees,
  stepped,
  toolOf,
  toSet,
} from './torque.ts'

const wrench = { name: 'Wrench', tells: 'clicks', range: [5, 50], calibratedUntil: '2026-09-30' } as const
const asKept = { ...wrench, range: [5, 50] as [number, number] }

test('a stated torque has one figure, whichever way it was stated', () => {
  expect(newtonMetres(22)).toBe(22)
  expect(newtonMetres({ value: 18, unit: 'lbf·ft' })).toBeCloseTo(24.405, 3)
  expect(newtonMetres({ atLeast: 20, atMost: 24 })).toBe(22)
  expect(newtonMetres({ atMost: 8 })).toBe(8)
  expect(newtonMetres(undefined)).toBeNull()
})

test('figures have no more digits than a wrench', () => {
  expect(figureIn(24.4047, 'lbf·ft')).toBe('18')
  expect(figureIn(13.2, 'N·m')).toBe('13.2')
  expect(figureIn(10, 'lbf·in')).toBe('88.5')
  expect(quantityIn(10, 'lbf·in')).toEqual({ value: 88.5, unit: 'lbf·in' })
  expect(quantityIn(22, 'N·m')).toBe(22)
})

test('a crow-foot in line is set lower, and what the wrench shows is more at the bolt', () => {
  const foot = { lever: 300, reach: 100 }
  expect(toSet(40, foot)).toBe(30)
  expect(reachedBy('30', 'N·m', foot)).toEqual({ ok: true, torque: 40, newtonMetres: 40 })
  expect(toSet(40, { lever: 300, reach: 400, angle: 180 })).toBeNull()
})

test('what a wrench types is read as it comes: a sign, a comma, a unit of its own', () => {
  expect(reachedBy('+22.1', 'N·m', null)).toMatchObject({ ok: true, newtonMetres: 22.1 })
  expect(reachedBy('21,9', 'N·m', null)).toMatchObject({ ok: true, newtonMetres: 21.9 })
  expect(reachedBy('70 lbf·in', 'N·m', null)).toMatchObject({ ok: true, torque: { value: 70, unit: 'lbf·in' } })
  for (const text of ['abc', '0', '-4'])
    expect(reachedBy(text, 'N·m', null), text).toEqual({ ok: false, why: 'not a torque' })
  expect(reachedBy(' ', 'N·m', null)).toEqual({ ok: false, why: 'empty' })
})

test('out of its band below and above', () => {
  const band = { atLeast: 20.7, atMost: 23.3 }
  expect([20, 22, 24].map((torque) => against(torque, band))).toEqual(['below', null, 'above'])
})

test('a wrench is doubted for its range and its date, and a good one not at all', () => {
  expect(doubtsOf(asKept, [22], '2026-03-01')).toEqual([])
  expect(doubtsOf(asKept, [3, 22, 60], '2026-10-01')).toEqual(['below its range', 'above its range', 'out of date'])
  expect(doubtsOf(asKept, [8], '2026-03-01')).toEqual(['lowest fifth'])
  expect(doubtsOf({ name: 'Old', tells: 'clicks' }, [22], '2026-03-01')).toEqual(['no date'])
})

test('a tool without a reading is by feel and says so on the record', () => {
  expect(doubtsOf({ name: 'Ratchet', tells: 'nothing' }, [22], '2026-03-01')).toEqual([])
  expect(toolOf({ name: 'Ratchet', tells: 'nothing' }, null)).toEqual({ name: 'Ratchet', byFeel: true })
  expect(toolOf({ ...asKept, number: 'W-3' }, 'crow-foot 40 mm')).toEqual({
    name: 'Wrench, crow-foot 40 mm',
    number: 'W-3',
    calibratedUntil: '2026-09-30',
  })
  expect(toolOf({ ...asKept, deviation: 0.03 }, null)).toEqual({
    name: 'Wrench',
    calibratedUntil: '2026-09-30',
    range: [5, 50],
    deviation: 0.03,
  })
})

test('large keys step a figure from what is wanted, finely where it is small', () => {
  expect(stepped('', 22, 1, 'N·m')).toBe('22')
  expect(stepped('22', 22, -1, 'N·m')).toBe('21.5')
  expect(stepped('6,6', 6.6, 1, 'N·m')).toBe('6.7')
  expect(stepped('88.5', 10, 1, 'lbf·in')).toBe('89.5')
  expect(stepped('x', null, 1, 'N·m')).toBe('0')
})

test.each([
  ['90', 90],
  ['90°', 90],
  [' 37,5 ', 37.5],
  ['0', null],
  ['', null],
  ['-90', null],
  ['9000', null],
  ['a quarter', null],
])('%j is an angle of %s', (text, degrees) => {
  expect(readDegrees(text)).toBe(degrees)
})
