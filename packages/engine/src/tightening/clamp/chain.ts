/**
 * Many orders on one cover, fast. The bed is condensed once; between two changes of which bolts hold, all loads rise and fall straight with the one that the wrench turns, so a turn
 * is a walk from one such change to the next. The table that gives the slopes is carried along by principal pivots instead of being solved anew. `tighten.ts` gives the same loads the slow way.
 * @source principal pivoting for linear complementarity: Cottle, Pang and Stone, The Linear Complementarity Problem, sections 2.3 and 4.2
 */
import type { Bolt } from './tighten.ts'

/**
 * Where a walk stands: which bolts hold, their loads (N), the gaps of the others (mm; without end: not there), and the table: the lower half of the symmetric matrix that says
 * how loads and gaps move with each other, row after row.
 */
type Stand = { holds: Uint8Array; loads: Float64Array; gaps: Float64Array; table: Float64Array }

export type Chain = {
  /** Loads in N after all passes in this sequence of bolts; the array is used again by the next call. */
  loadsAfter: (sequence: ArrayLike<number>) => Float64Array
}

/**
 * `from`: loads and gaps at the start, as `lockedLoads` would have them: bolts tight from an earlier visit hold, bolts run down by hand touch without load (gap 0),
 * loose ones have no end of gap. `shares` rise to 1.
 */
export function chainOf(
  compliance: readonly number[][],
  bolts: readonly Bolt[],
  shares: readonly number[],
  from: { loads: ArrayLike<number>; gaps: ArrayLike<number> },
): Chain {
  const count = bolts.length
  const start: Stand = {
    holds: new Uint8Array(count),
    loads: Float64Array.from(from.loads),
    gaps: Float64Array.from(from.gaps),
    table: Float64Array.from(
      compliance.flatMap((row, i) => row.slice(0, i + 1).map((c, j) => (i === j ? c + bolts[i]!.compliance : c))),
    ),
  }
  const column = new Float64Array(count)
  for (let j = 0; j < count; j++) if (start.loads[j]! > 0) pivot(start, j, column)

  const targets = bolts.map(({ target }) => target)
  const afterFirst = new Map<number, Stand>()
  const work = copyOf(start)
  const first = (bolt: number): Stand => {
    const kept = afterFirst.get(bolt)
    if (kept !== undefined) return kept
    const stand = copyOf(start)
    drive(stand, bolt, shares[0]! * targets[bolt]!, column)
    afterFirst.set(bolt, stand)
    return stand
  }
  return {
    loadsAfter(sequence) {
      put(first(sequence[0]!), work)
      for (let p = 0; p < shares.length; p++)
        for (let k = p === 0 ? 1 : 0; k < sequence.length; k++)
          drive(work, sequence[k]!, shares[p]! * targets[sequence[k]!]!, column)
      return work.loads
    },
  }
}

/** Turns a bolt up to a load; one that holds it already stays as it is. `column` is room to work in. */
function drive(stand: Stand, bolt: number, load: number, column: Float64Array): void {
  const { holds, loads, gaps } = stand
  const count = holds.length
  if (loads[bolt]! >= load) return
  if (holds[bolt] === 0) {
    gaps[bolt] = 0
    pivot(stand, bolt, column)
  }
  for (;;) {
    readColumn(stand, bolt, column)
    const own = -column[bolt]!
    let way = (load - loads[bolt]!) / own
    let next = -1
    for (let j = 0; j < count; j++) {
      const slope = column[j]!
      if (j === bolt) continue
      // A load falls where its slope is positive (the table of what holds is the negative inverse); a gap closes where it is negative.
      if (holds[j] === 1) {
        if (slope > 0 && loads[j]! < way * slope) {
          way = loads[j]! / slope
          next = j
        }
      } else if (slope < 0 && gaps[j]! < -way * slope) {
        way = -gaps[j]! / slope
        next = j
      }
    }
    for (let j = 0; j < count; j++)
      if (holds[j] === 1) loads[j]! -= way * column[j]!
      else gaps[j]! += way * column[j]!
    if (next === -1) {
      loads[bolt] = load
      return
    }
    loads[next] = 0
    gaps[next] = 0
    pivot(stand, next, column)
  }
}

/** A bolt goes over from hanging loose to holding, or back: its load and its gap change places in the table, which stays symmetric. */
function pivot(stand: Stand, k: number, column: Float64Array): void {
  const { holds, table } = stand
  const count = holds.length
  readColumn(stand, k, column)
  const holding = holds[k] === 1
  // Leaving is entering run backwards: the same sums with the sign of the row turned.
  const inverse = 1 / column[k]!
  for (let i = 0, at = 0; i < count; i++) {
    const factor = column[i]! * inverse
    if (factor !== 0 && i !== k) for (let j = 0; j <= i; j++) table[at + j]! -= factor * column[j]!
    at += i + 1
  }
  const turned = holding ? -inverse : inverse
  const row = (k * (k + 1)) / 2
  for (let j = 0; j < k; j++) table[row + j] = column[j]! * turned
  for (let i = k + 1; i < count; i++) table[(i * (i + 1)) / 2 + k] = column[i]! * turned
  table[row + k] = -inverse
  holds[k] = holding ? 0 : 1
}

function readColumn({ table }: Stand, k: number, column: Float64Array): void {
  const row = (k * (k + 1)) / 2
  for (let j = 0; j <= k; j++) column[j] = table[row + j]!
  for (let i = k + 1, at = row + k + 1 + k; i < column.length; i++) {
    column[i] = table[at]!
    at += i + 1
  }
}

function copyOf({ holds, loads, gaps, table }: Stand): Stand {
  return { holds: holds.slice(), loads: loads.slice(), gaps: gaps.slice(), table: table.slice() }
}

function put(from: Stand, into: Stand): void {
  into.holds.set(from.holds)
  into.loads.set(from.loads)
  into.gaps.set(from.gaps)
  into.table.set(from.table)
}
