import { stressArea, stressDiameter } from '../threads/stressArea.ts'
import type { Thread } from '../threads/thread.ts'
import { threadLever, torqueFor } from './torque.ts'

/**
 * How torsion is counted. From 2001 on the section is taken as yielding all through under torsion, W = π·d0³/12; the edition of 1986 took
 * it as elastic, W = π·d0³/16, which gives torques 8 to 9 % lower. A figure always names its edition.
 */
export type Edition = 'VDI 2230:2001 and later' | 'VDI 2230:1986'
const SECTION: Readonly<Record<Edition, number>> = { 'VDI 2230:2001 and later': 12, 'VDI 2230:1986': 16 }
const CURRENT: Edition = 'VDI 2230:2001 and later'

/** Share of the yield point that the usual assembly preload uses. @source VDI 2230, ν = 0.9 */
export const USUAL_UTILISATION = 0.9

/** Von Mises stress in MPa in the threaded section under a clamp load in N while the wrench turns. */
export function assemblyStress(thread: Thread, load: number, mu: number, edition: Edition = CURRENT): number {
  const tension = load / stressArea(thread)
  const torsion = (load * threadLever(thread, mu)) / ((Math.PI * stressDiameter(thread) ** 3) / SECTION[edition])
  return Math.sqrt(tension ** 2 + 3 * torsion ** 2)
}

/**
 * Assembly preload FM in N at which the von Mises stress is `share` of `yieldPoint` (MPa):
 * FM = As·ν·Rp/√(1 + 3·[1.5·(d2/d0)·(P/(π·d2) + 1.155·µG)]²), with 2 in place of 1.5 in the edition of 1986.
 * @source VDI 2230:2001 and later, ν = 0.9 as the usual target
 */
export function assemblyPreload(
  thread: Thread,
  yieldPoint: number,
  mu: number,
  share: number = USUAL_UTILISATION,
  edition: Edition = CURRENT,
): number {
  return (share * yieldPoint) / assemblyStress(thread, 1, mu, edition)
}

/**
 * Tightening torque MA in N·m for that preload, with the head rubbing on the mean diameter `bearing` (mm).
 * @source VDI 2230:2001 and later, tables of assembly preloads and tightening torques
 */
export function tighteningTorque(
  thread: Thread,
  bearing: number,
  yieldPoint: number,
  mu: number,
  share: number = USUAL_UTILISATION,
  edition: Edition = CURRENT,
): number {
  return torqueFor(thread, bearing, assemblyPreload(thread, yieldPoint, mu, share, edition), mu)
}
