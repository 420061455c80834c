/** A stream of numbers from 0 to 1 that a seed settles (the mulberry32 generator), so that a found case can be run again. */
export type Random = () => number

export function seeded(seed: number): Random {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
}

/** One of a list. */
export function pick<T>(random: Random, from: readonly T[]): T {
  return from[Math.floor(random() * from.length)]!
}
