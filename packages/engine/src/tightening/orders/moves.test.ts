import fc from 'fast-check'
import { expect, test } from 'vitest'
import { seededRandom } from '../../maths/random.ts'
import { everyOrder, ordersOf } from './everyOrder.ts'
import { drawnChange, moveTo, reverse, swap, walk } from './moves.ts'

const from = Int32Array.of(0, 1, 2, 3, 4, 5)
const changed = (change: (from: Int32Array, into: Int32Array, i: number, j: number) => void, i: number, j: number) => {
  const into = new Int32Array(from.length)
  change(from, into, i, j)
  return [...into]
}

test('two change places, one moves up or down, a stretch turns round', () => {
  expect(changed(swap, 1, 4)).toEqual([0, 4, 2, 3, 1, 5])
  expect(changed(moveTo, 1, 4)).toEqual([0, 2, 3, 4, 1, 5])
  expect(changed(moveTo, 4, 1)).toEqual([0, 4, 1, 2, 3, 5])
  expect(changed(reverse, 1, 4)).toEqual([0, 4, 3, 2, 1, 5])
  expect([...from]).toEqual([0, 1, 2, 3, 4, 5])
})

test('a change drawn by chance is another order of the same bolts', () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 20 }), fc.integer(), (count, seed) => {
      const before = Int32Array.from({ length: count }, (_, i) => i)
      const into = new Int32Array(count)
      drawnChange(before, into, seededRandom(seed))
      expect([...into].sort((a, b) => a - b)).toEqual([...before])
      expect([...into]).not.toEqual([...before])
    }),
    { seed: 1, numRuns: 500 },
  )
})

test('a walk ends where no swap, move or reversal is better, or when it is spent', () => {
  // How far all are from falling order, which single swaps can always bring nearer.
  const off = (sequence: Int32Array) => sequence.reduce((sum, bolt, i) => sum + (bolt - (5 - i)) ** 2, 0)
  let least = off(from)
  const isBetter = (trial: Int32Array) => {
    const now = off(trial)
    if (now >= least) return false
    least = now
    return true
  }
  expect([...walk(from, isBetter, () => false)]).toEqual([5, 4, 3, 2, 1, 0])
  expect([
    ...walk(
      from,
      () => true,
      () => true,
    ),
  ]).toEqual([...from])
})

test('every order comes once', () => {
  for (const count of [0, 1, 2, 3, 4, 5, 6]) {
    const seen = new Set<string>()
    let calls = 0
    everyOrder(count, (sequence) => {
      calls++
      seen.add(sequence.join())
      expect(new Set(sequence).size).toBe(count)
    })
    expect([seen.size, calls]).toEqual([ordersOf(count), ordersOf(count)])
  }
  expect(ordersOf(8)).toBe(40_320)
})
