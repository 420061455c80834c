import type { Thread } from './thread.ts'

/** Diameters in mm of the hole that a bolt passes through. */
export type ClearanceHole = { fine: number; medium: number; coarse: number }

/**
 * Nominal diameter, then fine, medium and coarse clearance hole, mm.
 * @source ISO 273:1979, supplier's copy; M3, M18 to M24 from memory
 */
const CLEARANCE_HOLES: readonly (readonly [number, number, number, number])[] = [
  [3, 3.2, 3.4, 3.6],
  [4, 4.3, 4.5, 4.8],
  [5, 5.3, 5.5, 5.8],
  [6, 6.4, 6.6, 7],
  [8, 8.4, 9, 10],
  [10, 10.5, 11, 12],
  [12, 13, 13.5, 14.5],
  [14, 15, 15.5, 16.5],
  [16, 17, 17.5, 18.5],
  [18, 19, 20, 21],
  [20, 21, 22, 24],
  [22, 23, 24, 26],
  [24, 25, 26, 28],
]

/**
 * The clearance hole in mm for a bolt: by table for metric threads M3 to M24, undefined for others (`clearanceDiameter` estimates those).
 */
export function clearanceHole({ profile, diameter }: Thread): ClearanceHole | undefined {
  const row = profile === 'metric' ? CLEARANCE_HOLES.find(([d]) => d === diameter) : undefined
  return row && { fine: row[1], medium: row[2], coarse: row[3] }
}

/** Medium clearance hole in mm; 1.1·d where there is no table row (common practice, no source). */
export function clearanceDiameter(thread: Thread): number {
  return clearanceHole(thread)?.medium ?? 1.1 * thread.diameter
}
