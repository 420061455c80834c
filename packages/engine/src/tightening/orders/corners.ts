import { acrossFrom } from './outward.ts'
import { clockwise, distance, first, numbered, type Places } from './places.ts'
import type { Shape } from './shape.ts'

/** Of the greatest reach: below this two distances are equal. */
const HAIR = 1e-6

/** Opposite corners first, then always the bolt that is farthest from all tight ones, and the one across from it. */
export function corners(places: Places, shape: Shape): number[] {
  const left = new Set(numbered(places.length))
  const sequence: number[] = []
  const take = (bolt: number | undefined) => {
    if (bolt !== undefined && left.delete(bolt)) sequence.push(bolt)
  }
  const near = HAIR * shape.reach
  const angle = (bolt: number) => clockwise(shape.middle, places[bolt]!.at)
  const takePairs = (from: () => number[], ...figures: ((bolt: number) => number)[]) => {
    for (
      let next = first(from(), near, ...figures, angle);
      next !== undefined;
      next = first(from(), near, ...figures, angle)
    ) {
      take(next)
      take(acrossFrom(places, shape, next, left))
    }
  }
  const outermost = new Set(
    shape.corners.map((corner) => first(left, near, (bolt) => distance(places[bolt]!.at, corner), angle)!),
  )
  takePairs(
    () => [...outermost].filter((bolt) => left.has(bolt)),
    (bolt) => -distance(places[bolt]!.at, shape.middle),
  )
  takePairs(
    () => [...left],
    (bolt) => -Math.min(...sequence.map((tight) => distance(places[tight]!.at, places[bolt]!.at))),
  )
  return sequence
}
