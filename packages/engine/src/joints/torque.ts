import { type Interval, middleOf } from '../quantity/interval.ts'
import { profileOf } from '../threads/profile.ts'
import type { Thread } from '../threads/thread.ts'

/** 1/cos 30°·1/2: how thread friction at a 60° profile turns clamp load into torque at the pitch diameter (printed 0.577 or 0.58). */
const THREAD_FRICTION = 1 / Math.sqrt(3)

/** Torque in N·mm that 1 N of clamp load asks of the thread alone: pitch part and thread friction. */
export function threadLever(thread: Thread, mu: number): number {
  return thread.pitch / (2 * Math.PI) + THREAD_FRICTION * mu * profileOf(thread).pitchDiameter
}

/** Torque in N·mm for 1 N of clamp load, head friction on the mean diameter `bearing` (mm) included. */
export function lever(thread: Thread, bearing: number, mu: number, muHead: number = mu): number {
  return threadLever(thread, mu) + (muHead * bearing) / 2
}

/**
 * Torque in N·m for a clamp load in N: M = F·(0.159·P + 0.577·µG·d2 + µK·DKm/2).
 * @source Kellermann and Klein; VDI 2230 (prints 0.16 and 0.58)
 */
export function torqueFor(thread: Thread, bearing: number, load: number, mu: number, muHead: number = mu): number {
  return (load * lever(thread, bearing, mu, muHead)) / 1000
}

/** Clamp load in N that a torque in N·m leaves at one friction: the same formula the other way. */
export function clampFor(thread: Thread, bearing: number, torque: number, mu: number, muHead: number = mu): number {
  return (torque * 1000) / lever(thread, bearing, mu, muHead)
}

/** Clamp loads in N: the least, at the middle of the friction range with the wrench at its mark, and the most. */
export type ClampRange = Interval & { middle: number /** Tightening factor αA = most over least. */; scatter: number }

/**
 * Clamp load in N over the friction range and the wrench's deviation (a share, 0.04 for ±4 %): least with the highest friction and the
 * wrench low, most with the lowest friction and the wrench high. Torque in N·m.
 */
export function clampRange(
  thread: Thread,
  bearing: number,
  torque: Interval,
  mu: Interval,
  deviation: number,
): ClampRange {
  const lo = clampFor(thread, bearing, torque.lo * (1 - deviation), mu.hi)
  const hi = clampFor(thread, bearing, torque.hi * (1 + deviation), mu.lo)
  const middle = clampFor(thread, bearing, middleOf(torque), middleOf(mu))
  return { lo, hi, middle, scatter: hi / lo }
}

/** Nut factor K of T = K·F·d that belongs to a friction: K is not µ. */
export function nutFactor(thread: Thread, bearing: number, mu: number): number {
  return lever(thread, bearing, mu) / thread.diameter
}

/** Tightening factor αA = Fmax/Fmin that belongs to a scatter of ±`scatter` (a share, 0.23 for ±23 %). @source VDI 2230 */
export function tighteningFactor(scatter: number): number {
  return (1 + scatter) / (1 - scatter)
}
