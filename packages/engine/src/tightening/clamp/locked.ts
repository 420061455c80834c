/**
 * Loads of bolts whose nuts stand still on a cover that gives. With M the compliance of cover and bolts together, F the loads and u how far each nut has come:
 * a bolt that holds has (M·F) = u; one that hangs loose has F = 0 and (M·F) ≥ u. A bolt never pushes. One answer exists, since M is positive definite.
 */
import { must } from '../../must.ts'

export type Locked = {
  /** Compliance of cover and bolts, mm/N: C with the bolts' own on the diagonal. */
  matrix: readonly number[][]
  /** How far each nut has come, mm, from where it touches the cover that nothing holds yet; null: the bolt is not there yet, or its nut was never run down. */
  travel: readonly (number | null)[]
  /** A bolt that the wrench holds at a load, N. */
  driven?: { bolt: number; load: number }
}

/** Loads in N. `guess`: bolts that probably hold. */
export function lockedLoads({ matrix, travel, driven }: Locked, guess?: Uint8Array): Float64Array {
  const count = travel.length
  const free = (j: number) => travel[j] !== null && j !== driven?.bolt
  const push = Float64Array.from(
    travel,
    (u, j) => (driven === undefined ? 0 : matrix[j]![driven.bolt]! * driven.load) - (u ?? 0),
  )
  const holds = Uint8Array.from({ length: count }, (_, j) => (free(j) && (guess?.[j] ?? 1) ? 1 : 0))
  let fewest = Infinity
  let patience = 3
  for (let round = 0; round < 2 ** 20; round++) {
    const loads = solved(matrix, push, holds)
    const wrong: number[] = []
    for (let j = 0; j < count; j++) {
      if (!free(j)) continue
      const gap = push[j]! + loads.reduce((sum, load, k) => sum + matrix[j]![k]! * load, 0)
      if (holds[j] ? loads[j]! < 0 : gap < -1e-15) wrong.push(j)
    }
    if (wrong.length === 0) {
      if (driven !== undefined) loads[driven.bolt] = driven.load
      return loads
    }
    // All at once while that makes fewer wrong; else the last alone (Murty's rule), which always comes to an end.
    if (wrong.length < fewest) {
      fewest = wrong.length
      patience = 3
    } else patience--
    for (const j of patience > 0 ? wrong : wrong.slice(-1)) holds[j] = holds[j] ? 0 : 1
  }
  must(false, 'lockedLoads: no end', { count })
}

/** Loads of the bolts that hold, from M·F = −push over them, by Cholesky. */
function solved(matrix: readonly number[][], push: Float64Array, holds: Uint8Array): Float64Array {
  const active = [...holds.keys()].filter((j) => holds[j] === 1)
  const lower: number[][] = []
  const x: number[] = []
  active.forEach((j, a) => {
    const row: number[] = []
    for (let b = 0; b <= a; b++) {
      let sum = matrix[j]![active[b]!]!
      for (let k = 0; k < b; k++) sum -= row[k]! * (b === a ? row : lower[b]!)[k]!
      row.push(b === a ? Math.sqrt(sum) : sum / lower[b]![b]!)
    }
    lower.push(row)
    x.push((-push[j]! - row.slice(0, a).reduce((sum, value, k) => sum + value * x[k]!, 0)) / row[a]!)
  })
  for (let a = active.length - 1; a >= 0; a--) {
    x[a]! /= lower[a]![a]!
    for (let k = 0; k < a; k++) x[k]! -= lower[a]![k]! * x[a]!
  }
  const loads = new Float64Array(holds.length)
  active.forEach((j, a) => {
    loads[j] = x[a]!
  })
  return loads
}
