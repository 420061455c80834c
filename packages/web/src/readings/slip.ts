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
  if (others.length > 0 && mm > 0) {
    const factor = factorOff(mm, others)
    if (factor === 10 || factor === 0.1) return { is: 'point', others: median(others) }
    if (factor !== null) return { is: 'unit', others: median(others), typed: factor > 1 ? 'in' : 'mm' }
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

/** The factor without which a reading far outside the others would lie among them; of several the one that brings it nearest to their middle. */
function factorOff(mm: number, others: readonly number[]): number | null {
  const least = Math.min(...others)
  const most = Math.max(...others)
  if (mm < most * 3 && mm > least / 3) return null
  const off = (factor: number) => Math.abs(Math.log(mm / factor / median(others)))
  const among = [10, 0.1, 25.4, 1 / 25.4].filter((factor) => mm / factor > least * 0.85 && mm / factor < most * 1.18)
  return among.sort((a, b) => off(a) - off(b))[0] ?? null
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const half = sorted.length >> 1
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2
}
