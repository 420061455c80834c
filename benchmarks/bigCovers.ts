/** Two covers of 200 × 150 mm with 24 bolts, on lattices so that a finite-element mesh and an outline can be made of both: an even one, and one with all that an even one has not. */
import type { Point } from '../packages/engine/src/unit.ts'
import type { Lattice } from '../trials/plate/blocks.ts'
import { type LatticeCover, latticeCover } from '../trials/plate/latticeCover.ts'

export type BigCover = LatticeCover & { name: string }

const THICKNESS = 8
const THICK = 13
/** Spaces between bolts along and up: 24 bolts round the rim. */
const ACROSS = 7
const UP = 5
/** From the edge to the middle of a bolt, mm. */
const EDGE = 10

const spaced = (from: number, to: number, count: number) =>
  Array.from({ length: count + 1 }, (_, k) => from + ((to - from) * k) / count)
const numbered = (count: number) => Array.from({ length: count }, (_, k) => k)

export const evenCover = bigCover(
  'even',
  {
    columns: [0, ...spaced(EDGE, 200 - EDGE, ACROSS), 200],
    rows: [0, ...spaced(EDGE, 150 - EDGE, UP), 150],
    moved: (at) => at,
    thickness: () => THICKNESS,
  },
  [
    ...numbered(ACROSS).map((k): Point => [1 + k, 1]),
    ...numbered(UP).map((k): Point => [1 + ACROSS, 1 + k]),
    ...numbered(ACROSS).map((k): Point => [1 + ACROSS - k, 1 + UP]),
    ...numbered(UP).map((k): Point => [1, 1 + UP - k]),
  ],
)

const ASKEW: Record<string, Point> = { '2 5': [38, 86], '3 5': [60, 90], '3 6': [58, 112], '2 6': [36, 108] }

/** A corner cut out, a side that slants, an opening askew, a thicker part, two bolts in the middle. */
export const oddCover = bigCover(
  'odd',
  {
    columns: [0, 10, 36, 62, 88, 114, 130, 140, 165, 190, 200],
    rows: [0, 10, 35, 60, 78, 88, 114, 140, 150],
    moved: ([x, y], i, j) => ASKEW[`${i} ${j}`] ?? [i >= 9 ? x - 0.1 * y : x, y],
    thickness: (i, j) => {
      if ((i >= 7 && j >= 5) || (i === 2 && j === 5)) return 0
      return i === 4 && (j === 2 || j === 3) ? THICK : THICKNESS
    },
  },
  [
    ...[1, 2, 3, 4, 5, 7, 8, 9].map((i): Point => [i, 1]),
    ...[2, 4].map((j): Point => [9, j]),
    ...[8, 6].map((i): Point => [i, 4]),
    ...[6, 7].map((j): Point => [6, j]),
    ...[4, 3, 2, 1].map((i): Point => [i, 7]),
    ...[6, 5, 3, 2].map((j): Point => [1, j]),
    [3, 3],
    [4, 5],
  ],
)

function bigCover(name: string, lattice: Lattice, boltCorners: Point[]): BigCover {
  return { name, ...latticeCover(lattice, boltCorners, THICKNESS, THICK) }
}
