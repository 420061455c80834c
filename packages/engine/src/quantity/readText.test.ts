import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { intervalOf } from './interval.ts'
import type { Quantity } from './quantity.ts'
import { checkTwoFigures, readLength, readTorque, readUnit, writeInterval, writeQuantity } from './readText.ts'

describe('readLength', () => {
  test.each<[string, Quantity]>([
    ['31.9', 31.9],
    [' 31.9 mm ', 31.9],
    ['31,9', 31.9],
    ['.5', 0.5],
    ['31.9 ± 0.1 mm', { value: 31.9, plusMinus: 0.1 }],
    ['31,9±0,1', { value: 31.9, plusMinus: 0.1 }],
    ['31.9 +/- 0.1mm', { value: 31.9, plusMinus: 0.1 }],
    ['31.9 +- 0.1', { value: 31.9, plusMinus: 0.1 }],
    ['2.553 in', { value: 2.553, unit: 'in' }],
    ['2.553"', { value: 2.553, unit: 'in' }],
    ['1 1/4 in', { value: 1.25, unit: 'in' }],
    ['3/8 inch', { value: 0.375, unit: 'in' }],
    ['1.255 ± 0.005 in', { value: 1.255, plusMinus: 0.005, unit: 'in' }],
    ['11 to 13 mm', { atLeast: 11, atMost: 13 }],
    ['11-13', { atLeast: 11, atMost: 13 }],
    ['11 – 13 mm', { atLeast: 11, atMost: 13 }],
    ['11mm - 13mm', { atLeast: 11, atMost: 13 }],
    ['0.4 in to 0.5 in', { atLeast: 0.4, atMost: 0.5, unit: 'in' }],
    ['≥ 11', { atLeast: 11 }],
    ['>= 11 mm', { atLeast: 11 }],
    ['at least 0.5 in', { atLeast: 0.5, unit: 'in' }],
    ['min. 11', { atLeast: 11 }],
    ['≤13 mm', { atMost: 13 }],
    ['<= 13', { atMost: 13 }],
    ['at most 0.5 in', { atMost: 0.5, unit: 'in' }],
    ['max 13', { atMost: 13 }],
    ['2.553 in (64.85 mm)', { value: 2.553, unit: 'in', also: { value: 64.85 } }],
  ])('reads %s', (text, value) => {
    expect(readLength(text)).toEqual({ ok: true, value })
  })

  test('takes the unit that is asked for where none is written', () => {
    expect(readLength('2.5', 'in')).toEqual({ ok: true, value: { value: 2.5, unit: 'in' } })
    expect(readLength('2.5 mm', 'in')).toEqual({ ok: true, value: 2.5 })
    expect(readLength('2 to 3', 'in')).toEqual({ ok: true, value: { atLeast: 2, atMost: 3, unit: 'in' } })
  })

  test.each([
    ['', { code: 'not-a-length', path: [], found: '' }],
    ['abc', { code: 'not-a-length', path: [], found: 'abc' }],
    ['12 5', { code: 'not-a-length', path: [], found: '12 5' }],
    ['5mm6', { code: 'not-a-length', path: [], found: '5mm6' }],
    ['1/0 in', { code: 'not-a-length', path: [], found: 'in' }],
    ['-3', { code: 'negative', path: [], found: -3 }],
    ['−3 mm', { code: 'negative', path: [], found: -3 }],
    ['3 ± -1', { code: 'negative', path: [], found: -1 }],
    ['13-11', { code: 'ends-crossed', path: [], atLeast: 13, atMost: 11 }],
    ['5 furlong', { code: 'unknown-unit', path: [], found: 'furlong', expected: ['mm', 'in'] }],
    ['10 Nm', { code: 'wrong-dimension', path: [], found: 'N·m', expected: 'length' }],
    ['11 in to 13 mm', { code: 'not-a-length', path: [], found: '11 in to 13 mm' }],
    ['11 to 13 mm (0.5 in)', { code: 'not-a-length', path: [], found: '11 to 13 mm (0.5 in)' }],
    ['x (0.5 in)', { code: 'not-a-length', path: [], found: 'x (0.5 in)' }],
    ['5 (x)', { code: 'not-a-length', path: [], found: '5 (x)' }],
  ])('refuses %s', (text, fault) => {
    expect(readLength(text)).toEqual({ ok: false, faults: [fault] })
  })

  test('finds the slip of a manual that pairs 2.553 in with 64.55 mm', () => {
    const read = readLength('2.553 in (64.55 mm)')
    expect(read).toMatchObject({
      ok: false,
      faults: [{ code: 'two-figures-disagree', value: 2.553, unit: 'in', also: 64.55, alsoUnit: 'mm' }],
    })
    expect(read.ok ? 0 : read.faults[0]).toMatchObject({ off: expect.closeTo(0.2962, 6) })
  })
})

