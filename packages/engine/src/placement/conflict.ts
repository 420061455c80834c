/** Why not every hole can be filled: the smallest set of holes that clash, and which of the things stated would have to be wrong. */
import type { AssignmentTask } from '../maths/assignment.ts'
import type { Search } from './search.ts'

/**
 * A set of holes that cannot all be filled, while any of them left out the rest can (deletion filter; J. W. Chinneck and E. W. Dravnieks,
 * 1991). null when all of `among` can be filled, or when no placement keeps what was stated, filled or not. `task` with its own capacities; holes outside the set stay empty.
 */
export async function irreducibleHoles(
  search: Search,
  task: AssignmentTask,
  among: number[],
): Promise<number[] | null> {
  const { bins } = task
  const partial = await search.cheapest(filling(task, among, 1))
  // Where rank lines or trials contradict each other whatever is filled, no hole is to blame.
  if (!partial) return null
  const short = among.filter((hole) => partial.bin[hole] === bins - 1)
  if (short.length === 0) return null
  for (const hole of among) if (kindsOf(task, hole).length === 0) return [hole]
  // By counts alone the holes that an empty one could take a bolt from are a set that falls short; with ties it may take more holes.
  const near = reachedFrom(task, short[0]!, partial.bin)
  let set = (await fillable(search, task, near)) ? among : near
  for (const hole of set) {
    const fewer = set.filter((other) => other !== hole)
    if (!(await fillable(search, task, fewer))) set = fewer
  }
  return set
}

/** The holes from which a chain of moves leads to the empty one, itself included, in ascending order. */
function reachedFrom(task: AssignmentTask, hole: number, bin: Int32Array): number[] {
  const reached = new Set([hole])
  for (const at of reached)
    for (const kind of kindsOf(task, at)) for (const [other, b] of bin.entries()) if (b === kind) reached.add(other)
  return [...reached].sort((a, b) => a - b)
}

function kindsOf({ bins, cost }: AssignmentTask, hole: number): number[] {
  const kinds: number[] = []
  for (let b = 0; b < bins - 1; b++) if (cost[hole * bins + b]! < Number.POSITIVE_INFINITY) kinds.push(b)
  return kinds
}

/** Whether all of these holes can be filled at once, the others left empty. */
async function fillable(search: Search, task: AssignmentTask, holes: number[]): Promise<boolean> {
  return (await search.cheapest(filling(task, holes, Number.POSITIVE_INFINITY), true)) !== null
}

/** The task of filling these holes and no others; `emptyCost`: of one of them that stays empty. */
function filling(task: AssignmentTask, holes: number[], emptyCost: number): AssignmentTask {
  const { items, bins } = task
  const cost = new Float64Array(task.cost.length).fill(Number.POSITIVE_INFINITY)
  for (let hole = 0; hole < items; hole++) cost[hole * bins + bins - 1] = 0
  for (const hole of holes) {
    cost[hole * bins + bins - 1] = emptyCost
    for (const kind of kindsOf(task, hole)) cost[hole * bins + kind] = 0
  }
  const capacity = Float64Array.from(task.capacity)
  capacity[bins - 1] = items
  return { items, bins, cost, capacity }
}
