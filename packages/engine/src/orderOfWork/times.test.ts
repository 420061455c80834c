import { expect, test } from 'vitest'
import { normalBelow } from '../maths/normal.ts'
import { seededRandom } from '../maths/random.ts'
import { chanceWithin, learntTime, timeOf } from './times.ts'

test('minutes are those stated, else learnt from units before, else not known', () => {
  expect(timeOf({ id: 'a', minutes: 10, minutesBefore: [3, 5] })).toEqual({ minutes: 10, spread: Math.SQRT2 })
  expect(timeOf({ id: 'a', minutesBefore: [3, 5, 10] })).toEqual({ minutes: 6, spread: Math.sqrt(13) })
  expect(timeOf({ id: 'a', minutesBefore: [4] })).toEqual({ minutes: 4, spread: 1.2 })
  expect(timeOf({ id: 'a' })).toBeUndefined()
  expect(learntTime([])).toBeUndefined()
})

test('[WO4] the chance of one job is that of the lognormal in closed form, and the median is even', () => {
  // mean exp(μ + σ²/2), variance (exp(σ²) − 1)·exp(2μ + σ²), chance Φ((ln t − μ)/σ)
  for (const [mu, sigma] of [
    [1, 0.2],
    [2.3, 0.5],
    [0, 1],
  ] as const) {
    const mean = Math.exp(mu + sigma ** 2 / 2)
    const spread = Math.sqrt(Math.exp(sigma ** 2) - 1) * mean
    expect(chanceWithin(Math.exp(mu), [{ minutes: mean, spread }])).toBeCloseTo(0.5, 12)
    expect(chanceWithin(Math.exp(mu + sigma), [{ minutes: mean, spread }])).toBeCloseTo(normalBelow(1), 12)
    expect(chanceWithin(Math.exp(mu - 2 * sigma), [{ minutes: mean, spread }])).toBeCloseTo(normalBelow(-2), 12)
  }
  expect(chanceWithin(4, [{ minutes: 4, spread: 0 }])).toBe(1)
  expect(chanceWithin(3, [{ minutes: 4, spread: 0 }])).toBe(0)
  expect(chanceWithin(0, [{ minutes: 4, spread: 1 }])).toBe(0)
})

test('[WO4] the chance of several jobs is that of 100,000 seeded draws, within 1 in 100', () => {
  const random = seededRandom(7)
  const gauss = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  const plans = [
    [1, 2, 3, 4].map((minutes) => ({ minutes, spread: 0.3 * minutes })),
    [5, 0.5, 0.5].map((minutes) => ({ minutes, spread: 0.5 * minutes })),
    Array.from({ length: 8 }, () => ({ minutes: 1, spread: 0.4 })),
  ]
  for (const times of plans) {
    const total = times.reduce((sum, { minutes }) => sum + minutes, 0)
    const shapes = times.map(({ minutes, spread }) => {
      const variance = Math.log(1 + (spread / minutes) ** 2)
      return { mu: Math.log(minutes) - variance / 2, sigma: Math.sqrt(variance) }
    })
    const draws = Array.from({ length: 100_000 }, () =>
      shapes.reduce((sum, { mu, sigma }) => sum + Math.exp(mu + sigma * gauss()), 0),
    )
    for (const limit of [0.8, 1, 1.2, 1.5].map((share) => share * total)) {
      const seen = draws.filter((took) => took <= limit).length / draws.length
      expect(Math.abs(chanceWithin(limit, times) - seen), `${limit} of ${total}`).toBeLessThan(0.01)
    }
  }
})
