import { seededRandom } from '../../maths/random.ts'

/** A small seeded source of random numbers for generated faces: the same seed gives the same face on every machine. */
export type Random = {
  /** From 0 up to, not including, 1. */
  next(): number
  /** A whole number, both ends included. */
  whole(least: number, most: number): number
  /** Any number between the two. */
  between(least: number, most: number): number
  chance(probability: number): boolean
  pick<T>(from: readonly T[]): T
  shuffled<T>(list: readonly T[]): T[]
}

export function random(seed: number): Random {
  const next = seededRandom(seed)
  const whole = (least: number, most: number) => least + Math.floor(next() * (most - least + 1))
  return {
    next,
    whole,
    between: (least, most) => least + next() * (most - least),
    chance: (probability) => next() < probability,
    pick: (from) => from[whole(0, from.length - 1)]!,
    shuffled: (list) => {
      const copy = [...list]
      for (let last = copy.length - 1; last > 0; last -= 1) {
        const other = whole(0, last)
        const kept = copy[last]!
        copy[last] = copy[other]!
        copy[other] = kept
      }
      return copy
    },
  }
}
