/** Compliance of the odd cover by Gripbook and by CalculiX. */
import { condense } from '../../packages/engine/src/tightening/plate/condense.ts'
import { meshOf, nodeAtCorner } from './blocks.ts'
import { runCalculix } from './calculix.ts'
import { deckOf } from './deck.ts'
import { boltCorners, bolts, lattice, oddCover } from './oddCover.ts'

/** Thickness over 50 with 50³ times the modulus: shear no longer counts. */
export const THIN_LIMIT = 50

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
  const theirs = byCalculix(bed, size, thinness)
  const seconds = (performance.now() - started) / 1000
  const ours = condense(oddCover, { stiffness: bed }, bolts)
  const fine = condense(oddCover, { stiffness: bed }, bolts, ours.grid / 4)
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

/** The program's matrix with its transpose averaged: shells expanded to bricks leave it unsymmetric by some ten-thousandths. */
function byCalculix(bed: number, size: number, thinness: number) {
  const mesh = meshOf(lattice, size)
  const nodes = boltCorners.map((corner) => nodeAtCorner(lattice, mesh, size, corner))
  const { young, poisson } = oddCover
  const raw = runCalculix(deckOf({ mesh, young, poisson, bed, bolts: nodes }, thinness), nodes)
  const compliance = raw.map((row, i) => row.map((value, j) => (value + raw[j]![i]!) / 2))
  const lopsided = Math.max(...raw.flatMap((row, i) => row.map((value, j) => Math.abs(value - raw[j]![i]!))))
  return { compliance, lopsided, elements: mesh.elements.length }
}
