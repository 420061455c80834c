/** Readings that look like a slip of the hand. They are kept all the same; the person is asked at once, while the gauge is still at hand. */
import type { Hole } from '@gripbook/engine'
import { midOf } from './entry.ts'
import type { ReadQuantity } from './quantities.ts'

export type Slip =
  /** Ten times what the others read, or a tenth of it. */
  | { is: 'point'; others: number }
  /** 25.4 times, or the 25.4th part: the other unit. */
  | { is: 'unit'; others: number; typed: 'mm' | 'in' }
  /** Away from all others by more than they are from each other; `tens`: by whole tens of millimetres. */
  | { is: 'far'; others: number; off: number; tens: boolean }
  | { is: 'long' }
  /** Thread and mouth together would go deeper than the bottom. */
  | { is: 'below the bottom'; bottom: number; needed: number }

/** mm; longer than any bolt of a gearbox's face (common practice, no source). */
const LONG = 300
/** mm; what nobody needs to hear of. */
const NEAR = 5

/** What looks wrong with a reading of `mm`, beside the same reading of the others; null where nothing does. */
export function slipOf(mm: number, others: readonly number[]): Slip | null {
  if (others.length > 0) {
    const middle = median(others)
    const ratio = mm / middle
    if (middle > 0 && mm > 0) {
      if (near(ratio, 10) || near(ratio, 0.1)) return { is: 'point', others: middle }
      if (near(ratio, 25.4)) return { is: 'unit', others: middle, typed: 'in' }
      if (near(ratio, 1 / 25.4)) return { is: 'unit', others: middle, typed: 'mm' }
    }
  }
  if (mm > LONG) return { is: 'long' }
  if (others.length < 3) return null
  const nearest = Math.min(...others.map((other) => Math.abs(other - mm)))
  const spread = Math.max(...others) - Math.min(...others)
  if (nearest <= NEAR || nearest <= spread) return null
  const off = mm - median(others)
  const tens = Math.round(off / 10)
  return { is: 'far', others: median(others), off, tens: tens !== 0 && Math.abs(off - tens * 10) <= 0.7 }
}

/** A hole whose thread would have to reach below its bottom with this reading in place of what was known. */
export function depthSlip(hole: Hole, quantity: ReadQuantity, mm: number): Slip | null {
  if (quantity !== 'mouth' && quantity !== 'threadDepth' && quantity !== 'bottomDepth') return null
  if (hole.ending === 'through') return null
  const known = (of: 'mouth' | 'threadDepth' | 'bottomDepth') =>
    of === quantity ? mm : hole[of] === undefined ? undefined : midOf(hole[of])
  const bottom = known('bottomDepth')
  const needed = (known('mouth') ?? 0) + (known('threadDepth') ?? 0)
  return bottom !== undefined && needed > bottom + 0.5 ? { is: 'below the bottom', bottom, needed } : null
}

const near = (ratio: number, wanted: number) => ratio > wanted * 0.85 && ratio < wanted * 1.18

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const half = sorted.length >> 1
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2
}
