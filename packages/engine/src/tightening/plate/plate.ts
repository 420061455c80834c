/**
 * The cover as a thin plate (Kirchhoff) in bicubic B-splines on a square grid that the outline cuts through. Its edges are free, which a plate's energy
 * gives by itself, so nothing has to be fitted to the outline: the energy is summed over the part of each cell that is cover. Splines of third degree hold every
 * constant curvature exactly (patch test), and what they give is never softer than the plate.
 * @source plate energy: Timoshenko and Woinowsky-Krieger, art. 22; splines on a cut grid: Höllig, Finite Element Methods with B-Splines; Parvizian, Düster and Rank, Finite
 * cell method (2007)
 */

import { placeIn, type Skyline, skylineOf } from '../../maths/skyline.ts'
import { must } from '../../must.ts'
import type { Bed, Cover, Point } from '../../unit.ts'
import { distanceTo, joinedParts, type Part } from './joined.ts'
import { boxOf } from './outline.ts'
import { cellsOf, type Grid, type Piece } from './pieces.ts'
import { splineCurvatures, splineSlopes, splineValues } from './spline.ts'

/** Functions that reach into a cell: four each way. */
export const REACH = 16

export type Plate = {
  grid: Grid
  /** Number of unknowns. */
  size: number
  /** Spline of each unknown, column × (rows of the grid + 3) + row. A spline has an unknown for each stretch of cover that hangs together within its reach. */
  splineOf: Int32Array
  /** What of the cover lies in each cell, column × rows + row, with its unknowns. */
  parts: readonly Part[][]
  /** Energy of bending, N/mm: without bed it is not yet definite. */
  bending: Skyline
  /** Points on the seat with the share of area that each stands for. */
  seat: Seat
  /** Area of cover over the seat, mm². */
  seated: number
}

export type Seat = {
  count: number
  /** mm². */
  area: Float64Array
  /** Where the point's cell begins in `unknowns`, and where its spline values begin in `shapes`. */
  cell: Int32Array
  shape: Int32Array
  unknowns: Int32Array
  shapes: Float64Array
}

/** Modulus and ratio of a cover that states none. @source common practice for cast aluminium (Shigley 9e table A-5 gives 71 700 and 0.33) */
export const ALUMINIUM = { young: 70_000, poisson: 0.33 }

/** What is not cover in a cut cell is given this share of the cover's stiffness, so that splines which hardly touch the cover keep a value. */
const FILL = 1e-9
/** A place no further than this share of a cell from its border lies on the border. */
const ON_BORDER = 1e-6

const FOUR = gauss(4)
const SEVEN = gauss(7)

/** The grid of step `step` mm with the cover in its middle. */
export function gridOver(cover: Cover, step: number): Grid {
  const { left, right, low, high } = boxOf(cover.outline)
  const columns = Math.max(1, Math.ceil((right - left) / step - 1e-9))
  const rows = Math.max(1, Math.ceil((high - low) / step - 1e-9))
  return { x: (left + right - columns * step) / 2, y: (low + high - rows * step) / 2, step, columns, rows }
}

/** Bending stiffness E·t³/(12·(1 − ν²)), N·mm. */
export function bendingStiffness(young: number, poisson: number, thickness: number): number {
  return (young * thickness ** 3) / (12 * (1 - poisson ** 2))
}

/** The plate of a cover on a grid of step `step` mm. The cover must have been checked (`coverFaults`). */
export function plateOf(cover: Cover, hollows: Bed['hollows'], step: number): Plate {
  const grid = gridOver(cover, step)
  const young = cover.young ?? ALUMINIUM.young
  const poisson = cover.poisson ?? ALUMINIUM.poisson
  const cells = cellsOf(cover, hollows, grid)
  must(cells.length > 0, 'plateOf: there is no cover on the grid', { grid })
  const { parts, splineOf } = joinedParts(cells, grid)
  const size = splineOf.length
  const bending = skylineOf(firstColumns(parts, size))

  const whole = wholeCell(step, poisson)
  const energy = new Float64Array(REACH * REACH)
  const seat = new SeatBuilder(whole.shapes)
  let seated = 0
  for (const part of parts.flat()) {
    const { unknowns } = part
    if (part.whole !== undefined) {
      const stiffness = bendingStiffness(young, poisson, part.whole.thickness)
      for (let k = 0; k < energy.length; k++) energy[k] = stiffness * whole.energy[k]!
      if (part.whole.seated) {
        seat.begin(unknowns)
        whole.areas.forEach((area, k) => {
          seat.add(area, k * REACH)
        })
        seated += step ** 2
      }
    } else {
      const filling = FILL * bendingStiffness(young, poisson, cover.thickness)
      for (let k = 0; k < energy.length; k++) energy[k] = filling * whole.energy[k]!
      seat.begin(unknowns)
      for (const piece of part.pieces) {
        const stiffness = bendingStiffness(young, poisson, piece.thickness)
        for (const { u, v, area } of pointsIn(piece, grid, part)) {
          addEnergy(energy, u, v, step, poisson, stiffness * area)
          if (!piece.seated) continue
          seat.add(area, seat.shape(u, v))
          seated += area
        }
      }
    }
    addTo(bending, unknowns, energy)
  }
  return { grid, size, splineOf, parts, bending, seat: seat.done(), seated }
}

