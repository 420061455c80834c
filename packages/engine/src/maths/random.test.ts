import { expect, test } from 'vitest'
import { random } from '../placement/testing/random.ts'
import { seededRandom } from './random.ts'

const drawn = (seed: number, count: number) => {
  const next = seededRandom(seed)
  return Array.from({ length: count }, next)
}

test('the numbers are those of the generator as written down a second time', () => {
  for (const seed of [0, 1, 2, 12345, 2 ** 31, 2 ** 32 - 1, -1, 4711.9]) {
    const other = random(seed)
    expect(drawn(seed, 200), `seed ${seed}`).toEqual(Array.from({ length: 200 }, () => other.next()))
  }
})

test('the first number of seed 1 is the one commonly shown for this generator (from memory)', () => {
  expect(drawn(1, 1)).toEqual([0.6270739405881613])
})

test('the same seed gives the same numbers, another seed others', () => {
  expect(drawn(7, 20)).toEqual(drawn(7, 20))
  expect(drawn(7, 20)).not.toEqual(drawn(8, 20))
})

test('numbers lie from 0 up to 1, and evenly', () => {
  const numbers = drawn(3, 10_000)
  expect(Math.min(...numbers)).toBeGreaterThanOrEqual(0)
  expect(Math.max(...numbers)).toBeLessThan(1)
  // 1000 are expected in each tenth; the spread of that count is 30, and 5 of those are 150.
  for (let tenth = 0; tenth < 10; tenth++)
    expect(Math.abs(numbers.filter((x) => Math.floor(x * 10) === tenth).length - 1000)).toBeLessThan(150)
})
