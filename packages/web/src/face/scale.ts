import type { PicturePoint, Size } from './stage/view.ts'

/**
 * Pixels of the photograph to one millimetre, from two points on it and their distance in mm. Null for fewer than two points, or two on one spot
 * (less than a pixel apart). The photograph is taken as seen straight from above.
 */
export function scaleOf(points: readonly PicturePoint[], { width, height }: Size, millimetres: number): number | null {
  const [a, b] = points
  if (a === undefined || b === undefined || !(millimetres > 0)) return null
  const pixels = Math.hypot((a.x - b.x) * width, (a.y - b.y) * height)
  return pixels < 1 ? null : pixels / millimetres
}
