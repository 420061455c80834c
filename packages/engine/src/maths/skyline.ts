import { must } from '../must.ts'

/**
 * A symmetric positive definite matrix, lower half, each row kept from its first entry that is not zero up to the diagonal. Row i begins at column `first[i]`; its
 * entries stand in `values` from `start[i]` on.
 */
export type Skyline = { size: number; first: Int32Array; start: Int32Array; values: Float64Array }

/** An empty skyline whose row i reaches back to column `first[i]`. */
export function skylineOf(first: Int32Array): Skyline {
  const size = first.length
  const start = new Int32Array(size + 1)
  for (let i = 0; i < size; i++) start[i + 1] = start[i]! + i - first[i]! + 1
  return { size, first, start, values: new Float64Array(start[size]!) }
}

/** Where entry (i, j), j ≤ i within the row, stands in `values`. */
export function placeIn({ first, start }: Skyline, i: number, j: number): number {
  return start[i]! + j - first[i]!
}

/**
 * Cholesky factor L of A = L·Lᵀ in a skyline of the same shape. What lies outside the skyline of A is zero in L too. A matrix that is not positive definite is a bug of
 * the caller.
 */
export function factored(matrix: Skyline): Skyline {
  const factor = factoredIfDefinite(matrix)
  must(factor !== null, 'factored: the matrix is not positive definite', { size: matrix.size })
  return factor
}

/** The same; null where the matrix is not positive definite, or so barely that rounding hides it. */
export function factoredIfDefinite(matrix: Skyline): Skyline | null {
  const { size, first, start } = matrix
  const values = matrix.values.slice()
  for (let i = 0; i < size; i++) {
    const from = first[i]!
    const row = start[i]! - from
    for (let j = from; j < i; j++) {
      const other = start[j]! - first[j]!
      const low = Math.max(from, first[j]!)
      const sum = values[row + j]! - dot(values, row + low, other + low, j - low)
      values[row + j] = sum / values[other + j]!
    }
    const square = values[row + i]! - dot(values, row + from, row + from, i - from)
    if (!(square > 0)) return null
    values[row + i] = Math.sqrt(square)
  }
  return { size, first, start, values }
}

/** Solves L·Lᵀ·x = b in place. */
export function solveInPlace({ size, first, start, values }: Skyline, b: Float64Array): Float64Array {
  for (let i = 0; i < size; i++) {
    const row = start[i]! - first[i]!
    let sum = b[i]!
    for (let j = first[i]!; j < i; j++) sum -= values[row + j]! * b[j]!
    b[i] = sum / values[row + i]!
  }
  for (let i = size - 1; i >= 0; i--) {
    const row = start[i]! - first[i]!
    const x = b[i]! / values[row + i]!
    b[i] = x
    for (let j = first[i]!; j < i; j++) b[j] = b[j]! - values[row + j]! * x
  }
  return b
}

/** Four sums side by side: the processor does not wait for the one before. */
function dot(values: Float64Array, a: number, b: number, length: number): number {
  let [s0, s1, s2, s3] = [0, 0, 0, 0]
  let k = 0
  for (; k + 3 < length; k += 4) {
    s0 += values[a + k]! * values[b + k]!
    s1 += values[a + k + 1]! * values[b + k + 1]!
    s2 += values[a + k + 2]! * values[b + k + 2]!
    s3 += values[a + k + 3]! * values[b + k + 3]!
  }
  for (; k < length; k++) s0 += values[a + k]! * values[b + k]!
  return s0 + s1 + (s2 + s3)
}
