import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { oddDrag, withDrag } from './drag.ts'
import { hasReading, swivelRange, torqueAtBolt, wrenchDeviation, wrenchFitness, wrenchSetting } from './wrench.ts'

test('a setting wrench is good to 6 % up to 10 N·m and to 4 % above', () => {
  expect(wrenchDeviation(5)).toBe(0.06)
  expect(wrenchDeviation(10)).toBe(0.06)
  expect(wrenchDeviation(10.1)).toBe(0.04)
})

describe('extensions', () => {
  test('in line the wrench is set lower, square nothing changes, turned back higher', () => {
    expect(wrenchSetting(60, { lever: 300, reach: 60 })).toBeCloseTo(50, 9)
    expect(wrenchSetting(60, { lever: 300, reach: 60, angle: 90 })).toBe(60)
    expect(wrenchSetting(60, { lever: 300, reach: 60, angle: -90 })).toBe(60)
    expect(wrenchSetting(60, { lever: 300, reach: 60, angle: 180 })).toBeCloseTo(75, 9)
    expect(wrenchSetting(60, { lever: 300, reach: 60, angle: 60 })).toBeCloseTo((60 * 300) / 330, 9)
  })

  test('one that reaches the hand has no setting', () => {
    expect(wrenchSetting(60, { lever: 60, reach: 60, angle: 180 })).toBeUndefined()
    expect(wrenchSetting(60, { lever: 50, reach: 60, angle: 180 })).toBeUndefined()
    expect(wrenchSetting(60, { lever: 0, reach: 60 })).toBeUndefined()
  })

  test('[law] setting and torque at the bolt undo each other', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 500, noNaN: true }),
        fc.double({ min: 100, max: 600, noNaN: true }),
        fc.double({ min: 0, max: 90, noNaN: true }),
        fc.integer({ min: 0, max: 180 }),
        (torque, lever, reach, angle) => {
          const set = wrenchSetting(torque, { lever, reach, angle })
          expect(torqueAtBolt(set!, { lever, reach, angle })).toBeCloseTo(torque, 6)
        },
      ),
      { seed: 3, numRuns: 200 },
    )
  })
})

test('a swivel lets the torque swing between cos β and 1/cos β', () => {
  expect(swivelRange(100, 0)).toEqual({ lo: 100, hi: 100 })
  const { lo, hi } = swivelRange(100, 60)
  expect(lo).toBeCloseTo(50, 9)
  expect(hi).toBeCloseTo(200, 9)
})

test('only a torque wrench has a reading', () => {
  expect(hasReading('torque wrench')).toBe(true)
  expect(hasReading('torque wrench with straight extension')).toBe(true)
  expect(hasReading('torque wrench with swivel')).toBe(true)
  expect(hasReading('ratchet wrench')).toBe(false)
  expect(hasReading('impact driver')).toBe(false)
})

