/**
 * Many orders on one cover, fast. The bed is condensed once; between two changes of which bolts hold, all loads rise and fall straight with the one that the wrench turns, so a turn
 * is a walk from one such change to the next. The table that gives the slopes is carried along by principal pivots instead of being solved anew. `tighten.ts` gives the same loads the slow way.
 * @source principal pivoting for linear complementarity: Cottle, Pang and Stone, The Linear Complementarity Problem, sections 2.3 and 4.2
 */
import type { Bolt } from './tighten.ts'

/**
 * Where a walk stands. `sign`: 1 for a bolt that holds, −1 for one that does not. `level`: its load (N), or else its gap (mm; without end: not there). `table`: the symmetric matrix that says how loads
 * and gaps move with each other, row after row, each row as long as `sign`; what stands above the diagonal is never read. All are filled up with zeros to a multiple of four.
 */
type Stand = { sign: Float64Array; level: Float64Array; table: Float64Array }

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
  const start = standAt(compliance, bolts, from.gaps)
  const column = new Float64Array(start.sign.length)
  for (let j = 0; j < bolts.length; j++) {
    if (!(from.loads[j]! > 0)) continue
    pivot(start, j, column)
    start.level[j] = from.loads[j]!
  }

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
  const loads = new Float64Array(bolts.length)
  return {
    loadsAfter(sequence) {
      put(first(sequence[0]!), work)
      for (let p = 0; p < shares.length; p++)
        for (let k = p === 0 ? 1 : 0; k < sequence.length; k++)
          drive(work, sequence[k]!, shares[p]! * targets[sequence[k]!]!, column)
      for (let j = 0; j < loads.length; j++) loads[j] = loadOf(work, j)
      return loads
    },
  }
}

/** No bolt holds yet. */
function standAt(compliance: readonly number[][], bolts: readonly Bolt[], gaps: ArrayLike<number>): Stand {
  const count = bolts.length
  const stride = 4 * Math.ceil(count / 4)
  const stand: Stand = {
    sign: new Float64Array(stride).fill(-1, 0, count),
    level: new Float64Array(stride),
    table: new Float64Array(stride * stride),
  }
  for (let i = 0; i < count; i++) {
    stand.level[i] = gaps[i]!
    for (let j = 0; j < i; j++) stand.table[i * stride + j] = compliance[i]![j]!
    stand.table[i * stride + i] = compliance[i]![i]! + bolts[i]!.compliance
  }
  return stand
}

function loadOf({ sign, level }: Stand, bolt: number): number {
  return sign[bolt]! > 0 ? level[bolt]! : 0
}

/** Turns a bolt up to a load; one that holds it already stays as it is. `column` is room to work in. */
function drive(stand: Stand, bolt: number, load: number, column: Float64Array): void {
  const { sign, level } = stand
  if (loadOf(stand, bolt) >= load) return
  if (sign[bolt]! < 0) {
    level[bolt] = 0
    pivot(stand, bolt, column)
  }
  for (;;) {
    readColumn(stand, bolt, column)
    let way = (load - level[bolt]!) / -column[bolt]!
    let next = -1
    // A load falls where its slope is positive (the table of what holds is the negative inverse), a gap closes where it is negative; the turned bolt's own load
    // rises. Asked first is what is seldom true.
    for (let j = 0; j < column.length; j++) {
      const slope = column[j]! * sign[j]!
      column[j] = slope
      if (level[j]! < way * slope && slope > 0) {
        way = level[j]! / slope
        next = j
      }
    }
    for (let j = 0; j < column.length; j += 4) {
      level[j]! -= way * column[j]!
      level[j + 1]! -= way * column[j + 1]!
      level[j + 2]! -= way * column[j + 2]!
      level[j + 3]! -= way * column[j + 3]!
    }
    if (next === -1) {
      level[bolt] = load
      return
    }
    level[next] = 0
    pivot(stand, next, column)
  }
}

/** A bolt goes over from hanging loose to holding, or back: its load and its gap change places in the table, which stays symmetric. */
function pivot(stand: Stand, k: number, column: Float64Array): void {
  const { sign, table } = stand
  readColumn(stand, k, column)
  const stride = column.length
  const inverse = 1 / column[k]!
  // Four rows and four columns at once, since nothing is done more often. Row and column k come out wrong and are written below.
  for (let i = 0; i < stride; i += 4) {
    const f0 = column[i]! * inverse
    const f1 = column[i + 1]! * inverse
    const f2 = column[i + 2]! * inverse
    const f3 = column[i + 3]! * inverse
    for (let j = 0; j <= i; j += 4) {
      const c0 = column[j]!
      const c1 = column[j + 1]!
      const c2 = column[j + 2]!
      const c3 = column[j + 3]!
      const at0 = i * stride + j
      const at1 = at0 + stride
      const at2 = at1 + stride
      const at3 = at2 + stride
      table[at0]! -= f0 * c0
      table[at0 + 1]! -= f0 * c1
      table[at0 + 2]! -= f0 * c2
      table[at0 + 3]! -= f0 * c3
      table[at1]! -= f1 * c0
      table[at1 + 1]! -= f1 * c1
      table[at1 + 2]! -= f1 * c2
      table[at1 + 3]! -= f1 * c3
      table[at2]! -= f2 * c0
      table[at2 + 1]! -= f2 * c1
      table[at2 + 2]! -= f2 * c2
      table[at2 + 3]! -= f2 * c3
      table[at3]! -= f3 * c0
      table[at3 + 1]! -= f3 * c1
      table[at3 + 2]! -= f3 * c2
      table[at3 + 3]! -= f3 * c3
    }
  }
  // Leaving is entering run backwards: the same sums with the sign of the row turned.
  const turned = sign[k]! > 0 ? -inverse : inverse
  for (let j = 0; j < k; j++) table[k * stride + j] = column[j]! * turned
  for (let i = k + 1; i < stride; i++) table[i * stride + k] = column[i]! * turned
  table[k * stride + k] = -inverse
  sign[k] = -sign[k]!
}

/** Row k up to the diagonal, and down from there. */
function readColumn({ table }: Stand, k: number, column: Float64Array): void {
  const stride = column.length
  for (let j = 0; j <= k; j++) column[j] = table[k * stride + j]!
  for (let i = k + 1, at = i * stride + k; i < stride; i++, at += stride) column[i] = table[at]!
}

function copyOf({ sign, level, table }: Stand): Stand {
  return { sign: sign.slice(), level: level.slice(), table: table.slice() }
}

function put(from: Stand, into: Stand): void {
  into.sign.set(from.sign)
  into.level.set(from.level)
  into.table.set(from.table)
}
