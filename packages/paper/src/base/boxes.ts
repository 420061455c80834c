/** Upright boxes and how they lie to each other, mm. */
import type { Box, Place } from '../sheet.ts'

export function grown({ x, y, width, height }: Box, by: number): Box {
  return { x: x - by, y: y - by, width: width + 2 * by, height: height + 2 * by }
}

/** The box around a ring. */
export function around([x, y]: Place, radius: number): Box {
  return { x: x - radius, y: y - radius, width: 2 * radius, height: 2 * radius }
}

/** Whether they have more than an edge in common. */
export function meet(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height
}
