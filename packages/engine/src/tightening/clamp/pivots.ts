/**
 * Where a walk from load to load stands, and how the loads of the bolts that hold and the gaps of those that do not move with each other: a symmetric table that goes with every
 * change of who holds, by a principal pivot.
 * @source principal pivoting for linear complementarity: Cottle, Pang and Stone, The Linear Complementarity Problem, sections 2.3 and 4.2
 */

/** All is filled up with zeros to a multiple of four bolts, since four rows and four columns are worked on at once. */
export type Stand = {
  /** 1 for a bolt that holds, −1 for one that does not. */
  sign: Float64Array
  /** The load of a bolt that holds (N), or else its gap (mm; without end: not there). */
  level: Float64Array
  /** Row after row, each as long as `sign`. Of its blocks of four by four only those on and below the diagonal are kept. */
  table: Float64Array
  /**
   * The bolt whose pivot the table does not have yet (−1: none), and its column before it. Two pivots go into the table together: it is read and written half as often,
   * and a bolt that goes over and comes straight back never gets there.
   */
  late: number
  before: Float64Array
}

/** No bolt holds yet, all touch. `matrix`: compliance of cover and bolts, mm/N. */
export function standAt(matrix: readonly (readonly number[])[]): Stand {
  const count = matrix.length
  const stride = 4 * Math.ceil(count / 4)
  const table = new Float64Array(stride * stride)
  for (let i = 0; i < count; i++) table.set(matrix[i]!, i * stride)
  const sign = new Float64Array(stride).fill(-1, 0, count)
  return { sign, level: new Float64Array(stride), table, late: -1, before: new Float64Array(stride) }
}

export function copyOf({ sign, level, table, late, before }: Stand): Stand {
  return { sign: sign.slice(), level: level.slice(), table: table.slice(), late, before: before.slice() }
}

export function put(from: Stand, into: Stand): void {
  into.sign.set(from.sign)
  into.level.set(from.level)
  into.table.set(from.table)
  into.late = from.late
  into.before.set(from.before)
}

/** Column k: by how much the loads of the bolts that hold fall and the gaps of the others open, for 1 N on a loose k, or when the nut of a k that holds comes 1 mm on. */
export function readColumn({ sign, table, late, before }: Stand, k: number, column: Float64Array): void {
  const stride = sign.length
  if (late === k) {
    const turned = sign[k]! / before[k]!
    for (let j = 0; j < stride; j++) column[j] = turned * before[j]!
    column[k] = -1 / before[k]!
    return
  }
  // Along the row to the end of the block on the diagonal, and down from there.
  const end = (k & -4) + 4
  for (let j = 0, at = k * stride; j < end; j += 4, at += 4) {
    column[j] = table[at]!
    column[j + 1] = table[at + 1]!
    column[j + 2] = table[at + 2]!
    column[j + 3] = table[at + 3]!
  }
  for (let i = end, at = end * stride + k; i < stride; i += 4, at += 4 * stride) {
    column[i] = table[at]!
    column[i + 1] = table[at + stride]!
    column[i + 2] = table[at + 2 * stride]!
    column[i + 3] = table[at + 3 * stride]!
  }
  if (late !== -1) carry(column, late, before, sign[late]!)
}

/** Brings a column over the pivot of another bolt k, whose own column before it is `own`. `sign` of k after it. */
export function carry(column: Float64Array, k: number, own: Float64Array, sign: number): void {
  const stride = column.length
  const share = column[k]! / own[k]!
  for (let j = 0; j < stride; j += 4) {
    column[j]! -= share * own[j]!
    column[j + 1]! -= share * own[j + 1]!
    column[j + 2]! -= share * own[j + 2]!
    column[j + 3]! -= share * own[j + 3]!
  }
  // Leaving is entering run backwards: the same sums with the sign of the row turned.
  column[k] = sign * share
}

/**
 * Bolt k goes over from hanging loose to holding, or back: its load and its gap change places. `column`: as `readColumn` gives it. The stand keeps that array and gives back another
 * to work in.
 */
