/** A made-up cover with everything that an even rectangle has not: an L with slanted edges, an opening askew, a thicker part, bolts at uneven places. */
import type { Cover, Point } from '../../packages/engine/src/unit.ts'
import { cornerOf, type Lattice, outlinesOf, turningArea } from './blocks.ts'

const THIN = 8
const THICK = 13
const OPENING: Record<string, Point> = { '5 2': [90, 20], '6 2': [119, 24], '6 3': [116, 41], '5 3': [96, 38] }

export const lattice: Lattice = {
  columns: [0, 10, 35, 60, 70, 92, 122, 140, 150],
  rows: [0, 10, 22, 40, 50, 60, 110, 120],
  moved: ([x, y], i, j) => OPENING[`${i} ${j}`] ?? [i >= 7 ? x - 0.25 * y : x, j >= 6 ? y - 0.2 * x : y],
  thickness: (i, j) => {
    if (i >= 4 && j >= 5) return 0
    if (i === 5 && j === 2) return 0
    return (i === 1 || i === 2) && j >= 3 && j <= 5 ? THICK : THIN
  },
}

/** Corners of the lattice with a bolt. */
export const boltCorners: Point[] = [
  [1, 1],
  [3, 1],
  [5, 1],
  [7, 1],
  [7, 4],
  [5, 4],
  [3, 4],
  [3, 6],
  [1, 6],
  [1, 4],
]

export const bolts: Point[] = boltCorners.map((corner) => cornerOf(lattice, corner))

const around = outlinesOf(lattice, () => true)

export const oddCover: Cover & { young: number; poisson: number } = {
  outline: around.find((line) => turningArea(line) > 0)!,
  openings: around.filter((line) => turningArea(line) < 0),
  thickness: THIN,
  regions: outlinesOf(lattice, (thickness) => thickness === THICK).map((outline) => ({ outline, thickness: THICK })),
  young: 70_000,
  poisson: 0.33,
}