describe('wrenchFitness', () => {
  const range = { lo: 5, hi: 50 }
  const wrench = { range, calibrated: '2026-01-31' }

  test('inside its range and calibrated within the year it is fit', () => {
    expect(wrenchFitness(wrench, 20, '2026-06-01')).toEqual({
      fit: true,
      findings: [],
      deviation: 0.04,
      due: '2027-01-31',
    })
    expect(wrenchFitness({ ...wrench, deviation: 0.03 }, 20, '2026-06-01').deviation).toBe(0.03)
  })

  test.each([
    [4.9, 'below its range'],
    [50.1, 'above its range'],
  ])('%d N·m is %s and not fit', (torque, finding) => {
    expect(wrenchFitness(wrench, torque, '2026-06-01')).toMatchObject({ fit: false, findings: [finding] })
  })

  test('both ends of its range belong to it', () => {
    expect(wrenchFitness(wrench, 50, '2026-06-01').findings).toEqual([])
    expect(wrenchFitness({ ...wrench, range: { lo: 10, hi: 50 } }, 10, '2026-06-01').findings).toEqual([])
  })

  test('the lowest fifth is said but still fit', () => {
    expect(wrenchFitness(wrench, 9.9, '2026-06-01')).toMatchObject({
      fit: true,
      findings: ['in the lowest fifth, where it is not checked'],
      deviation: 0.06,
    })
    expect(wrenchFitness(wrench, 10, '2026-06-01').findings).toEqual([])
  })

  test('the calibration must be there, be a day, be past and not be over', () => {
    expect(wrenchFitness({ range }, 20, '2026-06-01')).toEqual({
      fit: false,
      findings: ['no calibration date'],
      deviation: 0.04,
    })
    for (const calibrated of [
      'last year',
      '2026-13-01',
      '2026-00-10',
      '2026-02-29',
      '2026-04-31',
      '2026-01-00',
      '2026-1-1',
      '2026-01-32',
    ])
      expect(wrenchFitness({ range, calibrated }, 20, '2026-06-01')).toMatchObject({
        fit: false,
        findings: ['calibration date not readable'],
      })
    expect(wrenchFitness({ range, calibrated: '2026-06-02' }, 20, '2026-06-01')).toMatchObject({
      fit: false,
      findings: ['calibrated after today'],
    })
    expect(wrenchFitness({ range, calibrated: '2026-06-01' }, 20, '2026-06-01').fit).toBe(true)
    expect(wrenchFitness({ range, calibrated: '2025-06-01' }, 20, '2026-06-01').fit).toBe(true)
    expect(wrenchFitness({ range, calibrated: '2025-05-31' }, 20, '2026-06-01')).toMatchObject({
      fit: false,
      findings: ['out of calibration'],
    })
  })

  test.each([
    ['2024-02-29', 12, '2025-02-28'],
    ['2000-02-29', 48, '2004-02-29'],
    ['2025-08-31', 6, '2026-02-28'],
    ['2025-08-31', 1, '2025-09-30'],
    ['2025-11-30', 3, '2026-02-28'],
    ['2025-12-15', 1, '2026-01-15'],
    ['2025-01-31', 11, '2025-12-31'],
    ['2099-02-28', 12, '2100-02-28'],
  ])('calibrated on %s for %d months it is due on %s', (calibrated, calibrationMonths, due) => {
    expect(wrenchFitness({ range, calibrated, calibrationMonths }, 20, calibrated).due).toBe(due)
  })

  test('a leap day exists in 2000 and 2024, not in 2100 or 2023', () => {
    const due = (calibrated: string) => wrenchFitness({ range, calibrated }, 20, '2200-01-01').due
    expect(due('2000-02-29')).toBeDefined()
    expect(due('2024-02-29')).toBeDefined()
    expect(due('2100-02-29')).toBeUndefined()
    expect(due('2023-02-29')).toBeUndefined()
    expect(due('2025-06-31')).toBeUndefined()
    expect(due('2025-09-31')).toBeUndefined()
    expect(due('2025-11-31')).toBeUndefined()
    expect(due('2025-12-31')).toBeDefined()
  })
})

describe('drag', () => {
  test('is added, and worth adding from a third of the torque', () => {
    expect(withDrag(9, 2)).toEqual({ setting: 11, worthAdding: false })
    expect(withDrag(9, 3)).toEqual({ setting: 12, worthAdding: true })
  })

  test('stands out where the neighbours have none, worst first', () => {
    expect(oddDrag({ a: 0.1, b: 0.2, c: 0.1, d: 2, e: 3 })).toEqual([
      { hole: 'e', drag: 3, usual: 0.2 },
      { hole: 'd', drag: 2, usual: 0.2 },
    ])
    expect(oddDrag({ a: 0, b: 0.2, c: 0.4, d: 4 })).toEqual([{ hole: 'd', drag: 4, usual: expect.closeTo(0.3, 9) }])
  })

  test('does not stand out where all drag, by little, or beside too few', () => {
    expect(oddDrag({ a: 2, b: 2.1, c: 2.2 })).toEqual([])
    expect(oddDrag({ a: 0, b: 0, c: 0.4 })).toEqual([])
    expect(oddDrag({ a: 0, b: 0, c: 0.5 })).toEqual([{ hole: 'c', drag: 0.5, usual: 0 }])
    expect(oddDrag({ a: 0, b: 5 })).toEqual([])
    expect(oddDrag({ a: 1, b: 1, c: 2 })).toEqual([])
    expect(oddDrag({})).toEqual([])
  })
})