export function pivot(stand: Stand, k: number, column: Float64Array): Float64Array {
  const { sign, late, before } = stand
  sign[k] = -sign[k]!
  if (late === -1) {
    stand.late = k
    stand.before = column
    return before
  }
  stand.late = -1
  if (late !== k) putTwo(stand, late, before, k, column)
  return column
}

/** Puts two pivots into the table, of bolt a with its column c and then of bolt b with its column d after that of a. */
function putTwo({ sign, table }: Stand, a: number, c: Float64Array, b: number, d: Float64Array): void {
  const stride = sign.length
  const byA = 1 / c[a]!
  const byB = 1 / d[b]!
  const signA = sign[a]!
  const signB = sign[b]!
  const corner = d[a]!
  // Nothing is done more often. Rows and columns of the two come out wrong and are written over: the columns block by block, the rows below.
  for (let i = 0; i < stride; i += 4) {
    const f0 = c[i]! * byA
    const f1 = c[i + 1]! * byA
    const f2 = c[i + 2]! * byA
    const f3 = c[i + 3]! * byA
    const g0 = d[i]! * byB
    const g1 = d[i + 1]! * byB
    const g2 = d[i + 2]! * byB
    const g3 = d[i + 3]! * byB
    const start = i * stride
    for (let j = 0; j <= i; j += 4) {
      const c0 = c[j]!
      const c1 = c[j + 1]!
      const c2 = c[j + 2]!
      const c3 = c[j + 3]!
      const d0 = d[j]!
      const d1 = d[j + 1]!
      const d2 = d[j + 2]!
      const d3 = d[j + 3]!
      const at0 = start + j
      const at1 = at0 + stride
      const at2 = at1 + stride
      const at3 = at2 + stride
      table[at0]! -= f0 * c0 + g0 * d0
      table[at0 + 1]! -= f0 * c1 + g0 * d1
      table[at0 + 2]! -= f0 * c2 + g0 * d2
      table[at0 + 3]! -= f0 * c3 + g0 * d3
      table[at1]! -= f1 * c0 + g1 * d0
      table[at1 + 1]! -= f1 * c1 + g1 * d1
      table[at1 + 2]! -= f1 * c2 + g1 * d2
      table[at1 + 3]! -= f1 * c3 + g1 * d3
      table[at2]! -= f2 * c0 + g2 * d0
      table[at2 + 1]! -= f2 * c1 + g2 * d1
      table[at2 + 2]! -= f2 * c2 + g2 * d2
      table[at2 + 3]! -= f2 * c3 + g2 * d3
      table[at3]! -= f3 * c0 + g3 * d0
      table[at3 + 1]! -= f3 * c1 + g3 * d1
      table[at3 + 2]! -= f3 * c2 + g3 * d2
      table[at3 + 3]! -= f3 * c3 + g3 * d3
    }
    const atA = start + a
    table[atA] = signA * f0 - corner * g0
    table[atA + stride] = signA * f1 - corner * g1
    table[atA + 2 * stride] = signA * f2 - corner * g2
    table[atA + 3 * stride] = signA * f3 - corner * g3
    const atB = start + b
    table[atB] = signB * g0
    table[atB + stride] = signB * g1
    table[atB + 2 * stride] = signB * g2
    table[atB + 3 * stride] = signB * g3
  }
  const ofA = signA * byA
  const lessA = corner * byB
  for (let j = 0, at = a * stride; j <= a; j += 4, at += 4) {
    table[at] = ofA * c[j]! - lessA * d[j]!
    table[at + 1] = ofA * c[j + 1]! - lessA * d[j + 1]!
    table[at + 2] = ofA * c[j + 2]! - lessA * d[j + 2]!
    table[at + 3] = ofA * c[j + 3]! - lessA * d[j + 3]!
  }
  const ofB = signB * byB
  for (let j = 0, at = b * stride; j <= b; j += 4, at += 4) {
    table[at] = ofB * d[j]!
    table[at + 1] = ofB * d[j + 1]!
    table[at + 2] = ofB * d[j + 2]!
    table[at + 3] = ofB * d[j + 3]!
  }
  table[a * stride + a] = -byA - corner * lessA
  table[b * stride + b] = -byB
  table[a * stride + b] = ofB * corner
  table[b * stride + a] = ofB * corner
}
