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

/** The generator known as mulberry32: 32 bits of state, good enough to draw test cases with. */
export function random(seed: number): Random {
  let state = seed >>> 0
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
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
