import type { Interval } from '../quantity/interval.ts'
import { headsFor } from '../threads/heads.ts'
import type { Thread } from '../threads/thread.ts'
import type { Material } from '../unit.ts'
import { HIGHEST_FRICTION } from './friction.ts'
import { bearingRing } from './head.ts'
import { ANY_SHEAR, parentMaterial, UNKNOWN_ENGAGEMENT } from './parentMaterial.ts'
import { bestShearAreas } from './stripping.ts'
import { clampFor } from './torque.ts'
import { wrenchDeviation } from './wrench.ts'

/**
 * Least engagement in mm that a hole needs when nobody has stated one, for the threads that it may have: from what no sum can go below to what is
 * usual. `lo` is the stripping sum at its best (least clamp load: highest friction, widest head, wrench low; strongest material, tightest threads), at
 * least one pitch; without a torque it is one pitch. `hi` is the usual engagement of the parent material. So a rule of thumb alone never says that
 * a bolt *cannot* go in a hole: only `lo` does, and it is a sum.
 * Torque in N·m. With several candidate threads the interval covers them all.
 */
export function engagementRange(
  threads: readonly Thread[],
  material: Material | undefined,
  torque: Interval | undefined,
): Interval {
  const parent = parentMaterial(material)
  const ratio = parent?.usualEngagement ?? UNKNOWN_ENGAGEMENT
  const strongest = (parent?.shear ?? ANY_SHEAR).hi
  const ranges = threads.map((thread) => {
    const lo = Math.max(thread.pitch, leastLoad(thread, torque?.lo ?? 0) / (bestShearAreas(thread).hole * strongest))
    return { lo, hi: Math.max(lo, ratio * thread.diameter) }
  })
  if (ranges.length === 0) return { lo: 0, hi: 0 }
  return { lo: Math.min(...ranges.map(({ lo }) => lo)), hi: Math.max(...ranges.map(({ hi }) => hi)) }
}

/** The least clamp load in N that a torque in N·m can leave. */
function leastLoad(thread: Thread, torque: number): number {
  const plain = bearingRing(thread)?.friction ?? 0
  const widest = Math.max(
    plain,
    ...headsFor(thread).map((head) => bearingRing(thread, { standard: head.standard })?.friction ?? 0),
  )
  return clampFor(thread, widest, torque * (1 - wrenchDeviation(torque)), HIGHEST_FRICTION)
}
