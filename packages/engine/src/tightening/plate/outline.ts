import type { Point } from '../../unit.ts'

/** Whether a point lies inside a closed line of corners (by the even-odd rule; a point on the line may fall to either side). */
export function isInside([x, y]: Point, corners: readonly Point[]): boolean {
  let inside = false
  for (let i = 0, j = corners.length - 1; i < corners.length; j = i++) {
    const [xi, yi] = corners[i]!
    const [xj, yj] = corners[j]!
    if (yi > y !== yj > y && x < xi + ((y - yi) / (yj - yi)) * (xj - xi)) inside = !inside
  }
  return inside
}

/** Area within a closed line of corners, mm²; positive whichever way round it runs. */
export function areaOf(corners: readonly Point[]): number {
  let sum = 0
  for (let i = 0, j = corners.length - 1; i < corners.length; j = i++)
    sum += corners[j]![0] * corners[i]![1] - corners[i]![0] * corners[j]![1]
  return Math.abs(sum) / 2
}

/** The least box round some points. */
export function boxOf(points: readonly Point[]): { left: number; right: number; low: number; high: number } {
  const box = { left: Infinity, right: -Infinity, low: Infinity, high: -Infinity }
  for (const [x, y] of points) {
    box.left = Math.min(box.left, x)
    box.right = Math.max(box.right, x)
    box.low = Math.min(box.low, y)
    box.high = Math.max(box.high, y)
  }
  return box
}

/** The lines of a closed outline, corner to corner. */
export function sidesOf(corners: readonly Point[]): [Point, Point][] {
  return corners.map((corner, i) => [corner, corners[(i + 1) % corners.length]!])
}

/** A place where two lines cross or touch; null when they are apart. Lines on top of each other meet at an end of one of them. */
export function meeting([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): Point | null {
  const [rx, ry, sx, sy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]]
  const [qx, qy] = [c[0] - a[0], c[1] - a[1]]
  const turn = rx * sy - ry * sx
  const size = Math.hypot(rx, ry) * Math.hypot(sx, sy)
  if (Math.abs(turn) > 1e-12 * size) {
    const t = (qx * sy - qy * sx) / turn
    const s = (qx * ry - qy * rx) / turn
    const slack = 1e-12
    return t >= -slack && t <= 1 + slack && s >= -slack && s <= 1 + slack ? [a[0] + t * rx, a[1] + t * ry] : null
  }
  for (const end of [c, d]) if (liesOn(end, [a, b])) return end
  for (const end of [a, b]) if (liesOn(end, [c, d])) return end
  return null
}

/** Whether a point lies on a line, to a millionth of the line's length. */
export function liesOn([x, y]: Point, [a, b]: readonly [Point, Point]): boolean {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const length = Math.hypot(dx, dy)
  const along = length === 0 ? 0 : ((x - a[0]) * dx + (y - a[1]) * dy) / length ** 2
  const near = Math.min(1, Math.max(0, along))
  return Math.hypot(x - a[0] - near * dx, y - a[1] - near * dy) <= 1e-6 * Math.max(length, 1e-3)
}
