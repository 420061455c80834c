/** Bolts of covers as they come, to try orders on. */
import type { Point } from '../../../unit.ts'
import type { Places } from '../places.ts'

export function placed(points: readonly Point[]): Places {
  return points.map((at) => ({ at }))
}

/** Evenly on a circle about (7, -3), clockwise, the first one `from` (radians) clockwise of 12 o'clock. */
export function ring(count: number, radius: number, from: number): Places {
  return placed(
    Array.from({ length: count }, (_, i): Point => {
      const angle = from + (2 * Math.PI * i) / count
      return [7 + radius * Math.sin(angle), -3 + radius * Math.cos(angle)]
    }),
  )
}

/** Row by row from below, left to right. */
export function grid(columns: number, rows: number, [dx, dy]: Point): Places {
  return placed(
    Array.from({ length: columns * rows }, (_, i): Point => [dx * (i % columns), dy * Math.floor(i / columns)]),
  )
}

/** Clockwise round a rectangle from its upper left corner: so many spaces along, so many down. */
export function pan(along: number, down: number, [dx, dy]: Point): Places {
  const points: Point[] = []
  for (let i = 0; i < along; i++) points.push([i * dx, down * dy])
  for (let i = down; i > 0; i--) points.push([along * dx, i * dy])
  for (let i = along; i > 0; i--) points.push([i * dx, 0])
  for (let i = 0; i < down; i++) points.push([0, i * dy])
  return placed(points)
}
