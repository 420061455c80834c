import { describe, expect, test } from 'vitest'
import { bearingRing } from './head.ts'
import { assemblyPreload, assemblyStress, tighteningTorque } from './preload.ts'
import { thread } from './testing/check.ts'
import { clampFor, clampRange, lever, nutFactor, threadLever, tighteningFactor, torqueFor } from './torque.ts'

const M6 = thread('M6')
const M10 = thread('M10')

describe('torque and clamp load', () => {
  test('the lever is the printed formula: pitch part, thread friction, head friction', () => {
    expect(threadLever(M10, 0.1)).toBeCloseTo(0.1591549 * 1.5 + 0.5773503 * 0.1 * 9.0257215, 6)
    expect(lever(M10, 12.8, 0.1)).toBeCloseTo(threadLever(M10, 0.1) + 0.05 * 12.8, 9)
    expect(lever(M10, 12.8, 0.1, 0.2)).toBeCloseTo(threadLever(M10, 0.1) + 0.1 * 12.8, 9)
  })

  test('both ways agree, with one friction or two', () => {
    const m = torqueFor(M10, 12.8, 30_000, 0.12)
    expect(m).toBeCloseTo((30_000 * lever(M10, 12.8, 0.12)) / 1000, 9)
    expect(clampFor(M10, 12.8, m, 0.12)).toBeCloseTo(30_000, 6)
    expect(clampFor(M10, 12.8, torqueFor(M10, 12.8, 30_000, 0.1, 0.15), 0.1, 0.15)).toBeCloseTo(30_000, 6)
    expect(torqueFor(M10, 12.8, 30_000, 0.1, 0.15)).toBeGreaterThan(torqueFor(M10, 12.8, 30_000, 0.1))
  })

  test('the least clamp comes of the highest friction and a low wrench, the most of the opposite', () => {
    const range = clampRange(M6, 7.74, { lo: 9, hi: 11 }, { lo: 0.08, hi: 0.2 }, 0.05)
    expect(range.lo).toBeCloseTo(clampFor(M6, 7.74, 9 * 0.95, 0.2), 9)
    expect(range.hi).toBeCloseTo(clampFor(M6, 7.74, 11 * 1.05, 0.08), 9)
    expect(range.middle).toBeCloseTo(clampFor(M6, 7.74, 10, 0.14), 9)
    expect(range.scatter).toBeCloseTo(range.hi / range.lo, 12)
  })

  test('K is not µ: about 0.163 on M10 at 0.12', () => {
    expect(nutFactor(M10, bearingRing(M10)!.friction, 0.12)).toBeCloseTo(0.163, 3)
  })

  test('a scatter of 60 % is a tightening factor of 4', () => {
    expect(tighteningFactor(0.6)).toBeCloseTo(4, 12)
    expect(tighteningFactor(0)).toBe(1)
  })
})

describe('preload', () => {
  test('the stress at the 90 % preload is 90 % of yield, in either edition', () => {
    for (const edition of ['VDI 2230:2001 and later', 'VDI 2230:1986'] as const) {
      const load = assemblyPreload(M6, 640, 0.12, 0.9, edition)
      expect(assemblyStress(M6, load, 0.12, edition)).toBeCloseTo(576, 9)
    }
  })

  test('the older edition gives torques 6 to 10 % lower at 0.12', () => {
    const { friction } = bearingRing(M6)!
    const ratio =
      tighteningTorque(M6, friction, 640, 0.12, 0.9, 'VDI 2230:1986') / tighteningTorque(M6, friction, 640, 0.12)
    expect(ratio).toBeGreaterThan(0.9)
    expect(ratio).toBeLessThan(0.94)
  })

  test('it is the closed formula of the guideline', () => {
    const [as, d0, d2, p, mu] = [20.1229, 5.061836, 5.350481, 1, 0.12]
    const closed = (as * 0.9 * 640) / Math.sqrt(1 + 3 * (1.5 * (d2 / d0) * (p / (Math.PI * d2) + 1.1547 * mu)) ** 2)
    expect(assemblyPreload(M6, 640, mu) / closed).toBeCloseTo(1, 4)
  })

  test('another share scales it', () => {
    expect(assemblyPreload(M6, 640, 0.12, 0.45)).toBeCloseTo(assemblyPreload(M6, 640, 0.12) / 2, 9)
  })
})
