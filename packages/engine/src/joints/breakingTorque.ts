import { boltLimits } from '../threads/limits.ts'
import type { Thread } from '../threads/thread.ts'
import type { BoltClass } from './boltClass.ts'

/** Ratio of torsional to tensile strength by class. @source ISO 898-7 (from memory) */
const SHEAR_RATIO: Readonly<Record<string, number>> = { '8.8': 0.84, '9.8': 0.815, '10.9': 0.79, '12.9': 0.75 }

/**
 * Torque in N·m at which the thread is twisted off when nothing is clamped: τB·(π/16)·d3³ with the least root of the thread and τB = X·Rm.
 * Undefined for classes and sizes outside the standard (8.8 to 12.9, M1 to M10).
 * @source ISO 898-7, minimum breaking torques (from memory; the formula reproduces its table)
 */
export function breakingTorque(thread: Thread, { name, tensile }: BoltClass): number | undefined {
  const ratio = Object.hasOwn(SHEAR_RATIO, name) ? SHEAR_RATIO[name] : undefined
  if (ratio === undefined || thread.profile !== 'metric' || thread.diameter > 10) return undefined
  return (ratio * tensile * (Math.PI / 16) * boltLimits(thread).minorMin ** 3) / 1000
}
