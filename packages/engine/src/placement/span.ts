/**
 * Spans: intervals in whole nanometres, so that sums and comparisons are exact and a tie is a tie. A figure that is not a whole number of
 * nanometres is rounded outward: a span never loses a value that the interval holds.
 */
import type { Interval } from '../quantity/interval.ts'

/** Whole nanometres; `hi` may be Infinity. */
export type Span = { lo: number; hi: number }

export const NANOMETRES = 1e6 // in a millimetre

const NOTHING: Span = { lo: 0, hi: 0 }

export function spanOf(interval: Interval): Span {
  return { lo: whole(interval.lo, Math.floor), hi: whole(interval.hi, Math.ceil) }
}

function whole(millimetres: number, outward: (x: number) => number): number {
  const x = millimetres * NANOMETRES
  const near = Math.round(x)
  return Math.abs(x - near) < 1e-3 ? near : outward(x)
}

export function sum(...spans: Span[]): Span {
  return spans.reduce((a, b) => ({ lo: a.lo + b.lo, hi: a.hi + b.hi }), NOTHING)
}

export function inMillimetres(nanometres: number): number {
  return nanometres / NANOMETRES
}
