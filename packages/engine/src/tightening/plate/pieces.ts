import type { Bed, Cover, Point } from '../../unit.ts'
import { isInside, meeting, sidesOf } from './outline.ts'

/** What there is at a place of the cover: thickness in mm (0: no cover) and whether the seat lies below. */
export type Spot = { thickness: number; seated: boolean }

/** A piece of a cell in which nothing changes: between two sloping lines, from `left` to `right`. Bounds at both ends, mm. */
export type Piece = Spot & {
  left: number
  right: number
  lowLeft: number
  lowRight: number
  highLeft: number
  highRight: number
}

export function areaOfPiece({ left, right, lowLeft, lowRight, highLeft, highRight }: Piece): number {
  return ((right - left) * (highLeft - lowLeft + highRight - lowRight)) / 2
}

/** A square cell of the grid: cut by no line, or in pieces. */
export type Cell = { column: number; row: number } & ({ whole: Spot } | { pieces: Piece[] })

/** A square grid: lower left corner, step in mm, cells each way. */
export type Grid = { x: number; y: number; step: number; columns: number; rows: number }

/** What there is at a place. Of regions that lie over each other the last counts. */
export function spotAt(cover: Cover, hollows: readonly Point[][], at: Point): Spot {
  if (!isInside(at, cover.outline) || cover.openings?.some((opening) => isInside(at, opening)))
    return { thickness: 0, seated: false }
  const region = cover.regions?.findLast(({ outline }) => isInside(at, outline))
  return {
    thickness: region?.thickness ?? cover.thickness,
    seated: !hollows.some((hollow) => isInside(at, hollow)),
  }
}

/**
 * The cover cut up along a grid. Each cut cell is divided into trapezoids between its lines, so that integrals over them are exact, whatever runs
 * through the cell. Cells off the cover are left out.
 */
export function cellsOf(cover: Cover, hollows: Bed['hollows'] = [], grid: Grid): Cell[] {
  const lines = [
    cover.outline,
    ...(cover.openings ?? []),
    ...(cover.regions ?? []).map(({ outline }) => outline),
    ...hollows,
  ].flatMap(sidesOf)
  const through: [Point, Point][][] = Array.from({ length: grid.columns * grid.rows }, () => [])
  for (const line of lines) for (const { cell, part } of cutAlong(line, grid)) through[cell]!.push(part)

  const cells: Cell[] = []
  for (let column = 0; column < grid.columns; column++)
    for (let row = 0; row < grid.rows; row++) {
      const cut = through[column * grid.rows + row]!
      if (cut.length === 0) {
        const whole = spotAt(cover, hollows, [grid.x + (column + 0.5) * grid.step, grid.y + (row + 0.5) * grid.step])
        if (whole.thickness > 0) cells.push({ column, row, whole })
        continue
      }
      const pieces = piecesOf(cut, grid, column, row, (at) => spotAt(cover, hollows, at))
      if (pieces.length > 0) cells.push({ column, row, pieces })
    }
  return cells
}

/** The parts of a line in the cells that it runs through. */
function cutAlong([a, b]: [Point, Point], grid: Grid): { cell: number; part: [Point, Point] }[] {
  const { x, y, step, columns, rows } = grid
  const found: { cell: number; part: [Point, Point] }[] = []
  const span = (from: number, to: number, origin: number, count: number): [number, number] => [
    Math.max(0, Math.floor((Math.min(from, to) - origin) / step - 1e-9)),
    Math.min(count - 1, Math.floor((Math.max(from, to) - origin) / step + 1e-9)),
  ]
  const [firstColumn, lastColumn] = span(a[0], b[0], x, columns)
  for (let column = firstColumn; column <= lastColumn; column++) {
    const strip = clipped([a, b], 0, x + column * step, x + (column + 1) * step)
    if (strip === null) continue
    const [firstRow, lastRow] = span(strip[0][1], strip[1][1], y, rows)
    for (let row = firstRow; row <= lastRow; row++) {
      const part = clipped(strip, 1, y + row * step, y + (row + 1) * step)
      if (part !== null) found.push({ cell: column * rows + row, part })
    }
  }
  return found
}

/** The part of a line between two values of one coordinate; null when there is none or only a point. */
function clipped([a, b]: [Point, Point], axis: 0 | 1, low: number, high: number): [Point, Point] | null {
  const length = b[axis] - a[axis]
  if (length === 0) return a[axis] >= low && a[axis] <= high ? [a, b] : null
  const ends = [(low - a[axis]) / length, (high - a[axis]) / length]
  const from = Math.max(0, Math.min(ends[0]!, ends[1]!))
  const to = Math.min(1, Math.max(ends[0]!, ends[1]!))
  if (!(to > from)) return null
  const at = (t: number): Point => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
  return [from === 0 ? a : at(from), to === 1 ? b : at(to)]
}

/** The trapezoids between the lines of one cell, slab by slab from left to right. */
function piecesOf(
  lines: readonly [Point, Point][],
  grid: Grid,
  column: number,
  row: number,
  spot: (at: Point) => Spot,
): Piece[] {
  const { step } = grid
  const [left, low] = [grid.x + column * step, grid.y + row * step]
  const [right, high] = [left + step, low + step]
  const breaks = [left, right]
  lines.forEach((line, i) => {
    breaks.push(line[0][0], line[1][0])
    for (const other of lines.slice(0, i)) {
      const cross = meeting(line, other)
      if (cross !== null) breaks.push(cross[0])
    }
  })
  const inside = breaks.map((x) => Math.min(right, Math.max(left, x))).sort((a, b) => a - b)
  const pieces: Piece[] = []
  for (let i = 1; i < inside.length; i++) {
    const [from, to] = [inside[i - 1]!, inside[i]!]
    if (to - from < 1e-9 * step) continue
    const middle = (from + to) / 2
    const bounds = lines
      .filter(([a, b]) => Math.min(a[0], b[0]) < middle && Math.max(a[0], b[0]) > middle)
      .map(([a, b]) => {
        const at = (x: number) => Math.min(high, Math.max(low, a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1])))
        return { from: at(from), to: at(to) }
      })
      .sort((a, b) => a.from + a.to - b.from - b.to)
    const all = [{ from: low, to: low }, ...bounds, { from: high, to: high }]
    for (let j = 1; j < all.length; j++) {
      const [below, above] = [all[j - 1]!, all[j]!]
      const thick = (above.from + above.to - below.from - below.to) / 2
      if (thick < 1e-9 * step) continue
      const here = spot([middle, (below.from + below.to + above.from + above.to) / 4])
      if (here.thickness > 0)
        pieces.push({
          ...here,
          left: from,
          right: to,
          lowLeft: below.from,
          lowRight: below.to,
          highLeft: above.from,
          highRight: above.to,
        })
    }
  }
  return pieces
}
