import { walk } from './moves.ts'
import type { Rate } from './rate.ts'

/**
 * Changes an order step by step into one with less burden, as long as it rates no worse than `bound`. Ends when no small change helps, or when
 * it is `spent`. The rate is asked only for what would be easier.
 */
export function easier(
  from: Int32Array,
  bound: number,
  rate: Rate,
  burden: (sequence: ArrayLike<number>) => number,
  spent: () => boolean,
): Int32Array {
  let least = burden(from)
  return walk(
    from,
    (trial) => {
      const now = burden(trial)
      if (now >= least - 1e-9 || rate(trial, bound) > bound) return false
      least = now
      return true
    },
    spent,
  )
}
