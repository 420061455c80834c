import { must } from '../must.ts'
import type { Thread } from './thread.ts'

/** How far the diameter of the stress area lies under the nominal one, in pitches: the mean of d2 and d3 for metric threads. */
const BELOW_NOMINAL = { metric: (0.649519 + 1.226869) / 2, unified: 0.9743 }

/** Diameter d0 in mm of the circle that has the stress area. */
export function stressDiameter({ profile, diameter, pitch }: Thread): number {
  const mean = diameter - BELOW_NOMINAL[profile] * pitch
  must(mean > 0, 'stressDiameter: no section left', { profile, diameter, pitch })
  return mean
}

/**
 * Stress area of a bolt's thread in mm²: what tension is divided by to get stress.
 * Metric As = π/4·((d2 + d3)/2)², basic sizes. Unified At = π/4·(D − 0.9743/n)², 1/n is the pitch. Sizes in mm for both.
 * Errors: none for a `Thread` from `readThread`; one made by hand with no section left throws `Bug`.
 * @source ISO 898-1, nominal stress area; ASME B1.1, tensile stress area
 * @example stressArea({ profile: 'metric', diameter: 8, pitch: 1.25, name: 'M8' }) // 36.61, printed 36.6
 */
export function stressArea(thread: Thread): number {
  return (Math.PI / 4) * stressDiameter(thread) ** 2
}
