import { type Interval, middleOf } from '../quantity/interval.ts'
import { readThread } from '../threads/readThread.ts'
import type { Thread } from '../threads/thread.ts'
import { type BoltClass, boltClass } from './boltClass.ts'
import type { Friction } from './friction.ts'
import { bearingRing } from './head.ts'
import { tighteningTorque } from './preload.ts'

/** How far below the 90 % torque the usual band reaches. @source US Army practice: 30 % or more off the table for a hole in aluminium */
const LOW_SHARE = 0.7

/**
 * Usual band of torques in N·m for a bolt: from 30 % under the 90 % torque at the lowest friction of the range up to the 90 % torque at its
 * middle. Above it the usual target of 90 % of yield is passed under middling conditions; below it the joint is looser than books make it.
 * @source VDI 2230:2001 and later (90 % torque); the band's two ends are Gripbook's own reading of how far books differ
 */
export function usualTorque(thread: Thread, bearing: number, strength: BoltClass, friction: Friction): Interval {
  return {
    lo: LOW_SHARE * tighteningTorque(thread, bearing, strength.yield, friction.mu.lo),
    hi: tighteningTorque(thread, bearing, strength.yield, middleOf(friction.mu)),
  }
}

/** A size for which a torque would be usual, with its band in N·m. */
export type UsualSize = { thread: string; band: Interval }

const METRIC = ['M3', 'M4', 'M5', 'M6', 'M8', 'M10', 'M12', 'M14', 'M16', 'M18', 'M20', 'M22', 'M24']
const UNIFIED = ['1/4-20', '5/16-18', '3/8-16', '7/16-14', '1/2-13', '9/16-12', '5/8-11', '3/4-10']

/**
 * Coarse sizes of the same profile and class for which a torque in N·m lies in the usual band, the one whose own 90 % torque comes nearest first. Each
 * with the plain hexagon of its standard.
 */
export function usualSizes(torque: number, { profile }: Thread, className: string, friction: Friction): UsualSize[] {
  const found: (UsualSize & { off: number })[] = []
  for (const name of profile === 'metric' ? METRIC : UNIFIED) {
    const read = readThread(name)
    if (!read.ok) continue
    const strength = boltClass(className, read.value)
    const ring = bearingRing(read.value)
    if (!strength || !ring) continue
    const band = usualTorque(read.value, ring.friction, strength, friction)
    if (torque >= band.lo && torque <= band.hi)
      found.push({ thread: read.value.name, band, off: Math.abs(Math.log(torque / band.hi)) })
  }
  return found.sort((a, b) => a.off - b.off).map(({ thread, band }) => ({ thread, band }))
}

/** Torques that a book prints for a size and class, N·m, lubricated to dry. */
export type BookTorque = { thread: string; className: string; band: Interval; source: string }

const OPERATOR = 'general table of an operator manual, lubricated to dry'
const BOOK: readonly (readonly [string, string, number, number])[] = [
  ['M6', '4.8', 4.8, 6],
  ['M6', '8.8', 9, 11],
  ['M6', '9.8', 9, 11],
  ['M6', '10.9', 13, 17],
  ['M6', '12.9', 15, 19],
  ['M8', '4.8', 12, 15],
  ['M8', '8.8', 22, 28],
  ['M8', '9.8', 22, 28],
  ['M8', '10.9', 32, 40],
  ['M8', '12.9', 37, 47],
  ['M10', '4.8', 23, 29],
  ['M10', '8.8', 43, 55],
  ['M10', '9.8', 43, 55],
  ['M10', '10.9', 63, 80],
  ['M10', '12.9', 75, 95],
  ['M12', '4.8', 40, 50],
  ['M12', '8.8', 75, 95],
  ['M12', '9.8', 75, 95],
  ['M12', '10.9', 110, 140],
  ['M12', '12.9', 130, 165],
]

/** What a general table prints for this coarse thread and class, to show beside the sum. */
export function bookTorque(thread: Thread, className: string): BookTorque | undefined {
  const row = BOOK.find(([size, mark]) => size === thread.name && mark === className)
  return row && { thread: row[0], className: row[1], band: { lo: row[2], hi: row[3] }, source: OPERATOR }
}
