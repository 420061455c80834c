import { numbered } from './places.ts'

/** From so many bolts on, four neighbours may count as one (a tightening guide's 48 bolts in 12 groups). */
const MANY = 48

/**
 * The cross pattern of a round flange (ASME PCC-1, the "legacy" pattern): opposite bolts, then the pair at right angles to them, then on to the
 * quarter turn that is farthest from all that is tight. Positions count clockwise from 0 at 12 o'clock; the list is the order in which they are
 * tightened. For multiples of four to 32 it is the printed table. The table stops there: its rule goes on to any number, with opposite pairs alone
 * when the number is even, and one by one when no bolt has another opposite. From 48 bolts on four neighbours go as one.
 */
export function crossPattern(count: number): number[] {
  if (count >= MANY && count % 4 === 0)
    return crossPattern(count / 4).flatMap((group) => numbered(4).map((i) => 4 * group + i))
  const parts = count % 4 === 0 ? [0, 2, 1, 3].map((quarter) => quarter / 4) : count % 2 === 0 ? [0, 1 / 2] : [0]
  return spreadOut(count / parts.length).flatMap((start) => parts.map((part) => start + part * count))
}

/**
 * Positions 0 to count − 1 round a circle, each the farthest from all before it; of equally far ones the one farthest from the last, then from the
 * one before the last and so on, then the lowest. This one rule gives every line of the printed table.
 */
function spreadOut(count: number): number[] {
  const apart = (a: number, b: number) => Math.min(Math.abs(a - b), count - Math.abs(a - b))
  const taken: number[] = []
  while (taken.length < count) {
    const latestFirst = taken.toReversed()
    let best: { at: number; far: number[] } | undefined
    for (const at of numbered(count)) {
      if (taken.includes(at)) continue
      const each = latestFirst.map((other) => apart(at, other))
      const far = [Math.min(...each), ...each]
      if (best === undefined || isFarther(far, best.far)) best = { at, far }
    }
    taken.push(best!.at)
  }
  return taken
}

function isFarther(one: number[], other: number[]): boolean {
  const at = one.findIndex((far, i) => far !== other[i])
  return at >= 0 && one[at]! > other[at]!
}
