/** Compliance of the odd cover by Gripbook and by CalculiX. */
import { condense } from '../../packages/engine/src/tightening/plate/condense.ts'
import { byCalculix } from './byCalculix.ts'
import { oddCover } from './oddCover.ts'

export type Compared = {
  bed: number
  elements: number
  /** Step of the grid that Gripbook chose, mm, and its own estimate of its error, % of the largest term. */
  grid: number
  ownError: number
  /** Greatest difference, and the greatest on the diagonal, in % of the largest term. */
  worst: number
  diagonal: number
  /** Greatest difference to Gripbook on a grid four times finer. */
  finer: number
  /** Largest term, mm/N. */
  largest: number
  /** What CalculiX is unsymmetric by, % of the largest term. */
  lopsided: number
  seconds: number
}

/** Both programs on one bed (N/mm³): CalculiX with elements of about `size` mm, in the thin limit or with shear at the true thickness. */
export function compare(bed: number, size: number, thinness: number): Compared {
  const started = performance.now()
  const theirs = byCalculix(oddCover, bed, size, thinness)
  const seconds = (performance.now() - started) / 1000
  const { cover, bolts } = oddCover
  const ours = condense(cover, { stiffness: bed }, bolts)
  const fine = condense(cover, { stiffness: bed }, bolts, ours.grid / 4)
  const largest = Math.max(...theirs.compliance.flat())
  const from = (matrix: number[][]) =>
    matrix.map((row, i) => row.map((value, j) => (100 * Math.abs(value - theirs.compliance[i]![j]!)) / largest))
  const apart = from(ours.compliance)
  return {
    bed,
    elements: theirs.elements,
    grid: ours.grid,
    ownError: 100 * ours.error,
    worst: Math.max(...apart.flat()),
    diagonal: Math.max(...apart.map((row, i) => row[i]!)),
    finer: Math.max(...from(fine.compliance).flat()),
    largest,
    lopsided: (100 * theirs.lopsided) / largest,
    seconds,
  }
}
