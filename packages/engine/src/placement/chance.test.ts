import { describe, expect, test } from 'vitest'
import type { Hole, Kind } from '../unit.ts'
import { fitChance, lengthPrior, likelySpans } from './chance.ts'
import { problemsOf } from './problem.ts'
import { plainUnit } from './testing/plainFace.ts'

type Changed<T> = { [K in keyof T]?: T[K] | undefined }

/** Sticks out 15 of a hole with 20 of thread and 8 asked for, as in the tests of pairs. */
function spans(hole: Changed<Hole> = {}, kind: Changed<Kind> = {}) {
  const base: Hole = { id: '1', thread: 'M6', grip: 25, threadDepth: 20, bottomDepth: 25, minimumEngagement: 8 }
  const bolt: Kind = { id: 'a', thread: 'M6', length: 40, threadLength: 30, tip: 0 }
  const problem = problemsOf(plainUnit([{ ...base, ...hole } as Hole], [{ ...bolt, ...kind } as Kind]))[0]!
  return { hole: problem.holes[0]!, kind: problem.kinds[0]! }
}
const chance = (...of: Parameters<typeof spans>) => {
  const { hole, kind } = spans(...of)
  return fitChance(hole, kind)
}
const from = (atLeast: number, atMost: number) => ({ atLeast, atMost })
const through = { ending: 'through', bottomDepth: undefined } as const

describe('with every figure certain it is all or nothing, and an edge is all', () => {
  test.each<[string, number, Changed<Hole>, Changed<Kind>]>([
    ['as it stands', 1, {}, {}],
    ['just enough engagement', 1, { grip: 32 }, {}],
    ['too little', 0, { grip: 32.1 }, {}],
    ['the mouth counts', 0, { grip: 31, mouth: 1.1 }, {}],
    ['the mouth counts just so', 1, { grip: 31, mouth: 1 }, {}],
    ['the tip counts', 0, { grip: 31 }, { tip: 1.1 }],
    ['the tip counts just so', 1, { grip: 31 }, { tip: 1 }],
    ['washer, bracket and gasket count', 0, { bracket: 3, gasket: 1.5 }, { washer: 2.6 }],
    ['washer, bracket and gasket count just so', 1, { bracket: 3, gasket: 1.5 }, { washer: 2.5 }],
    ['the shank just short', 1, {}, { threadLength: 15 }],
    ['the shank in the thread', 0, {}, { threadLength: 14.9 }],
    ['the shank as far as the mouth', 1, { mouth: 1 }, { threadLength: 14 }],
    ['the tip at the bottom', 1, { threadDepth: 12, bottomDepth: 15 }, { tip: 5 }],
    ['the tip below the bottom', 0, { threadDepth: 12, bottomDepth: 14.9 }, { tip: 5 }],
    ['full thread at the end of the hole’s', 1, { threadDepth: 15 }, {}],
    ['full thread past the hole’s', 0, { threadDepth: 14.9 }, {}],
    ['with a mouth before it', 1, { threadDepth: 14, mouth: 1 }, {}],
    ['thread of the hole just enough', 1, { ...through, threadDepth: 8 }, {}],
    ['thread of the hole too short', 0, { ...through, threadDepth: 7.9 }, {}],
    ['behind just so', 1, { ...through, threadDepth: 10, behind: 5 }, {}],
    ['behind too little', 0, { ...through, threadDepth: 10, behind: 4.9 }, {}],
    ['behind at its most', 1, { ...through, threadDepth: 10, behind: from(0, 5) }, {}],
    ['behind not known', 1, { ...through, threadDepth: 10 }, {}],
    ['the least engagement that may do', 1, { grip: 34, minimumEngagement: from(6, 9) }, {}],
    ['less than that', 0, { grip: 34.1, minimumEngagement: from(6, 9) }, {}],
    ['a thread that is stated longer than the bolt ends with it', 1, {}, { threadLength: from(41, 43) }],
  ])('%s: %d', (_, expected, hole, kind) => {
    expect(chance(hole, kind)).toBe(expected)
  })
})

