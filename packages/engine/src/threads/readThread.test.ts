import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { METRIC_SERIES } from './metricSeries.ts'
import { metricThread, readThread } from './readThread.ts'
import { sameThread, threadName } from './thread.ts'
import { inchesOf, UNIFIED_SIZES } from './unifiedSeries.ts'

const read = (text: string) => {
  const answer = readThread(text)
  return answer.ok ? answer.value : undefined
}

describe('readThread', () => {
  test.each([
    ['M6', 'M6', 6, 1],
    ['M8x1', 'M8×1', 8, 1],
    ['M8×1.25', 'M8', 8, 1.25],
    ['M8X1,25', 'M8', 8, 1.25],
    ['M10 x 1.25', 'M10×1.25', 10, 1.25],
    ['M10*1', 'M10×1', 10, 1],
    ['m8-1.25', 'M8', 8, 1.25],
    ['  M 6  ', 'M6', 6, 1],
    ['M8-6g', 'M8', 8, 1.25],
    ['M8 6H', 'M8', 8, 1.25],
    ['M8x1-6H/6g', 'M8×1', 8, 1],
    ['M8-5g6g', 'M8', 8, 1.25],
    ['M8x.75', 'M8×0.75', 8, 0.75],
    ['M2.5', 'M2.5', 2.5, 0.45],
    ['M26x1.5', 'M26×1.5', 26, 1.5],
    ['M64', 'M64', 64, 6],
  ])('reads %s as %s', (text, name, diameter, pitch) => {
    expect(read(text)).toEqual({ profile: 'metric', diameter, pitch, name })
  })

  test.each([
    ['5/16-18 UNC', '5/16-18 UNC', 0.3125, 18],
    ['1/4-20', '1/4-20 UNC', 0.25, 20],
    ['1/4"-28', '1/4-28 UNF', 0.25, 28],
    ['#10-24 UNC', '#10-24 UNC', 0.19, 24],
    ['10-24', '#10-24 UNC', 0.19, 24],
    ['# 10-32', '#10-32 UNF', 0.19, 32],
    ['No. 10-32', '#10-32 UNF', 0.19, 32],
    ['7/16-20 UNF', '7/16-20 UNF', 0.4375, 20],
    ['7/16 UNF', '7/16-20 UNF', 0.4375, 20],
    ['1/4-20 UNC-2A', '1/4-20 UNC', 0.25, 20],
    ['1/4 - 20 UNC - 2B', '1/4-20 UNC', 0.25, 20],
    ['3/8-16UNC', '3/8-16 UNC', 0.375, 16],
    ['.3125-18', '5/16-18 UNC', 0.3125, 18],
    ['0.190-24', '#10-24 UNC', 0.19, 24],
    ['1-8', '1-8 UNC', 1, 8],
    ['1-64', '#1-64 UNC', 0.073, 64],
    ['1-1/8-7', '1 1/8-7 UNC', 1.125, 7],
    ['1 1/8-12 UNF', '1 1/8-12 UNF', 1.125, 12],
    ['3/8-32 UNEF', '3/8-32 UNEF', 0.375, 32],
    ['5/16 × 18 UNC', '5/16-18 UNC', 0.3125, 18],
  ])('reads %s as %s', (text, name, inches, perInch) => {
    const thread = read(text)
    expect(thread).toMatchObject({ profile: 'unified', name })
    expect(thread?.diameter).toBeCloseTo(inches * 25.4, 9)
    expect(thread?.pitch).toBeCloseTo(25.4 / perInch, 9)
  })

  test.each([
    '',
    'M',
    'hello',
    'M6x7',
    'M6x1.25',
    'M8x',
    'M0',
    'M99',
    'M6.5',
    'M26',
    'M8 LH',
    'M8x1x2',
    'xM8',
    'M8 zz',
    'M-8',
    'M8x1 7',
    '1/4',
    '5/16-24 UNC',
    '5/16-18 UNF',
    '1/4-21',
    '1/0-20',
    '-1/4-20',
    '#11-24',
    '9-8',
    '.3-18',
    '1/4-20 UNX',
    '20',
    'UNC',
    '#10',
    'G1/4',
    'x1/4-20',
    '1/4-20 UNC 2C',
  ])('refuses %j with what it found', (text) => {
    expect(readThread(text)).toEqual({ ok: false, faults: [{ code: 'not-a-thread', path: [], found: text }] })
  })

  test('reads back every name that it prints, metric and unified', () => {
    for (const [diameter, coarse, fine] of METRIC_SERIES)
      for (const pitch of [...(coarse === null ? [] : [coarse]), ...fine]) {
        const thread = metricThread(diameter, pitch)
        expect(read(thread.name)).toEqual(thread)
        expect(read(`M${diameter} x ${pitch}`)).toEqual(thread)
      }
    for (const [size, unc, unf, unef] of UNIFIED_SIZES)
      for (const [series, perInch] of [
        ['UNC', unc],
        ['UNF', unf],
        ['UNEF', unef],
      ] as const) {
        if (perInch === null) continue
        const thread = read(`${size}-${perInch} ${series}`)
        expect(thread?.name).toBe(`${size}-${perInch} ${series}`)
        expect(thread?.diameter).toBeCloseTo(inchesOf(size) * 25.4, 9)
        expect(read(`${size}-${perInch}`)?.name).toBe(thread?.name)
      }
  })

  test('never throws, whatever is typed', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[M#]?[\d/ .x×-]{0,10}(UNC)?$/)), (text) => {
        expect(typeof readThread(text).ok).toBe('boolean')
      }),
      { seed: 11, numRuns: 500 },
    )
  })
})

test('two threads are the same when their names are', () => {
  const m8 = metricThread(8, 1.25)
  expect(sameThread(m8, read('M8x1.25')!)).toBe(true)
  expect(sameThread(m8, metricThread(8, 1))).toBe(false)
  expect(threadName(m8)).toBe('M8')
})

test('a number size is 0.060 in and 0.013 in for each number', () => {
  expect(inchesOf('#0')).toBe(0.06)
  expect(inchesOf('#10')).toBe(0.19)
  expect(inchesOf('1 1/8')).toBe(1.125)
  expect(inchesOf('1')).toBe(1)
})
