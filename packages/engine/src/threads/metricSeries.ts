/**
 * Diameters and pitches of the ISO general purpose metric thread: diameter, its coarse pitch (null where there is none), its fine pitches. All in mm.
 * @source ISO 261:1998, first to third choice, M1.6 to M64 (from memory; the coarse pitches M3 to M24 also in ISO 898-1)
 */
export const METRIC_SERIES: readonly (readonly [number, number | null, readonly number[]])[] = [
  [1.6, 0.35, [0.2]],
  [2, 0.4, [0.25]],
  [2.5, 0.45, [0.35]],
  [3, 0.5, [0.35]],
  [3.5, 0.6, [0.35]],
  [4, 0.7, [0.5]],
  [5, 0.8, [0.5]],
  [6, 1, [0.75]],
  [7, 1, [0.75]],
  [8, 1.25, [1, 0.75]],
  [9, 1.25, [1, 0.75]],
  [10, 1.5, [1.25, 1, 0.75]],
  [11, 1.5, [1, 0.75]],
  [12, 1.75, [1.5, 1.25, 1]],
  [14, 2, [1.5, 1.25, 1]],
  [15, null, [1.5, 1]],
  [16, 2, [1.5, 1]],
  [17, null, [1.5, 1]],
  [18, 2.5, [2, 1.5, 1]],
  [20, 2.5, [2, 1.5, 1]],
  [22, 2.5, [2, 1.5, 1]],
  [24, 3, [2, 1.5, 1]],
  [25, null, [2, 1.5, 1]],
  [26, null, [1.5]],
  [27, 3, [2, 1.5, 1]],
  [28, null, [2, 1.5, 1]],
  [30, 3.5, [3, 2, 1.5, 1]],
  [32, null, [2, 1.5]],
  [33, 3.5, [3, 2, 1.5]],
  [35, null, [1.5]],
  [36, 4, [3, 2, 1.5]],
  [38, null, [1.5]],
  [39, 4, [3, 2, 1.5]],
  [40, null, [3, 2, 1.5]],
  [42, 4.5, [4, 3, 2, 1.5]],
  [45, 4.5, [4, 3, 2, 1.5]],
  [48, 5, [4, 3, 2, 1.5]],
  [50, null, [3, 2, 1.5]],
  [52, 5, [4, 3, 2, 1.5]],
  [56, 5.5, [4, 3, 2, 1.5]],
  [60, 5.5, [4, 3, 2, 1.5]],
  [64, 6, [4, 3, 2, 1.5]],
]

/** The coarse pitch of a metric diameter in mm, or undefined where the series has none. */
export function coarsePitch(diameter: number): number | undefined {
  return METRIC_SERIES.find(([d]) => d === diameter)?.[1] ?? undefined
}
