/** A group of holes that something ties to each other, and what weighing it gives. */
import type { AssignmentTask } from '../maths/assignment.ts'
import type { Clash, Coupling } from './coupling.ts'
import type { Weights } from './weights.ts'

export type GroupTask = {
  task: AssignmentTask
  may: Uint8Array
  weights: Weights
  coupling: Coupling | null
  clashes: Clash[]
  holes: number[]
  /** A placement that is known to be complete. */
  witness: Int32Array
}

/** For each target: ln of the summed weight of the group's placements, and each pair's share of it. */
export type Group = { holes: number[]; logSum: Float64Array; share: Float64Array[]; error: number; sampled: boolean }

/** The bins that stand open to a hole. */
export function binsOf(may: Uint8Array, hole: number, bins: number): number[] {
  const open: number[] = []
  for (let b = 0; b < bins; b++) if (may[hole * bins + b]) open.push(b)
  return open
}

export function logWeight({ weights }: GroupTask, pair: number, target: number): number {
  return -weights.own[pair]! - weights.habit[target]![pair]!
}
