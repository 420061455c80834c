import type { Thread } from './thread.ts'

/** Basic sizes of a thread's profile in mm. */
export type Profile = {
  /** Height of the sharp triangle, H. */
  triangle: number
  /** Basic pitch diameter, d2 = D2. */
  pitchDiameter: number
  /** Root diameter of the bolt's thread, d3. */
  rootDiameter: number
  /** Basic minor diameter of the hole's thread, D1. */
  minorDiameter: number
  /** Depth of the bolt's thread, h3. */
  boltThreadDepth: number
  /** Depth of the hole's thread, H1, which is also the overlap of the basic profiles. */
  overlap: number
}

/**
 * Basic profile in mm: H = (√3/2)·P, d2 = d − 0.649519·P, d3 = d − 1.226869·P, D1 = d − 1.082532·P. The 60° profile is the same for
 * metric and unified threads, so one set of formulas serves both.
 * @source ISO 68-1 (profile) and ISO 724 (basic dimensions); ASME B1.1 for unified
 */
export function profileOf({ diameter, pitch }: Thread): Profile {
  return {
    triangle: (Math.sqrt(3) / 2) * pitch,
    pitchDiameter: diameter - 0.649519 * pitch,
    rootDiameter: diameter - 1.226869 * pitch,
    minorDiameter: diameter - 1.082532 * pitch,
    boltThreadDepth: 0.613435 * pitch,
    overlap: 0.541266 * pitch,
  }
}
