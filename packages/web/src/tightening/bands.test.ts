import type { CoverMap } from '@gripbook/engine'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { BANDS, bandsOf, topOf } from './bands.ts'

const map: CoverMap = {
  from: [10, 20],
  step: 3,
  columns: 3,
  rows: 2,
  pressure: [0.1, 0.1, null, 0.1, 0.9, 0],
  gap: [0, 0, null, 0, 0, 0.02],
  bows: [],
}

/** mm² that a path of rectangles covers. */
const covered = (path: string) =>
  [...path.matchAll(/h(-?[\d.]+)v([\d.]+)/g)].reduce((sum, [, wide, high]) => sum + Number(wide) * Number(high), 0)

test('what lies on the bed is in just one band, and a gap in none', () => {
  const { bands, gap, greatest } = bandsOf(map, 1)
  expect(bands).toHaveLength(BANDS)
  expect(bands.map(({ from }) => from)).toEqual([0, 0.2, 0.4, 0.6000000000000001, 0.8])
  expect(greatest).toBe(0.9)
  expect(gap.most).toBe(0.02)
  expect(covered(gap.path)).toBeGreaterThan(0)
  for (const { path } of bands) expect(covered(path)).toBeGreaterThan(0)
  const dry = bandsOf({ ...map, pressure: map.pressure.map(() => 0), gap: map.gap.map(() => 0) }, 1)
  expect([...dry.bands.map(({ path }) => path), dry.gap.path]).toEqual(['', '', '', '', '', ''])
})

test('an even pressure is one band over the whole grid', () => {
  const even = { ...map, pressure: map.pressure.map(() => 0.5), gap: map.gap.map(() => 0) }
  const { bands } = bandsOf(even, 1)
  expect(bands.map(({ path }) => path === '')).toEqual([true, true, false, true, true])
  // points stand in the middle of their cells, the finer ones too; rows overlap a little
  expect(covered(bands[2]!.path)).toBeCloseTo(17 * 0.375 * (9 * 0.375) * 1.15, 1)
})

test('the top is a round figure that holds the greatest pressure, and not much more', () => {
  expect(topOf(0.93)).toBeCloseTo(1, 12)
  expect(topOf(1.2)).toBeCloseTo(2.5, 12)
  expect(topOf(0)).toBe(BANDS)
  fc.assert(
    fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (greatest) => {
      expect(topOf(greatest)).toBeGreaterThanOrEqual(greatest * (1 - 1e-6))
      expect(topOf(greatest)).toBeLessThanOrEqual(greatest * 2.6)
    }),
    { seed: 5 },
  )
})