describe('readTorque', () => {
  test.each<[string, Quantity]>([
    ['10', 10],
    ['10 Nm', 10],
    ['10 N·m', 10],
    ['10 N.m', 10],
    ['10 n m', 10],
    ['20 lbf·ft', { value: 20, unit: 'lbf·ft' }],
    ['20 lb-ft', { value: 20, unit: 'lbf·ft' }],
    ['20 lbs ft', { value: 20, unit: 'lbf·ft' }],
    ['20 ft-lb', { value: 20, unit: 'ft-lb' }],
    ['20 ft lbs', { value: 20, unit: 'ft-lb' }],
    ['20 ft·lbf', { value: 20, unit: 'ft-lb' }],
    ['90 in-lb', { value: 90, unit: 'lbf·in' }],
    ['90 in-lbs', { value: 90, unit: 'lbf·in' }],
    ['90 in lbf', { value: 90, unit: 'lbf·in' }],
    ['90 lb in', { value: 90, unit: 'lbf·in' }],
    ['90 lbs-in', { value: 90, unit: 'lbf·in' }],
    ['90 lbf·in', { value: 90, unit: 'lbf·in' }],
    ['1.2 kgf·m', { value: 1.2, unit: 'kgf·m' }],
    ['1.2 kgm', { value: 1.2, unit: 'kgf·m' }],
    ['1.2 mkg', { value: 1.2, unit: 'kgf·m' }],
    ['1.2 mkgf', { value: 1.2, unit: 'kgf·m' }],
    ['9 to 11 N·m', { atLeast: 9, atMost: 11 }],
    ['20 lb-ft (27 N·m)', { value: 20, unit: 'lbf·ft', also: { value: 27 } }],
  ])('reads %s', (text, value) => {
    expect(readTorque(text)).toEqual({ ok: true, value })
  })

  test('refuses what is no torque', () => {
    expect(readTorque('tight')).toEqual({ ok: false, faults: [{ code: 'not-a-torque', path: [], found: 'tight' }] })
    expect(readTorque('10 mm')).toEqual({
      ok: false,
      faults: [{ code: 'wrong-dimension', path: [], found: 'mm', expected: 'torque' }],
    })
    expect(readTorque('10', 'lbf·in')).toEqual({ ok: true, value: { value: 10, unit: 'lbf·in' } })
  })

  test.each([
    ['millimetre', 'mm'],
    ['millimetres', 'mm'],
    ['millimeter', 'mm'],
    ['Millimeters', 'mm'],
    ['inches', 'in'],
    ['″', 'in'],
    ['furlong', undefined],
  ])('the unit %s is %s', (text, unit) => {
    expect(readUnit(text)).toBe(unit)
  })
})

describe('checkTwoFigures', () => {
  test.each([
    [{ value: 0.004, unit: 'in', also: { value: 0.102 } }],
    [{ value: 0.022, unit: 'in', also: { value: 0.559 } }],
    [{ value: 0.073, unit: 'in', also: { value: 1.85, unit: 'mm' } }],
    [{ value: 10 }],
    [{ value: 1, unit: 'in', also: { value: 25.4 } }],
  ] as const)('%j agrees', (figure) => {
    expect(checkTwoFigures(figure)).toBeNull()
  })

  test('one unit of the coarser last digit is allowed, a little more is not', () => {
    expect(checkTwoFigures({ value: 10, also: { value: 10.1 } })).toBeNull()
    expect(checkTwoFigures({ value: 10.5, also: { value: 10.61 } })).toMatchObject({ code: 'two-figures-disagree' })
    expect(checkTwoFigures({ value: 10.5, also: { value: 10.6 } })).toBeNull()
    expect(checkTwoFigures({ value: 1e-7, also: { value: 3e-7 } })).toMatchObject({ off: expect.closeTo(2e-7, 12) })
    expect(checkTwoFigures({ value: 1e-7, also: { value: 2e-7 } })).toBeNull()
  })

  test('torques are held in N·m and say where they stand', () => {
    expect(
      checkTwoFigures({ value: 20, unit: 'lbf·ft', also: { value: 30, unit: 'N·m' } }, 'torque', ['torque']),
    ).toEqual({
      code: 'two-figures-disagree',
      path: ['torque'],
      value: 20,
      unit: 'lbf·ft',
      also: 30,
      alsoUnit: 'N·m',
      off: expect.closeTo(2.88364, 4),
    })
    expect(checkTwoFigures({ value: 20, unit: 'lbf·ft', also: { value: 27 } }, 'torque')).toBeNull()
  })

  test('a unit of another dimension is its own fault', () => {
    expect(checkTwoFigures({ value: 1, unit: 'N·m', also: { value: 1 } })).toEqual({
      code: 'wrong-dimension',
      path: [],
      found: 'N·m',
      expected: 'length',
    })
    expect(checkTwoFigures({ value: 1, also: { value: 1, unit: 'N·m' } }, 'length', ['grip'])).toEqual({
      code: 'wrong-dimension',
      path: ['grip', 'also'],
      found: 'N·m',
      expected: 'length',
    })
  })
})

