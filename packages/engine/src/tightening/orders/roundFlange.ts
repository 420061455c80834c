import type { Point } from '../../unit.ts'
import { clockwise, distance, numbered, type Places, wrapped } from './places.ts'

/** Of the radius, and of the angle between neighbours: what may be off before an eye says "not round" or "not even". Common practice, no source. */
const RADIUS_OFF = 0.05
const ANGLE_OFF = 0.2

/**
 * The bolts clockwise, the first one at 12 o'clock or the next after it, when they sit on one circle, evenly spaced; undefined when they do not. Takes three
 * bolts at least.
 */
export function roundFlange(places: Places): number[] | undefined {
  const circle = places.length < 3 ? undefined : circleThrough(places.map(({ at }) => at))
  if (circle === undefined) return undefined
  const { middle, radius } = circle
  if (places.some(({ at }) => Math.abs(distance(at, middle) - radius) > RADIUS_OFF * radius)) return undefined

  const spacing = (2 * Math.PI) / places.length
  // A quarter of the spacing left of 12 o'clock still is 12 o'clock: places are measured on a picture.
  const angles = places.map(({ at }) => wrapped(clockwise(middle, at) + spacing / 4))
  const order = numbered(places.length).toSorted((a, b) => angles[a]! - angles[b]! || a - b)
  const isEven = order.every((bolt, i) => {
    const next = order[(i + 1) % order.length]!
    return Math.abs(wrapped(angles[next]! - angles[bolt]!) - spacing) <= ANGLE_OFF * spacing
  })
  return isEven ? order : undefined
}

/** The circle of least squares by I. Kåsa (1976): x² + y² is fitted by a plane over x and y. Undefined for points in one line. */
function circleThrough(points: Point[]): { middle: Point; radius: number } | undefined {
  const mean = (of: (at: Point) => number) => points.reduce((sum, at) => sum + of(at), 0) / points.length
  const [cx, cy] = [mean(([x]) => x), mean(([, y]) => y)]
  const square = ([x, y]: Point) => (x - cx) ** 2 + (y - cy) ** 2
  const xx = mean(([x]) => (x - cx) ** 2)
  const yy = mean(([, y]) => (y - cy) ** 2)
  const xy = mean(([x, y]) => (x - cx) * (y - cy))
  const xz = mean((at) => (at[0] - cx) * square(at)) / 2
  const yz = mean((at) => (at[1] - cy) * square(at)) / 2
  const determinant = xx * yy - xy * xy
  if (determinant <= 1e-9 * (xx + yy) ** 2) return undefined
  const [u, v] = [(xz * yy - yz * xy) / determinant, (yz * xx - xz * xy) / determinant]
  return { middle: [cx + u, cy + v], radius: Math.sqrt(u * u + v * v + xx + yy) }
}