/**
 * Stiffness of plate and bed, N/mm: bending and `stiffness` (N/mm³) at every point of the seat, or at those that `touching` names; the others are held by a share `hold` of it, so that a
 * plate which lies on nothing is not adrift.
 */
export function onBed(plate: Plate, stiffness: number, touching?: Uint8Array, hold = FILL): Skyline {
  const { bending, seat } = plate
  const sum: Skyline = { ...bending, values: bending.values.slice() }
  const energy = new Float64Array(REACH * REACH)
  for (let from = 0; from < seat.count; ) {
    const cell = seat.cell[from]!
    energy.fill(0)
    let to = from
    for (; to < seat.count && seat.cell[to] === cell; to++) {
      const weight = stiffness * seat.area[to]! * (touching === undefined || touching[to] === 1 ? 1 : hold)
      const shape = seat.shape[to]!
      for (let a = 0; a < REACH; a++) {
        const wa = weight * seat.shapes[shape + a]!
        for (let b = 0; b <= a; b++) energy[a * REACH + b]! += wa * seat.shapes[shape + b]!
      }
    }
    addTo(sum, seat.unknowns.subarray(cell, cell + REACH), energy)
    from = to
  }
  return sum
}

/** Splines at a place: their unknowns and values there, and where in its cell the place lies. The place must be on the cover; off it there are no unknowns, −1. */
export function shapeAt(plate: Plate, at: Point): { unknowns: Int32Array; values: Float64Array; u: number; v: number } {
  const { grid, parts } = plate
  const inGrid = (at: number, origin: number, count: number): [number, number] => {
    const cells = (at - origin) / grid.step
    const cell = (slack: number) => Math.min(count - 1, Math.max(0, Math.floor(cells + slack)))
    return [cell(-ON_BORDER), cell(ON_BORDER)]
  }
  // a place on the border of cells may have cover on one side of it only
  const [columns, rows] = [inGrid(at[0], grid.x, grid.columns), inGrid(at[1], grid.y, grid.rows)]
  let nearest: { part: Part; off: number } | undefined
  for (const column of new Set(columns))
    for (const row of new Set(rows))
      for (const part of parts[column * grid.rows + row]!) {
        const off = distanceTo(part, at)
        if (nearest === undefined || off < nearest.off) nearest = { part, off }
      }
  const column = nearest?.part.column ?? columns[0]
  const row = nearest?.part.row ?? rows[0]
  const [u, v] = [(at[0] - grid.x) / grid.step - column, (at[1] - grid.y) / grid.step - row]
  return { unknowns: nearest?.part.unknowns ?? new Int32Array(REACH).fill(-1), values: shapeOf(u, v), u, v }
}

/** Value of a field at a place, from the unknowns of the plate. */
export function valueAt(plate: Plate, field: Float64Array, at: Point): number {
  const { unknowns, values } = shapeAt(plate, at)
  let sum = 0
  for (let a = 0; a < REACH; a++) if (unknowns[a]! >= 0) sum += values[a]! * field[unknowns[a]!]!
  return sum
}

/** Adds a square of 16 × 16 values (its lower half) to the rows and columns of some unknowns. */
export function addTo(matrix: Skyline, unknowns: Int32Array, square: Float64Array): void {
  for (let a = 0; a < REACH; a++)
    for (let b = 0; b <= a; b++) {
      const i = unknowns[a]!
      const j = unknowns[b]!
      matrix.values[i >= j ? placeIn(matrix, i, j) : placeIn(matrix, j, i)]! += square[a * REACH + b]!
    }
}

/** Curvatures ∂²w/∂x², ∂²w/∂y², ∂²w/∂x∂y of the sixteen splines at (u, v) of a cell, each row of sixteen; 1/mm². */
export function curvaturesOf(u: number, v: number, step: number): Float64Array {
  const [x0, x1, x2] = [splineValues(u, four()), splineSlopes(u, four()), splineCurvatures(u, four())]
  const [y0, y1, y2] = [splineValues(v, four()), splineSlopes(v, four()), splineCurvatures(v, four())]
  const out = new Float64Array(3 * REACH)
  for (let a = 0; a < 4; a++)
    for (let b = 0; b < 4; b++) {
      const k = a * 4 + b
      out[k] = (x2[a]! * y0[b]!) / step ** 2
      out[REACH + k] = (x0[a]! * y2[b]!) / step ** 2
      out[2 * REACH + k] = (x1[a]! * y1[b]!) / step ** 2
    }
  return out
}

