import { expect, test } from 'vitest'
import { drawnCover, shuffled } from './clamp/testing/covers.ts'
import { linearCover, spreadOf, tighten, untouched } from './clamp/tighten.ts'
import { condense } from './plate/condense.ts'
import { raterOf } from './rating.ts'

const SHARES = [0.5, 1]
const NONE = Number.POSITIVE_INFINITY

/** One drawn cover on a soft, a middle and a stiff bed. */
function drawnRange(seed: number) {
  const { cover, stiffness, points, bolts } = drawnCover(seed)
  const cases = [stiffness / 10, stiffness, 10 * stiffness].map((bed) => ({
    compliance: condense(cover, { stiffness: bed }, points, 8).compliance,
    lines: [],
  }))
  return { bolts, cases }
}

test('[TI5] the rate of an order is its worst spread over the range of the bed, turn by turn', () => {
  for (let seed = 1; seed <= 8; seed++) {
    const { bolts, cases } = drawnRange(seed)
    const rate = raterOf(cases, bolts, [], 1, SHARES, true)
    for (let k = 0; k < 6; k++) {
      const sequence = shuffled(bolts.length, 10 * seed + k)
      const spreads = cases.map(({ compliance }) => {
        const standing = untouched(bolts)
        const passes = SHARES.map((share) => ({ share, visit: 1, sequence }))
        tighten(passes, bolts, true, linearCover(compliance), standing)
        return spreadOf(standing.loads, bolts)
      })
      expect(rate(Int32Array.from(sequence), NONE)).toBeCloseTo(Math.max(...spreads), 9)
    }
  }
})

test('[TI5] with a bound, an order below it is rated exactly and one above it as above, whatever was asked before', () => {
  let above = 0
  for (let seed = 1; seed <= 8; seed++) {
    const { bolts, cases } = drawnRange(seed)
    const [whole, bounded] = [0, 1].map(() => raterOf(cases, bolts, [], 1, SHARES, true))
    for (let k = 0; k < 40; k++) {
      const sequence = Int32Array.from(shuffled(bolts.length, 100 * seed + k))
      const exact = whole!(sequence, NONE)
      const bound = exact * [0.3, 0.9, 1, 1.2][k % 4]!
      const told = bounded!(sequence, bound)
      if (exact <= bound) expect(told).toBe(exact)
      else expect(told).toBeGreaterThan(bound)
      if (told < exact) above++
    }
  }
  expect(above).toBeGreaterThan(0)
})
