import type { Face, Point } from '../unit.ts'
import { coverOf } from './coverOf.ts'
import { spotAt } from './plate/pieces.ts'
import { type Plate, valueAt } from './plate/plate.ts'

/** A line on the cover with the points at which it is looked at, from end to end. */
export type Line = { name: string | null; points: Point[] }

/** Points at which a stated line is looked at. */
export const ON_A_LINE = 33
const BETWEEN_BOLTS = 9

/** The lines that must stay straight: the stated ones, or with none stated those between any two bolts, without what crosses an opening. */
export function linesOf(face: Face): Line[] {
  const cover = coverOf(face)
  const stated = cover.lines ?? []
  if (stated.length > 0)
    return stated.map(({ name, from, to }) => ({ name, points: pointsBetween(from, to, ON_A_LINE) }))
  const places = face.holes.map(({ at }) => at!)
  const lines = places.flatMap((to, i) =>
    places.slice(0, i).map((from) => ({ name: null, points: pointsBetween(from, to, BETWEEN_BOLTS) })),
  )
  return lines.filter(({ points }) => points.every((at) => spotAt(cover, [], at).thickness > 0))
}

/** Greatest distance in mm between the bent line and the straight one through its ends. `sinks` at its points, mm, evenly spaced. */
export function bowOf(sinks: ArrayLike<number>): number {
  const last = sinks.length - 1
  let most = 0
  for (let i = 1; i < last; i++) {
    const straight = sinks[0]! + (i / last) * (sinks[last]! - sinks[0]!)
    most = Math.max(most, Math.abs(sinks[i]! - straight))
  }
  return most
}

/** The bow of each stated line, mm, and the greatest of all. */
export function bowsOf(
  lines: readonly Line[],
  plate: Plate,
  field: Float64Array,
): { bow: number; bows: { name: string; bow: number }[] } {
  const all = lines.map(({ name, points }) => ({ name, bow: bowOf(points.map((at) => valueAt(plate, field, at))) }))
  return {
    bow: Math.max(0, ...all.map(({ bow }) => bow)),
    bows: all.flatMap(({ name, bow }) => (name === null ? [] : [{ name, bow }])),
  }
}

/** Points evenly spaced on a line, its ends among them. */
export function pointsBetween(from: Point, to: Point, count: number): Point[] {
  return Array.from({ length: count }, (_, i) => {
    const share = i / (count - 1)
    return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]
  })
}
