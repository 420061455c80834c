/**
 * Which parts of the cover hang together near a spline. A spline reaches over four cells each way, and a slot or a notch may be narrower than that: where it parts the cover within a
 * spline's reach the two sides must not share an unknown, or the sums would weld the slot shut.
 * @source a copy of the spline for each separate part of its support; for splines on cut grids from memory: Höllig, Finite Element Methods with B-Splines
 */
import type { Point } from '../../unit.ts'
import type { Cell, Grid, Piece, Spot } from './pieces.ts'

/** What of a cell hangs together within it. */
export type Part = {
  column: number
  row: number
  /** Unknown of each of the sixteen splines that reach into the cell, column by column. */
  unknowns: Int32Array
  pieces: readonly Piece[]
  /** The whole cell, cut by no line: the one piece that it is. */
  whole?: Spot
}

/** Splines that reach into a cell along one side of it. */
const ALONG = 4
/** Contact shorter than this share of a cell's side is none. */
const TOUCH = 1e-6

/**
 * The parts of all cells, with their unknowns: one for each spline and each stretch of cover that hangs together within the spline's reach. Counted along the shorter side first, so that
 * rows of the matrix stay short. `splineOf`: the spline of each unknown, column × (rows + 3) + row.
 */
export function joinedParts(cells: readonly Cell[], grid: Grid): { parts: Part[][]; splineOf: Int32Array } {
  const parts: Part[][] = Array.from({ length: grid.columns * grid.rows }, () => [])
  for (const cell of cells) parts[cell.column * grid.rows + cell.row] = partsOf(cell, grid)
  const beside = neighbours(parts, grid)
  const [across, along] = [grid.columns + 3, grid.rows + 3]
  const splineOf: number[] = []
  const count = (i: number, j: number) => {
    const place = ({ column, row }: Part) => (i - column) * ALONG + j - row
    const isNear = ({ column, row }: Part) => column <= i && column > i - ALONG && row <= j && row > j - ALONG
    for (let column = Math.max(0, i - 3); column <= Math.min(grid.columns - 1, i); column++)
      for (let row = Math.max(0, j - 3); row <= Math.min(grid.rows - 1, j); row++)
        for (const first of parts[column * grid.rows + row]!) {
          if (first.unknowns[place(first)]! >= 0) continue
          const unknown = splineOf.push(i * along + j) - 1
          const reached = [first]
          for (let part = reached.pop(); part !== undefined; part = reached.pop()) {
            part.unknowns[place(part)] = unknown
            for (const next of beside.get(part)!)
              if (isNear(next) && next.unknowns[place(next)]! < 0) reached.push(next)
          }
        }
  }
  if (along <= across) for (let i = 0; i < across; i++) for (let j = 0; j < along; j++) count(i, j)
  else for (let j = 0; j < along; j++) for (let i = 0; i < across; i++) count(i, j)
  return { parts, splineOf: Int32Array.from(splineOf) }
}

/** How far a place lies off a part, mm along x or y; 0 on it. */
export function distanceTo({ pieces }: Part, [x, y]: Point): number {
  return Math.min(
    ...pieces.map(({ left, right, lowLeft, lowRight, highLeft, highRight }) => {
      const share = Math.min(1, Math.max(0, (x - left) / (right - left)))
      const low = lowLeft + share * (lowRight - lowLeft)
      const high = highLeft + share * (highRight - highLeft)
      return Math.max(0, left - x, x - right, low - y, y - high)
    }),
  )
}

function partsOf(cell: Cell, { x, y, step }: Grid): Part[] {
  const { column, row } = cell
  const part = (pieces: readonly Piece[]): Part => ({ column, row, pieces, unknowns: new Int32Array(16).fill(-1) })
  if ('whole' in cell) {
    const [left, low] = [x + column * step, y + row * step]
    const [right, high] = [left + step, low + step]
    const square = { left, right, lowLeft: low, lowRight: low, highLeft: high, highRight: high }
    return [{ ...part([{ ...cell.whole, ...square }]), whole: cell.whole }]
  }
  const groups: Piece[][] = []
  for (const piece of cell.pieces) {
    const met = groups.filter((group) => group.some((one) => meet(one, piece, TOUCH * step)))
    for (const group of met) groups.splice(groups.indexOf(group), 1)
    groups.push([...met.flat(), piece])
  }
  return groups.map(part)
}

/** For each part those of other cells that it meets. */
function neighbours(parts: readonly Part[][], { columns, rows, step }: Grid): Map<Part, Part[]> {
  const beside = new Map<Part, Part[]>(parts.flat().map((part) => [part, []]))
  const join = (one: Part, other: Part) => {
    const whole = one.whole !== undefined && other.whole !== undefined
    if (!whole && !one.pieces.some((a) => other.pieces.some((b) => meet(a, b, TOUCH * step)))) return
    beside.get(one)!.push(other)
    beside.get(other)!.push(one)
  }
  for (let column = 0; column < columns; column++)
    for (let row = 0; row < rows; row++)
      for (const part of parts[column * rows + row]!) {
        if (column + 1 < columns) for (const other of parts[(column + 1) * rows + row]!) join(part, other)
        if (row + 1 < rows) for (const other of parts[column * rows + row + 1]!) join(part, other)
      }
  return beside
}

/** Whether two pieces share a stretch of edge longer than `touch`: side by side, or one on the other. */
function meet(a: Piece, b: Piece, touch: number): boolean {
  const overlap = (lowA: number, highA: number, lowB: number, highB: number) =>
    Math.min(highA, highB) - Math.max(lowA, lowB) > touch
  if (Math.abs(a.right - b.left) < touch) return overlap(a.lowRight, a.highRight, b.lowLeft, b.highLeft)
  if (Math.abs(b.right - a.left) < touch) return overlap(b.lowRight, b.highRight, a.lowLeft, a.highLeft)
  if (!overlap(a.left, a.right, b.left, b.right)) return false
  // within a cell both run from the same left to the same right; between cells both edges lie on the cells' border
  const stacked = (below: Piece, above: Piece) =>
    Math.abs(below.highLeft - above.lowLeft) < touch && Math.abs(below.highRight - above.lowRight) < touch
  return stacked(a, b) || stacked(b, a)
}
