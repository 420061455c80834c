import { HAIR, inPairs } from './outward.ts'
import { clockwise, distance, first, numbered, type Places } from './places.ts'
import type { Shape } from './shape.ts'

/** Opposite corners first, then always the bolt that is farthest from all tight ones, and the one across from it. */
export function corners(places: Places, shape: Shape): number[] {
  const near = HAIR * shape.reach
  const apart = (bolt: number, other: number) => distance(places[bolt]!.at, places[other]!.at)
  const fromMiddle = (bolt: number) => distance(places[bolt]!.at, shape.middle)
  const angle = (bolt: number) => clockwise(shape.middle, places[bolt]!.at)
  const all = numbered(places.length)
  const outermost = shape.corners.map(
    (corner) => first(all, near, (bolt) => distance(places[bolt]!.at, corner), angle)!,
  )
  return inPairs(places, shape, (left, tight) => {
    const outer = outermost.filter((bolt) => left.has(bolt))
    if (outer.length > 0) return first(outer, near, (bolt) => -fromMiddle(bolt), angle)!
    return first(left, near, (bolt) => -Math.min(...tight.map((other) => apart(bolt, other))), angle)!
  })
}