function addEnergy(energy: Float64Array, u: number, v: number, step: number, poisson: number, weight: number): void {
  const bent = curvaturesOf(u, v, step)
  for (let a = 0; a < REACH; a++) {
    const [ax, ay, axy] = [bent[a]!, bent[REACH + a]!, bent[2 * REACH + a]!]
    const [mx, my, mxy] = [ax + poisson * ay, ay + poisson * ax, 2 * (1 - poisson) * axy]
    for (let b = 0; b <= a; b++)
      energy[a * REACH + b]! += weight * (mx * bent[b]! + my * bent[REACH + b]! + mxy * bent[2 * REACH + b]!)
  }
}

function shapeOf(u: number, v: number): Float64Array {
  const [x, y] = [splineValues(u, four()), splineValues(v, four())]
  const out = new Float64Array(REACH)
  for (let a = 0; a < 4; a++) for (let b = 0; b < 4; b++) out[a * 4 + b] = x[a]! * y[b]!
  return out
}

/** Bending energy, seat points and their areas of a cell that no line cuts, for a stiffness of 1. */
function wholeCell(step: number, poisson: number): { energy: Float64Array; shapes: Float64Array; areas: number[] } {
  const energy = new Float64Array(REACH * REACH)
  const shapes = new Float64Array(REACH * REACH)
  const areas: number[] = []
  for (const x of FOUR)
    for (const y of FOUR) {
      const area = x.weight * y.weight * step ** 2
      addEnergy(energy, x.at, y.at, step, poisson, area)
      shapes.set(shapeOf(x.at, y.at), areas.length * REACH)
      areas.push(area)
    }
  return { energy, shapes, areas }
}

/** Points for exact sums over a piece: of the splines' products the highest power is 6 each way, 13 along x once y is summed between sloping lines. */
function* pointsIn(piece: Piece, grid: Grid, cell: { column: number; row: number }) {
  const { step } = grid
  const [x0, y0] = [grid.x + cell.column * step, grid.y + cell.row * step]
  const width = piece.right - piece.left
  for (const x of SEVEN) {
    const low = piece.lowLeft + x.at * (piece.lowRight - piece.lowLeft)
    const height = piece.highLeft + x.at * (piece.highRight - piece.highLeft) - low
    for (const y of FOUR)
      yield {
        u: (piece.left + x.at * width - x0) / step,
        v: (low + y.at * height - y0) / step,
        area: x.weight * y.weight * width * height,
      }
  }
}

function firstColumns(parts: readonly Part[][], size: number): Int32Array {
  const first = Int32Array.from({ length: size }, (_, i) => i)
  for (const { unknowns } of parts.flat()) {
    const least = unknowns.reduce((low, i) => Math.min(low, i), size)
    for (const i of unknowns) first[i] = Math.min(first[i]!, least)
  }
  return first
}

class SeatBuilder {
  private readonly areas: number[] = []
  private readonly cells: number[] = []
  private readonly places: number[] = []
  private readonly unknowns: number[] = []
  private readonly shapes: number[]

  constructor(whole: Float64Array) {
    this.shapes = [...whole]
  }

  begin(unknowns: Int32Array): void {
    this.unknowns.push(...unknowns)
  }

  /** A point of the cell that was begun last. */
  add(area: number, shape: number): void {
    this.areas.push(area)
    this.cells.push(this.unknowns.length - REACH)
    this.places.push(shape)
  }

  shape(u: number, v: number): number {
    this.shapes.push(...shapeOf(u, v))
    return this.shapes.length - REACH
  }

  done(): Seat {
    return {
      count: this.areas.length,
      area: Float64Array.from(this.areas),
      cell: Int32Array.from(this.cells),
      shape: Int32Array.from(this.places),
      unknowns: Int32Array.from(this.unknowns),
      shapes: Float64Array.from(this.shapes),
    }
  }
}

function four(): Float64Array {
  return new Float64Array(4)
}

/** Gauss-Legendre points and weights on 0 to 1, by Newton's method on the Legendre polynomial. */
function gauss(count: number): { at: number; weight: number }[] {
  return Array.from({ length: count }, (_, i) => {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5))
    let slope = 0
    for (let round = 0; round < 100; round++) {
      let [before, here] = [1, x]
      for (let k = 2; k <= count; k++) [before, here] = [here, ((2 * k - 1) * x * here - (k - 1) * before) / k]
      slope = (count * (x * here - before)) / (x * x - 1)
      const better = x - here / slope
      if (Math.abs(better - x) < 1e-16) break
      x = better
    }
    return { at: (1 - x) / 2, weight: 1 / ((1 - x * x) * slope * slope) }
  })
}
