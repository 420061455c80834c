import { expect, test } from 'vitest'
import { seededRandom } from '../../maths/random.ts'
import { random } from '../../placement/testing/random.ts'
import { burdenOf } from './burden.ts'
import { handTravel } from './handTravel.ts'
import { patternsFor } from './patterns.ts'
import { numbered } from './places.ts'
import { type OrderSearch, searchOrder } from './search.ts'
import { pan } from './testing/bolts.ts'
import { anyModel } from './testing/twoWayModel.ts'

const places = pan(8, 4, [30, 30])
const model = anyModel(random(3), places.length, true)

const search = (more: Partial<OrderSearch> = {}) =>
  searchOrder({
    count: places.length,
    starts: patternsFor(places).map(({ sequence }) => sequence),
    rate: (sequence) => model.spread(sequence, [0.3, 0.6, 1]),
    burden: burdenOf(places),
    effort: 6000,
    random: seededRandom(1),
    ...more,
  })

test('the same seed finds the same order, another one may find another', () => {
  expect(search()).toEqual(search())
  expect(search({ random: seededRandom(2) }).sequence).not.toEqual(search().sequence)
})

test('it tells how far it is, rising to 1', () => {
  const heard: number[] = []
  search({ told: (done) => heard.push(done) })
  expect(heard.length).toBeGreaterThan(8)
  expect(heard).toEqual(heard.toSorted((a, b) => a - b))
  expect(heard.at(-1)).toBe(1)
})

test('where every order is as good the easiest comes out: one bolt after the other, not the pattern it started from', () => {
  const small = pan(3, 1, [40, 40])
  const { sequence, truly } = search({
    count: small.length,
    starts: [patternsFor(small)[0]!.sequence],
    rate: () => 0.2,
    burden: burdenOf(small),
  })
  expect(handTravel(small, sequence)).toBe(7 * 40)
  expect(truly).toBe(false)
})

test('an order is made easier only as far as it stays as good as the best start', () => {
  const [start] = patternsFor(places)
  const startRate = model.spread(start!.sequence, [0.3, 0.6, 1])
  const found = search({ burden: (sequence) => handTravel(places, sequence) })
  const stubborn = search({ burden: () => 0 })
  expect(found.rate).toBeLessThanOrEqual(startRate)
  expect(found.rate).toBeLessThanOrEqual(1.03 * stubborn.rate)
  expect(handTravel(places, found.sequence)).toBeLessThan(handTravel(places, stubborn.sequence))
})

test('one bolt, no bolt and no start are no trouble', () => {
  const rate = (sequence: Int32Array) => sequence.length
  expect(search({ count: 1, starts: [[0]], rate, burden: () => 0 }).sequence).toEqual([0])
  expect(search({ count: 0, starts: [], rate, burden: () => 0 }).sequence).toEqual([])
  expect(search({ count: 12, starts: [], rate, burden: () => 0 }).sequence).toEqual(numbered(12))
  expect(search({ count: 12, starts: [], rate, burden: () => 0, effort: 1 }).tried).toBe(1)
})

test('a start that leaves a bolt out, and a rate that is no number, are bugs', () => {
  expect(() => search({ starts: [[0, 1]] })).toThrow('every bolt once')
  expect(() => search({ rate: () => Number.NaN })).toThrow('0 or more')
})
