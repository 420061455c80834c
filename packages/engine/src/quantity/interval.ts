import { must } from '../must.ts'
import type { Quantity } from './quantity.ts'
import { type Dimension, sizeOf } from './units.ts'

/** Every value from `lo` to `hi`, ends included. mm for lengths, N·m for torques. `hi` may be Infinity. */
export type Interval = { lo: number; hi: number }

export const UNKNOWN: Interval = { lo: 0, hi: Number.POSITIVE_INFINITY }

/** The middle of an interval whose ends are known. */
export function middleOf({ lo, hi }: Interval): number {
  return (lo + hi) / 2
}

/** Sum of two intervals. */
export function add(a: Interval, b: Interval): Interval {
  return { lo: a.lo + b.lo, hi: a.hi + b.hi }
}

/**
 * Half of the tolerance zone js15 in mm for a bolt's nominal length, by ISO 4759-1 product grade A (lengths to 150 mm) with IT15 of ISO 286-1.
 * @source ISO 286-1 table of standard tolerances, IT15 (from memory)
 */
export function lengthTolerance(nominal: number): number {
  const steps: [number, number][] = [
    [3, 0.4],
    [6, 0.48],
    [10, 0.58],
    [18, 0.7],
    [30, 0.84],
    [50, 1.0],
    [80, 1.2],
    [120, 1.4],
    [180, 1.6],
    [250, 1.85],
  ]
  const step = steps.find(([upTo]) => nominal <= upTo)
  return (step ? step[1] : 2.1) / 2
}

/**
 * The interval that a quantity stands for, in mm or N·m. Absent: unknown, from 0 up. The lower end is never below 0.
 * A quantity that has passed the file's checks has no fault here; a unit of another dimension is a bug.
 */
export function intervalOf(quantity: Quantity | undefined, dimension: Dimension = 'length'): Interval {
  if (quantity === undefined) return UNKNOWN
  if (typeof quantity === 'number') return { lo: quantity, hi: quantity }
  const size = quantity.unit === undefined ? 1 : sizeOf(quantity.unit, dimension)
  must(size !== undefined, 'intervalOf: the unit measures something else', { quantity, dimension })
  if ('value' in quantity) {
    const off = quantity.plusMinus ?? 0
    return { lo: Math.max(0, (quantity.value - off) * size), hi: (quantity.value + off) * size }
  }
  if ('nominal' in quantity) {
    const nominal = quantity.nominal * size
    const off = lengthTolerance(nominal)
    return { lo: Math.max(0, nominal - off), hi: nominal + off }
  }
  const { atLeast = 0, atMost = Number.POSITIVE_INFINITY } = quantity
  return { lo: atLeast * size, hi: atMost * size }
}
