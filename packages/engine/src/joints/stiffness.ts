import { must } from '../must.ts'
import type { Interval } from '../quantity/interval.ts'
import { stressArea } from '../threads/stressArea.ts'
import type { Thread } from '../threads/thread.ts'

/** One conical frustum of the clamped zone under a head. Lengths in mm, Young's modulus in MPa (or any one system). */
export type Frustum = { thickness: number /** Smaller outer diameter. */; outer: number; hole: number; young: number }

const TAN_30 = Math.tan(Math.PI / 6)

/**
 * Stiffness of a frustum with a 30° half angle, force per length of the units given:
 * k = π·E·d·tan α/ln[((2t·tan α + D − d)(D + d))/((2t·tan α + D + d)(D − d))].
 * @source Shigley 9e, equation 8-20 (prints 0.5774 and 1.155)
 */
export function frustumStiffness({ thickness, outer, hole, young }: Frustum): number {
  must(thickness > 0 && outer > hole && hole > 0, 'frustumStiffness: no frustum', { thickness, outer, hole })
  const grown = 2 * thickness * TAN_30
  const log = Math.log(((grown + outer - hole) * (outer + hole)) / ((grown + outer + hole) * (outer - hole)))
  return (Math.PI * young * hole * TAN_30) / log
}

/** Stiffness of springs one after another. */
export function inSeries(...stiffnesses: number[]): number {
  return 1 / stiffnesses.reduce((sum, k) => sum + 1 / k, 0)
}

/** Stiffness of a bar: area·E/length. A bolt is its shank and its thread in series. */
export function barStiffness(area: number, young: number, length: number): number {
  return (area * young) / length
}

/**
 * Clamp load in N that `degrees` of turning after snug should add: F = θ/360·P/(1/kb + 1/km). Pitch in mm, stiffnesses in N/mm. It holds while
 * bolt and parts stay elastic.
 */
export function clampFromAngle(degrees: number, pitch: number, bolt: number, parts: number): number {
  return (degrees / 360) * pitch * inSeries(bolt, parts)
}

/** Degrees to turn after snug for a clamp load in N: the same the other way. */
export function angleForClamp(load: number, pitch: number, bolt: number, parts: number): number {
  return (360 * load) / (pitch * inSeries(bolt, parts))
}

/** A bolt through a part into a tapped hole. Lengths in mm, Young's moduli in MPa (or any one system). */
export type TappedJoint = {
  /** Thickness of all that is clamped under the head. */
  clamped: number
  /** Length of thread in the hole that springs with the bolt: half of the engagement, at most half a diameter. */
  engaged: number
  /** Outer diameter of the bearing face and of the hole under it. */
  bearing: number
  hole: number
  youngClamped: number
  youngTapped: number
}

/**
 * Stiffness of the parts under a bolt in a tapped hole: frusta of 30° from the head down and from the sprung thread up, which meet in the middle; each is cut
 * where the material changes.
 * @source Shigley 9e, section 8-5, figure 8-17 and example 8-5
 */
export function partsStiffness({ clamped, engaged, bearing, hole, youngClamped, youngTapped }: TappedJoint): number {
  const half = (clamped + engaged) / 2
  const cone = (near: number, nearYoung: number, farYoung: number): number[] => {
    const first = Math.min(near, half)
    const rest = half - first
    return [
      ...(first > 0 ? [frustumStiffness({ thickness: first, outer: bearing, hole, young: nearYoung })] : []),
      ...(rest > 0
        ? [frustumStiffness({ thickness: rest, outer: bearing + 2 * first * TAN_30, hole, young: farYoung })]
        : []),
    ]
  }
  return inSeries(...cone(clamped, youngClamped, youngTapped), ...cone(engaged, youngTapped, youngClamped))
}

/**
 * Stiffness of a bolt, plain shank and thread in series, N/mm. `shank` is the part of `length` without thread.
 * @source Shigley 9e, equation 8-17
 */
export function boltStiffness(thread: Thread, length: number, shank: number, young: number): number {
  const threaded = barStiffness(stressArea(thread), young, length - shank)
  return shank > 0 ? inSeries(barStiffness((Math.PI / 4) * thread.diameter ** 2, young, shank), threaded) : threaded
}

/** What angle tightening needs to be known. Lengths in mm, Young's moduli in MPa, angle in degrees. */
export type AngleWanted = {
  thread: Thread
  angle: Interval
  clamped: Interval
  /** Plain shank within the clamped length; not known: from none to all of it. */
  shank?: Interval
  /** Length of thread in the hole; not known: a diameter or more. */
  engagement?: Interval
  bearing: number
  /** Diameter of the hole that the bolt passes through. */
  hole: number
  youngClamped: Interval
  youngTapped: Interval
}

/** Stiffness in N/mm of bolt and parts, and the clamp load in N that the angle adds. */
export type AngleAnswer = { bolt: Interval; parts: Interval; added: Interval }

/** Young's modulus of bolts in MPa, stainless ones to heat-treated ones. @source EN 10088-1 for A2, VDI 2230 for steel (both from memory) */
const BOLT_YOUNG: Interval = { lo: 195_000, hi: 210_000 }

/**
 * The clamp load that turning by `angle` after snug adds while bolt and parts stay elastic, as a range: softest is the longest joint with thread all
 * through, its clearance hole counted as empty and the soft end of every modulus; stiffest is the other end, with the bolt filling its hole as Shigley has it.
 */
export function angleTightening(wanted: AngleWanted): AngleAnswer {
  const { thread, angle, clamped, shank, engagement, bearing, hole, youngClamped, youngTapped } = wanted
  const engaged = (mm: number | undefined): number => Math.min(thread.diameter, mm ?? thread.diameter) / 2
  const soft = { clamped: clamped.hi, engaged: engaged(engagement?.hi) }
  const stiff = { clamped: clamped.lo, engaged: engaged(engagement?.lo) }
  const bolt = {
    lo: boltStiffness(thread, soft.clamped + soft.engaged, Math.min(shank?.lo ?? 0, soft.clamped), BOLT_YOUNG.lo),
    hi: boltStiffness(
      thread,
      stiff.clamped + stiff.engaged,
      Math.min(shank?.hi ?? stiff.clamped, stiff.clamped),
      BOLT_YOUNG.hi,
    ),
  }
  const parts = {
    lo: partsStiffness({ ...soft, bearing, hole, youngClamped: youngClamped.lo, youngTapped: youngTapped.lo }),
    hi: partsStiffness({
      ...stiff,
      bearing,
      hole: thread.diameter,
      youngClamped: youngClamped.hi,
      youngTapped: youngTapped.hi,
    }),
  }
  return {
    bolt,
    parts,
    added: {
      lo: clampFromAngle(angle.lo, thread.pitch, bolt.lo, parts.lo),
      hi: clampFromAngle(angle.hi, thread.pitch, bolt.hi, parts.hi),
    },
  }
}
