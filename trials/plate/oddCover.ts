/** A made-up cover with everything that an even rectangle has not: an L with slanted edges, an opening askew, a thicker part, bolts at uneven places. */
import type { Point } from '../../packages/engine/src/unit.ts'
import type { Lattice } from './blocks.ts'
import { latticeCover } from './latticeCover.ts'

const THIN = 8
const THICK = 13
const OPENING: Record<string, Point> = { '5 2': [90, 20], '6 2': [119, 24], '6 3': [116, 41], '5 3': [96, 38] }

const lattice: Lattice = {
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
const boltCorners: Point[] = [
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

export const oddCover = latticeCover(lattice, boltCorners, THIN, THICK)
