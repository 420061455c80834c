import type { Thread } from './thread.ts'

/**
 * Preferred lengths of bolts in mm.
 * @source ISO 888, preferred nominal lengths (from memory)
 */
const METRIC_LENGTHS = [
  6, 8, 10, 12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 80, 90, 100, 110, 120, 130, 140, 150, 160, 180, 200,
]

/** Usual lengths of inch bolts in inches: common practice, no source. */
const INCH_LENGTHS = [
  0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.25, 3.5, 3.75, 4, 4.5, 5, 5.5, 6,
  6.5, 7, 7.5, 8,
]

/**
 * The lengths in mm in which bolts of a thread are usually made, shortest first: the preferred series from 1.2 to 20 diameters.
 * The two ends are common practice, no source.
 */
export function standardLengths({ profile, diameter }: Thread): number[] {
  const series = profile === 'metric' ? METRIC_LENGTHS : INCH_LENGTHS.map((inches) => inches * 25.4)
  return series.filter((length) => length >= 1.2 * diameter && length <= 20 * diameter)
}

/**
 * Length in mm of the thread on a bolt of `length` mm; a bolt not longer than that is threaded to the head, and its own length is the answer.
 * Metric: 2d + 6 up to 125 mm, 2d + 12 up to 200, 2d + 25 above. Unified: 2D + 1/4 in up to 6 in, 2D + 1/2 in above.
 * @source ISO 888, thread lengths; ASME B18.2.1, cap screws (from memory)
 */
export function standardThreadLength({ profile, diameter }: Thread, length: number): number {
  return Math.min(
    length,
    2 * diameter + (profile === 'metric' ? metricExtra(length) : length <= 6 * 25.4 + 1e-9 ? 6.35 : 12.7),
  )
}

function metricExtra(length: number): number {
  if (length <= 125) return 6
  return length <= 200 ? 12 : 25
}
