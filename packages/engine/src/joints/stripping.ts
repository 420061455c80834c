import type { Interval } from '../quantity/interval.ts'
import { boltLimits, holeLimits } from '../threads/limits.ts'
import { stressArea } from '../threads/stressArea.ts'
import type { Thread } from '../threads/thread.ts'
import type { BoltClass } from './boltClass.ts'

/** Shear areas in mm² per mm of engagement. */
export type ShearAreas = { hole: number; bolt: number }

/** tan 30°: how fast the thread's flanks widen. */
const FLANK = 0.57735

/**
 * Area of the hole's thread that shears, mm² per mm of engagement: π·n·Ds·[1/(2n) + 0.57735·(Ds − En)], Ds the bolt's major and En the hole's
 * pitch diameter in mm, n = 1/pitch.
 * @source FED-STD-H28/2B; ASME B1.1 appendix
 */
export function holeShearArea(pitch: number, boltMajor: number, holePitch: number): number {
  return (Math.PI / pitch) * boltMajor * (pitch / 2 + FLANK * (boltMajor - holePitch))
}

/**
 * Area of the bolt's thread that shears, mm² per mm of engagement: π·n·Kn·[1/(2n) + 0.57735·(Es − Kn)], Kn the hole's minor and Es the bolt's
 * pitch diameter in mm.
 * @source FED-STD-H28/2B; ASME B1.1 appendix
 */
export function boltShearArea(pitch: number, holeMinor: number, boltPitch: number): number {
  return (Math.PI / pitch) * holeMinor * (pitch / 2 + FLANK * (boltPitch - holeMinor))
}

/** Shear areas with the loosest bolt in the loosest hole that 6g/6H or 2A/2B allow. */
export function worstShearAreas(thread: Thread): ShearAreas {
  const bolt = boltLimits(thread)
  const hole = holeLimits(thread)
  return {
    hole: holeShearArea(thread.pitch, bolt.majorMin, hole.pitchMax),
    bolt: boltShearArea(thread.pitch, hole.minorMax, bolt.pitchMin),
  }
}

/** Shear areas with the tightest bolt in the tightest hole. */
export function bestShearAreas(thread: Thread): ShearAreas {
  const bolt = boltLimits(thread)
  const hole = holeLimits(thread)
  return {
    hole: holeShearArea(thread.pitch, bolt.majorMax, hole.pitchMin),
    bolt: boltShearArea(thread.pitch, hole.minorMin, bolt.pitchMax),
  }
}

/** Shear strength of a bolt over its tensile strength. @source shear ratio of steel 0.75 (table of ratios); 0.6 for the stronger classes (from memory) */
const BOLT_SHEAR_RATIO: Interval = { lo: 0.6, hi: 0.75 }

/** Loads in N at which the threads strip over an engagement in mm: from the loosest, weakest, shortest case to the best one. */
export type StripLoads = { hole: Interval; bolt: Interval }

/** Stripping loads in N. Engagement in mm as an interval, shear strength of the hole's material in MPa. */
export function stripLoads(thread: Thread, engagement: Interval, shear: Interval, { tensile }: BoltClass): StripLoads {
  const worst = worstShearAreas(thread)
  const best = bestShearAreas(thread)
  return {
    hole: { lo: worst.hole * engagement.lo * shear.lo, hi: best.hole * engagement.hi * shear.hi },
    bolt: {
      lo: worst.bolt * engagement.lo * tensile * BOLT_SHEAR_RATIO.lo,
      hi: best.bolt * engagement.hi * tensile * BOLT_SHEAR_RATIO.hi,
    },
  }
}

/**
 * Engagement in mm from which a bolt of this class breaks before the hole strips: worst case (weakest material, loosest threads) as `hi`, best
 * case as `lo`. Chamfers and part-formed threads are not counted in.
 * @source FED-STD-H28/2B areas; bolt at its minimum breaking load As·Rm
 */
export function criticalEngagement(thread: Thread, { tensile }: BoltClass, shear: Interval): Interval {
  const load = stressArea(thread) * tensile
  return {
    lo: load / (bestShearAreas(thread).hole * shear.hi),
    hi: load / (worstShearAreas(thread).hole * shear.lo),
  }
}

/** Engagement in mm that a clamp load in N needs before the hole strips: best and worst case. */
export function engagementFor(thread: Thread, load: Interval, shear: Interval): Interval {
  return {
    lo: load.lo / (bestShearAreas(thread).hole * shear.hi),
    hi: load.hi / (worstShearAreas(thread).hole * shear.lo),
  }
}

/**
 * Engagement in mm at which a bolt breaks before its own thread strips, bolt and hole equally strong: Le = 2·As/{π·Kn·[1/2 + 0.57735·n·(Es − Kn)]}.
 * @source FED-STD-H28/2B; Machinery's Handbook
 */
export function equalStrengthEngagement(thread: Thread): number {
  return (2 * stressArea(thread)) / worstShearAreas(thread).bolt
}
