import fc from 'fast-check'
import { expect, test } from 'vitest'
import { random } from '../../placement/testing/random.ts'
import { burdenOf } from './burden.ts'
import { handTravel } from './handTravel.ts'
import { hardToRemember, knownOrders } from './memorability.ts'
import { type Pattern, patternsFor } from './patterns.ts'
import { numbered } from './places.ts'
import { grid, pan, placed, ring } from './testing/bolts.ts'

const covers = [
  ['a pan', pan(4, 3, [50, 50])],
  ['a valve body', grid(5, 3, [30, 40])],
  ['a round flange', ring(12, 80, 0.2)],
] as const

test('the hand goes from bolt to bolt and not back to the first', () => {
  const places = placed([
    [0, 0],
    [30, 40],
    [30, 0],
  ])
  expect(handTravel(places, [0, 1, 2])).toBe(90)
  expect(handTravel(places, Int32Array.of(1, 2, 0))).toBe(70)
  expect(handTravel(places, [2])).toBe(0)
  expect(handTravel(places, [])).toBe(0)
})

test.each(covers)(
  'on %s known patterns are the easiest to remember, also from another side or in a mirror',
  (_, places) => {
    const hard = hardToRemember(places)
    for (const { sequence } of patternsFor(places)) expect(hard(sequence)).toBe(0)
    expect(knownOrders(places).length).toBeGreaterThan(patternsFor(places).length)
    for (const sequence of knownOrders(places)) expect(hard(sequence)).toBe(0)
  },
)

test.each(covers)('on %s an order by chance is far harder than a pattern with two bolts swapped', (_, places) => {
  const hard = hardToRemember(places)
  const draw = random(5)
  const [{ sequence }] = patternsFor(places) as [Pattern]
  const swapped = [...sequence]
  ;[swapped[3], swapped[8]] = [swapped[8]!, swapped[3]!]
  const byChance = Array.from({ length: 200 }, () => hard(draw.shuffled(sequence)))
  const mean = byChance.reduce((sum, one) => sum + one, 0) / byChance.length
  expect(hard(swapped)).toBeGreaterThan(0)
  expect(hard(swapped)).toBeLessThan(0.7 * mean)
  expect(mean).toBeGreaterThan(0.4)
})

test('each simple rule is seen: the nearest, straight across, the mirror image, the same jump or way; a step by none costs most', () => {
  // 5 6 7 8 9
  // 0 1 2 3 4
  const hard = hardToRemember(grid(5, 2, [30, 70]))
  expect(hard([0, 1, 2, 3, 4, 9, 8, 7, 6, 5])).toBe(0)
  expect(hard([0, 9, 1, 8, 2, 7, 3, 6, 4, 5])).toBeLessThan(0.12)
  expect(hard([0, 5, 1, 6, 2, 7, 3, 8, 4, 9])).toBeLessThan(0.12)
  expect(hard([0, 2, 4, 8, 6, 1, 3, 9, 7, 5])).toBeLessThan(0.3)
  expect(hard([0, 7, 4, 1, 5, 3, 6, 2, 9, 8])).toBeGreaterThan(0.45)
})

test('how hard an order is lies from 0 to 1, and two bolts are never hard', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 9 })), {
        minLength: 1,
        maxLength: 12,
      }),
      fc.integer(),
      (points, seed) => {
        const hard = hardToRemember(placed(points))(random(seed).shuffled(numbered(points.length)))
        expect(hard).toBeGreaterThanOrEqual(0)
        expect(hard).toBeLessThanOrEqual(points.length < 3 ? 0 : 1)
      },
    ),
    { seed: 6, numRuns: 200 },
  )
})

test('the shop’s pattern is a burden of 1, whatever the size of the cover', () => {
  for (const [, places] of covers) expect(burdenOf(places)(patternsFor(places)[0]!.sequence)).toBeCloseTo(1, 12)
  expect(burdenOf(placed([[3, 3]]))([0])).toBe(0)
})
