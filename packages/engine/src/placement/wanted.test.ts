import { expect, test } from 'vitest'
import type { Hole } from '../unit.ts'
import { problemsOf } from './problem.ts'
import { plainUnit } from './testing/plainFace.ts'
import { standardBolts } from './wanted.ts'

const BASE: Hole = { id: '1', thread: 'M6', grip: 25, threadDepth: 20, bottomDepth: 25, minimumEngagement: 8 }
const bolts = (hole: Partial<Hole> = {}) =>
  standardBolts(problemsOf(plainUnit([{ ...BASE, ...hole }], []))[0]!.holes[0]!)
/** Those that fit or may, by length. */
const left = (hole: Partial<Hole> = {}) =>
  Object.fromEntries(
    bolts(hole)
      .filter(({ verdict }) => verdict !== 'cannot')
      .map(({ length, verdict }) => [length, verdict]),
  )

// A length of 30 to 50 is right to 0.5, one of 18 to 30 to 0.42; the tip of an M6 is 1 to 2, its thread at least 2 × 6 + 6 − 2 = 16.

test('the standard lengths of the thread are judged from 1.2 to 20 diameters', () => {
  const lengths = bolts().map(({ length }) => length)
  expect(lengths[0]).toBe(8)
  expect(lengths.at(-1)).toBe(120)
  expect(new Set(bolts().map(({ thread }) => thread))).toEqual(new Set(['M6']))
})

test('each length has its tolerance, its tip and at least the thread of its standard', () => {
  // ×35 sticks out 9.5 to 10.5, with 7.5 to 9.5 of full thread in: may. ×40: 12.5 at least, 14.5 at most, the shank 24.5 at most: fits.
  // ×45: the shank may be 45.5 − 16 = 29.5, past 25: may. ×50 sticks out 24.5 at least, 22.5 of it full thread, past 20: cannot.
  expect(left()).toEqual({ 35: 'may', 40: 'fits', 45: 'may' })
})

test('a grip at the edge of the shortest thread', () => {
  // A ×40 that is 40.5 with a thread of 16 has a shank of 24.5.
  expect(left({ grip: 24.5 })[40]).toBe('fits')
  expect(left({ grip: 24.4 })[40]).toBe('may')
})

test('a short bolt is threaded to the head but for two pitches', () => {
  // ×10 is 9.71 to 10.29 long, its thread 8 to 10: the shank 2.29 at most.
  const shallow = { threadDepth: 10, bottomDepth: 12, minimumEngagement: 5 }
  expect(left({ ...shallow, grip: 2.29 })[10]).toBe('fits')
  expect(left({ ...shallow, grip: 2.28 })[10]).toBe('may')
  expect(left({ ...shallow, grip: 0 })[10]).toBe('may')
})

test('the tip counts from 1 to 2 pitches', () => {
  // ×40 at 39.5 with a tip of 2: 37.5 less 25 is 12.5.
  expect(left({ minimumEngagement: 12.5 })[40]).toBe('fits')
  expect(left({ minimumEngagement: 12.6 })[40]).toBe('may')
  // At 40.5 with a tip of 1: 39.5 less 25 is 14.5.
  expect(left({ minimumEngagement: 14.5 })[40]).toBe('may')
  expect(left({ minimumEngagement: 14.6 })[40]).toBeUndefined()
})

test('tip and thread go by the pitch: an M8 has a tip of 1.25 to 2.5 and at least 22 less 2.5 of thread', () => {
  const m8 = { thread: 'M8' }
  // ×40 at 39.5 with a tip of 2.5: 37 less 25 is 12. At 40.5 with a thread of 19.5 the shank is 21.
  expect(left({ ...m8, minimumEngagement: 12 })[40]).toBe('fits')
  expect(left({ ...m8, minimumEngagement: 12.1 })[40]).toBe('may')
  expect(left({ ...m8, grip: 21 })[40]).toBe('fits')
  expect(left({ ...m8, grip: 20.9 })[40]).toBe('may')
})

test('whatever feature the hole needs, a bolt that has it is thought of', () => {
  expect(left({ needs: ['stud end'] })).toEqual(left())
})

test('of a hole with several threads each is thought of, inch lengths too', () => {
  const both = bolts({ thread: ['M6', '1/4-20 UNC'] })
  expect(both.filter(({ thread }) => thread === 'M6')).toEqual(bolts())
  const inch = both.filter(({ thread }) => thread === '1/4-20 UNC')
  expect(inch[0]!.length).toBeCloseTo(9.525, 9)
  expect(inch.at(-1)!.length).toBeCloseTo(127, 9)
  // 1 1/2 in: 37.6 to 38.6 long, tip 1.27 to 2.54: 10.06 at least; its thread of 19.05 − 2.54 leaves a shank of 22.09.
  expect(inch.find(({ length }) => Math.abs(length - 38.1) < 1e-9)!.verdict).toBe('fits')
})

test('a hole that nothing standard fits', () => {
  expect(left({ threadDepth: 7 })).toEqual({})
})
