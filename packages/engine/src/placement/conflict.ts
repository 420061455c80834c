/** Why not every hole can be filled: the smallest set of holes that clash, and which of the things stated would have to be wrong. */
import type { AssignmentTask } from '../maths/assignment.ts'
import type { Search } from './search.ts'

/**
 * A set of holes that cannot all be filled, while any of them left out the rest can (deletion filter; J. W. Chinneck and E. W. Dravnieks,
 * 1991). null when all of `among` can be filled. `task` with its own capacities; holes outside the set stay empty.
 */
export async function irreducibleHoles(
  search: Search,
  task: AssignmentTask,
  among: number[],
): Promise<number[] | null> {
  if (await fillable(search, task, among)) return null
  const alone = await firstThat(among, async (hole) => !(await fillable(search, task, [hole])))
  if (alone !== undefined) return [alone]
  let set = among
  for (const hole of among) {
    const fewer = set.filter((other) => other !== hole)
    if (!(await fillable(search, task, fewer))) set = fewer
  }
  return set
}

async function firstThat(holes: number[], test: (hole: number) => Promise<boolean>): Promise<number | undefined> {
  for (const hole of holes) if (await test(hole)) return hole
  return undefined
}

/** Whether all of these holes can be filled at once, the others left empty. */
async function fillable(search: Search, task: AssignmentTask, holes: number[]): Promise<boolean> {
  const { items, bins } = task
  const empty = bins - 1
  const wanted = new Set(holes)
  const cost = new Float64Array(task.cost.length).fill(Number.POSITIVE_INFINITY)
  for (let hole = 0; hole < items; hole++) {
    if (!wanted.has(hole)) cost[hole * bins + empty] = 0
    else
      for (let b = 0; b < empty; b++)
        if (task.cost[hole * bins + b]! < Number.POSITIVE_INFINITY) cost[hole * bins + b] = 0
  }
  const capacity = Float64Array.from(task.capacity)
  capacity[empty] = items
  return (await search.cheapest({ items, bins, cost, capacity }, true)) !== null
}