describe('writing', () => {
  test.each<[Quantity, 'length' | 'torque', string]>([
    [12.3, 'length', '12.3 mm'],
    [12.3, 'torque', '12.3 N·m'],
    [{ value: 31.9, plusMinus: 0.1 }, 'length', '31.9 ± 0.1 mm'],
    [{ value: 20, unit: 'lbf·ft', also: { value: 27 } }, 'torque', '20 lbf·ft (27 N·m)'],
    [{ nominal: 45 }, 'length', 'nominally 45 mm'],
    [{ atLeast: 11, atMost: 13 }, 'length', '11 to 13 mm'],
    [{ atLeast: 11 }, 'length', 'at least 11 mm'],
    [{ atMost: 0.5, unit: 'in' }, 'length', 'at most 0.5 in'],
    [{}, 'length', 'unknown'],
  ])('writes %j as a %s', (quantity, dimension, text) => {
    expect(writeQuantity(quantity, dimension)).toBe(text)
  })

  test('a length is meant where nothing is said', () => {
    expect(writeQuantity(3)).toBe('3 mm')
  })

  test.each([
    [{ lo: 11, hi: 13 }, 'mm', '11 to 13 mm'],
    [{ lo: 11.001, hi: 11.004 }, 'mm', '11 mm'],
    [{ lo: 25.4, hi: 50.8 }, 'in', '1 to 2 in'],
    [{ lo: 11, hi: Number.POSITIVE_INFINITY }, 'mm', 'at least 11 mm'],
    [{ lo: 0, hi: Number.POSITIVE_INFINITY }, 'mm', 'unknown'],
    [{ lo: 1.35581794833, hi: 2.71163589666 }, 'lbf·ft', '1 to 2 lbf·ft'],
    [{ lo: 100, hi: 100 }, 'mm', '100 mm'],
  ] as const)('writes the interval %j in %s', (interval, unit, text) => {
    expect(writeInterval(interval, unit)).toBe(text)
  })

  test('an interval has so many decimals at most', () => {
    expect(writeInterval({ lo: 1.234, hi: 5.678 }, 'mm', 1)).toBe('1.2 to 5.7 mm')
    expect(writeInterval({ lo: 100.4, hi: 250.4 }, 'mm', 0)).toBe('100 to 250 mm')
    expect(writeInterval({ lo: 1.5, hi: 2 })).toBe('1.5 to 2 mm')
  })

  test('what is written is read back as the same interval', () => {
    const quantity = fc.oneof(
      fc.integer({ min: 0, max: 99_999 }).map((n): Quantity => n / 1000),
      fc
        .tuple(fc.integer({ min: 1, max: 9999 }), fc.integer({ min: 1, max: 99 }))
        .map(([v, p]): Quantity => ({ value: v / 100, plusMinus: p / 100 })),
      fc
        .tuple(fc.integer({ min: 0, max: 999 }), fc.integer({ min: 0, max: 999 }))
        .map(([a, b]): Quantity => ({ atLeast: a / 10, atMost: (a + b) / 10, unit: 'in' })),
      fc.integer({ min: 0, max: 999 }).map((n): Quantity => ({ atLeast: n / 10 })),
      fc.integer({ min: 0, max: 999 }).map((n): Quantity => ({ atMost: n / 10 })),
    )
    fc.assert(
      fc.property(quantity, (q) => {
        const read = readLength(writeQuantity(q))
        expect(read.ok && intervalOf(read.value)).toEqual(intervalOf(q))
      }),
      { seed: 5, numRuns: 300 },
    )
  })

  test('never throws, whatever is typed', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[\d ./±+to()mnin-]{0,14}$/)), (text) => {
        expect(typeof readLength(text).ok).toBe('boolean')
        expect(typeof readTorque(text).ok).toBe('boolean')
      }),
      { seed: 7, numRuns: 800 },
    )
  })
})