describe('with a figure even over its span it is the share of the span', () => {
  // 64 points of a sequence with little discrepancy: right to about 2 of them.
  const near = (share: number) => [share - 2 / 64, share + 2 / 64] as const
  test.each<[string, number, Changed<Hole>, Changed<Kind>]>([
    ['grip 28 to 36 of which 32 is the most', 0.5, { grip: from(28, 36) }, {}],
    ['grip 31 to 35', 0.25, { grip: from(31, 35) }, {}],
    ['grip 20 to 32 all fits', 1, { grip: from(20, 32) }, {}],
    ['length 29 to 37 of which 33 is the least', 0.5, {}, { length: from(29, 37), threadLength: 20 }],
    ['length 40 to 48 of which 45 is the most', 5 / 8, {}, { length: from(40, 48) }],
    ['thread depth 10 to 20 of which 15 is the least', 0.5, { threadDepth: from(10, 20) }, {}],
    ['bottom 12 to 16 of which 15 is the least', 0.25, { threadDepth: 12, bottomDepth: from(12, 16) }, { tip: 4 }],
    ['bracket 0 to 14 of which 7 is the most', 0.5, { bracket: from(0, 14) }, {}],
    ['gasket 0 to 14 of which 7 is the most', 0.5, { gasket: from(0, 14) }, {}],
    ['mouth 0 to 10 of which 7 is the most', 0.7, { mouth: from(0, 10), bottomDepth: 40 }, {}],
    ['washer 0 to 28 of which 7 is the most', 0.25, {}, { washer: from(0, 28) }],
    ['tip 0 to 10 of which 7 is the most', 0.7, {}, { tip: from(0, 10) }],
    ['thread length 10 to 20 of which 15 is the least', 0.5, {}, { threadLength: from(10, 20) }],
    // Run-out 0 to 2.5 under the head of a bolt of 12 with 1 clamped: the shank may be 1.
    [
      'run-out 0 to 2.5 of which 1 is the most',
      0.4,
      { grip: 1, minimumEngagement: 2 },
      { length: 12, threadLength: undefined },
    ],
    // Two even figures: grip 28 to 36 less length 36 to 44 is a triangle; 8 or more over 4 of its 16 is half.
    ['grip and length together', 0.5, { grip: from(28, 36) }, { length: from(36, 44) }],
  ])('%s: %d', (_, share, hole, kind) => {
    const [least, most] = near(share)
    const found = chance(hole, kind)
    expect(found).toBeGreaterThanOrEqual(least)
    expect(found).toBeLessThanOrEqual(most)
  })

  test('two figures set against each other fill their part of the rectangle', () => {
    const found = chance({ grip: from(15, 35), threadDepth: from(10, 20), minimumEngagement: 0 })
    // Run-out: 40 − G ≤ T, so G + T ≥ 40 with G from 15 to 35 and T from 10 to 20: 0.5 of the rectangle.
    expect(found).toBeGreaterThan(0.45)
    expect(found).toBeLessThan(0.55)
  })
})

describe('unknown ends', () => {
  const mm = (lo: number, hi: number) => ({ lo: Math.round(lo * 1e6), hi: Math.round(hi * 1e6) })

  test('a grip without an end is 60 more than its least, a thread 2 diameters, a bottom 1 diameter below the thread', () => {
    expect(likelySpans(spans({ grip: undefined, threadDepth: undefined, bottomDepth: undefined }).hole)).toEqual({
      grip: mm(0, 60),
      threadDepth: mm(0, 12),
      bottomDepth: mm(0, 18),
    })
    expect(
      likelySpans(
        spans({ grip: { atLeast: 5 }, threadDepth: { atLeast: 4 }, bottomDepth: undefined, mouth: from(1, 2) }).hole,
      ),
    ).toEqual({ grip: mm(5, 65), threadDepth: mm(4, 16), bottomDepth: mm(5, 24) })
  })

  test('a bottom of which the least is known', () => {
    expect(likelySpans(spans({ bottomDepth: { atLeast: 30 } }).hole).bottomDepth).toEqual(mm(30, 36))
    expect(likelySpans(spans({ bottomDepth: { atLeast: 15 } }).hole).bottomDepth).toEqual(mm(20, 26))
    expect(likelySpans(spans({ bottomDepth: from(15, 60) }).hole).bottomDepth).toEqual(mm(15, 60))
  })

  test('of several threads the thickest counts', () => {
    expect(likelySpans(spans({ thread: ['M6', 'M10'], threadDepth: undefined }).hole).threadDepth).toEqual(mm(0, 20))
  })

  test('what is known stays as it is', () => {
    expect(likelySpans(spans({ grip: from(20, 30) }).hole)).toEqual({
      grip: mm(20, 30),
      threadDepth: mm(20, 20),
      bottomDepth: mm(25, 25),
    })
    expect(lengthPrior(spans({}, { length: from(20, 30) }).kind)).toEqual(mm(20, 30))
  })

  test('a length without an end is 80 more than its least', () => {
    expect(lengthPrior(spans({}, { length: undefined }).kind)).toEqual(mm(0, 80))
    expect(lengthPrior(spans({}, { length: { atLeast: 20 } }).kind)).toEqual(mm(20, 100))
  })

  test('other things without an end are taken at their least', () => {
    expect(chance({ grip: 31, bracket: { atLeast: 1 } })).toBe(1)
    expect(chance({ grip: 31, mouth: { atLeast: 1 }, bottomDepth: 60 })).toBe(1)
    expect(chance({ grip: 31 }, { washer: { atLeast: 1 } })).toBe(1)
    expect(chance({ grip: 31 }, { tip: { atLeast: 1 } })).toBe(1)
    expect(chance({}, { threadLength: { atLeast: 15 } })).toBe(1)
    expect(chance({}, { threadLength: { atLeast: 14.9 } })).toBe(0)
  })

  test('a grip and length that nobody knows have a chance all the same', () => {
    const found = chance({ grip: undefined }, { length: undefined })
    expect(found).toBeGreaterThan(0.05)
    expect(found).toBeLessThan(0.4)
  })
})
