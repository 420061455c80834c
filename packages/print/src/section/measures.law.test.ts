import fc from 'fast-check'
import { expect, test } from 'vitest'
import { engagementOf } from './measures.ts'

const interval = (most: number) =>
  fc
    .tuple(fc.double({ min: 0, max: most, noNaN: true }), fc.double({ min: 0, max: 5, noNaN: true }))
    .map(([lo, off]) => ({ lo, hi: lo + off }))
const part = fc.double({ min: 0, max: 1, noNaN: true })

test('the engagement of any values inside the intervals lies inside the engagement that is told', () => {
  fc.assert(
    fc.property(
      fc.tuple(interval(40), interval(4), interval(30), interval(5), interval(30)),
      fc.tuple(part, part, part, part, part),
      (intervals, parts) => {
        const [s, u, b, c, T] = intervals.map(({ lo, hi }, i) => lo + (hi - lo) * parts[i]!) as [
          number,
          number,
          number,
          number,
          number,
        ]
        // Overlap of the two full threads as stretches, not as the four lines.
        const overlap = Math.max(0, Math.min(s - u, c + T) - Math.max(s - b, c))
        const told = engagementOf(...intervals)
        expect(overlap).toBeGreaterThanOrEqual(told.lo - 1e-9)
        expect(overlap).toBeLessThanOrEqual(told.hi + 1e-9)
      },
    ),
    { seed: 6410, numRuns: 2000 },
  )
})

test('the ends that are told are reached', () => {
  expect(
    engagementOf({ lo: 12, hi: 13 }, { lo: 1, hi: 2 }, { lo: 24, hi: 24 }, { lo: 0, hi: 1 }, { lo: 14, hi: 14 }),
  ).toEqual({ lo: 9, hi: 12 })
})
