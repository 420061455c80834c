import { meshOf } from './blocks.ts'
import { runCalculix } from './calculix.ts'
import { deckOf } from './deck.ts'
import type { LatticeCover } from './latticeCover.ts'

/** Thickness over 50 with 50³ times the modulus: shear no longer counts. */
export const THIN_LIMIT = 50

/**
 * The compliance of a cover by CalculiX, mm/N, on a bed (N/mm³), with elements of about `size` mm; milliseconds are those of the program alone. Its matrix with
 * its transpose averaged: shells expanded to bricks leave it unsymmetric by some ten-thousandths, `lopsided` at most, mm/N.
 */
export function byCalculix({ lattice, boltCorners, cover }: LatticeCover, bed: number, size: number, thinness: number) {
  const mesh = meshOf(lattice, size)
  const bolts = boltCorners.map(mesh.nodeAtCorner)
  const deck = deckOf({ mesh, young: cover.young, poisson: cover.poisson, bed, bolts }, thinness)
  const started = performance.now()
  const raw = runCalculix(deck, bolts)
  const milliseconds = performance.now() - started
  const compliance = raw.map((row, i) => row.map((value, j) => (value + raw[j]![i]!) / 2))
  const lopsided = Math.max(...raw.flatMap((row, i) => row.map((value, j) => Math.abs(value - raw[j]![i]!))))
  return { compliance, lopsided, milliseconds, elements: mesh.elements.length }
}
