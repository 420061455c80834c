/**
 * How likely each pair is, over all complete placements.
 *
 * Holes that nothing ties to each other are weighed apart. Within a group: where counts alone tie it, a forward and backward sum over what
 * is left of each kind (exact); where lengths, rank lines or trials tie it, every placement is listed (exact); where either would be too
 * much, placements are drawn and weighed (importance sampling), and the standard error is said.
 */
import type { AssignmentTask } from '../maths/assignment.ts'
import { byCounting } from './counting.ts'
import type { Clash, Coupling } from './coupling.ts'
import { binsOf, type Group, type GroupTask } from './group.ts'
import { byListing, bySampling } from './listing.ts'
import { Stopped, type Tools } from './solver.ts'
import type { Weights } from './weights.ts'

export type Likelihood = {
  /** By pair number; the last bin of a hole is "left empty". The bins of a hole add up to 1. */
  chance: Float64Array
  method: 'exact' | 'sampled'
  /** Greatest standard error of any chance; 0 where exact. */
  standardError: number
}

/** `may[pair]`: the pairs that stand in at least one complete placement. */
export function likelihood(
  task: AssignmentTask,
  may: Uint8Array,
  weights: Weights,
  coupling: Coupling | null,
  clashes: Clash[],
  links: [number, number][],
  witness: Int32Array,
  tools: Tools,
): Likelihood {
  const { items, bins } = task
  const left = withoutSettled(task, may)
  const groups = groupsOf(left, may, coupling, links).map((holes) => {
    if (tools.stop?.aborted) throw new Stopped()
    return weighGroup({ task: left, may, weights, coupling, clashes, holes, witness })
  })
  const targets = weights.targets.length
  const logWeight = weights.targets.map(
    (p, t) => Math.log(p) + groups.reduce((sum, group) => sum + group.logSum[t]!, 0),
  )
  const top = Math.max(...logWeight)
  const scaled = logWeight.map((log) => Math.exp(log - top))
  const all = scaled.reduce((a, b) => a + b, 0)
  const chance = new Float64Array(items * bins)
  for (const { holes, share } of groups)
    for (const hole of holes)
      for (let b = 0; b < bins; b++)
        for (let t = 0; t < targets; t++) chance[hole * bins + b]! += (scaled[t]! / all) * share[t]![hole * bins + b]!
  const sampled = groups.some((group) => group.sampled)
  return {
    chance,
    method: sampled ? 'sampled' : 'exact',
    standardError: Math.max(0, ...groups.map((group) => group.error)),
  }
}

/** The task with the settled holes' bolts taken out of the tray: what the holes in doubt can still share. */
function withoutSettled(task: AssignmentTask, may: Uint8Array): AssignmentTask {
  const capacity = Float64Array.from(task.capacity)
  for (let hole = 0; hole < task.items; hole++) {
    const bins = binsOf(may, hole, task.bins)
    if (bins.length === 1) capacity[bins[0]!]!--
  }
  return { ...task, capacity }
}

/** Holes that share a kind which may run short, or a tie. `links`: pairs of holes tied by rank lines or trials. */
function groupsOf(
  { items, bins, capacity }: AssignmentTask,
  may: Uint8Array,
  coupling: Coupling | null,
  links: [number, number][],
) {
  const group = Int32Array.from({ length: items }, (_, hole) => hole)
  const root = (hole: number): number => {
    while (group[hole] !== hole) hole = group[hole]!
    return hole
  }
  const join = (a: number, b: number) => {
    group[root(a)] = root(b)
  }
  for (let b = 0; b < bins; b++) {
    const users = usersOf(may, items, bins, b)
    const doubtful = users.filter((hole) => binsOf(may, hole, bins).length > 1)
    const tied = b < bins - 1 && coupling?.isTiedKind(b)
    const together = tied ? users : doubtful.length > capacity[b]! ? doubtful : []
    for (const user of together) join(user, together[0]!)
  }
  if (coupling) for (const [a, b] of links) join(a, b)
  const groups = new Map<number, number[]>()
  for (let hole = 0; hole < items; hole++) groups.set(root(hole), [...(groups.get(root(hole)) ?? []), hole])
  return [...groups.values()]
}

function usersOf(may: Uint8Array, items: number, bins: number, bin: number): number[] {
  return Array.from({ length: items }, (_, hole) => hole).filter((hole) => may[hole * bins + bin])
}

function weighGroup(group: GroupTask): Group {
  const { task, may, coupling, holes } = group
  const tied =
    coupling && holes.some((hole) => binsOf(may, hole, task.bins).some((b) => coupling.binds(hole * task.bins + b)))
  return (tied ? byListing(group) : byCounting(group)) ?? bySampling(group)
}
