import type { Palette } from '../look/palette.ts'
import { polyline } from '../svg/element.ts'

/** A thin line with zigzags: the drawing is broken off here (ISO 128, line 01.1 with zigzags). From `x1` to `x2` px at height `y`. */
export function zigzag(x1: number, x2: number, y: number, palette: Palette): string {
  const teeth = Math.max(1, Math.round((x2 - x1) / 34))
  const points: [number, number][] = [[x1, y]]
  for (let i = 0; i < teeth; i++) {
    const middle = x1 + ((i + 0.5) * (x2 - x1)) / teeth
    points.push([middle - 4, y], [middle - 2, y - 5], [middle + 2, y + 5], [middle + 4, y])
  }
  points.push([x2, y])
  return polyline(points, {
    fill: 'none',
    stroke: palette.ink,
    'stroke-width': 1,
    'stroke-linejoin': 'round',
    'data-part': 'break',
  })
}
