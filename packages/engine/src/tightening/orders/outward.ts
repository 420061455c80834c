/** Each bolt followed by the one across: what spirals, rails and corners share. */
import { clockwise, distance, first, numbered, type Places, reflected, wrapped } from './places.ts'
import { dot, minus, type Shape } from './shape.ts'

/** Of the greatest way out: bolts that are no farther apart than this lie in one ring for the eye. Common practice, no source. */
const RING = 0.1
/** Of the distance from the middle: so near to straight across is across, about 30° to either side. */
const ACROSS = 0.5
/** Of the greatest reach: below this two distances are equal. */
export const HAIR = 1e-6

/**
 * Takes the bolts ring by ring, `out` saying how far out each one is; in a ring always the nearest to the last one, clockwise where two are equally
 * near, and after each the one across, if there is one.
 */
export function outwardInPairs(places: Places, shape: Shape, out: number[]): number[] {
  const { middle, reach } = shape
  const turnFrom = (bolt: number | undefined) => {
    const from = bolt === undefined ? 0 : clockwise(middle, places[bolt]!.at)
    return (other: number) => wrapped(clockwise(middle, places[other]!.at) - from)
  }
  return inPairs(places, shape, (left, sequence) => {
    const ringEnd = Math.min(...[...left].map((bolt) => out[bolt]!)) + RING * Math.max(...out)
    const last = sequence.at(-1)
    const near = (bolt: number) => (last === undefined ? out[bolt]! : distance(places[last]!.at, places[bolt]!.at))
    const ring = [...left].filter((bolt) => out[bolt]! <= ringEnd)
    return first(ring, HAIR * reach, near, turnFrom(last))!
  })
}

/** Every bolt: always the one of those left that `next` names, and after it the one across from it, if there is one. */
export function inPairs(
  places: Places,
  shape: Shape,
  next: (left: ReadonlySet<number>, sequence: readonly number[]) => number,
): number[] {
  const left = new Set(numbered(places.length))
  const sequence: number[] = []
  while (left.size > 0) {
    const bolt = next(left, sequence)
    left.delete(bolt)
    sequence.push(bolt)
    const across = acrossFrom(places, shape, bolt, left)
    if (across !== undefined && left.delete(across)) sequence.push(across)
  }
  return sequence
}

/** Of the bolts `among`, the one across the middle from a bolt, or undefined when none stands near enough to there. */
export function acrossFrom(places: Places, shape: Shape, bolt: number, among: Iterable<number>): number | undefined {
  const { at } = places[bolt]!
  const { middle } = shape
  const there = reflected(at, middle)
  const allowed = ACROSS * distance(at, middle)
  const off = (other: number) => distance(places[other]!.at, there)
  const candidates = [...among].filter((other) => {
    const isOther = other !== bolt && dot(minus(places[other]!.at, middle), minus(at, middle)) < 0
    return isOther && off(other) <= allowed
  })
  return first(candidates, HAIR * shape.reach, off, (other) => clockwise(middle, places[other]!.at))
}
