/**
 * How likely each pair is, over all complete placements.
 *
 * Holes that nothing ties to each other are weighed apart. Within a group: where counts alone tie it, a forward and backward sum over what
 * is left of each kind (exact); where lengths, rank lines or trials tie it, every placement is listed (exact); where either would be too
 * much, placements are drawn and weighed (importance sampling), and the standard error is said.
 */
import { type AssignmentTask, assignablePairs, cheapestAssignment } from '../maths/assignment.ts'
import { seededRandom } from '../maths/random.ts'
import type { Clash, Coupling } from './coupling.ts'
import { Stopped, type Tools } from './solver.ts'
import type { Weights } from './weights.ts'

export type Likelihood = {
  /** By pair number; the last bin of a hole is "left empty". The bins of a hole add up to 1. */
  chance: Float64Array
  method: 'exact' | 'sampled'
  /** Greatest standard error of any chance; 0 where exact. */
  standardError: number
}

/** For each target: ln of the summed weight of the group's placements, and each pair's share of it. */
type Group = { holes: number[]; logSum: Float64Array; share: Float64Array[]; error: number; sampled: boolean }

const MOST_STATES = 60_000
const MOST_LISTED = 10_000
const MOST_VISITS = 50_000
const DRAWS = 500

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
  const groups = groupsOf(task, may, coupling, links).map((holes) => {
    if (tools.stop?.aborted) throw new Stopped()
    return weighGroup({ task, may, weights, coupling, clashes, holes, witness })
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
    if (users.length > capacity[b]! || (b < bins - 1 && coupling?.isTiedKind(b)))
      for (const user of users) join(user, users[0]!)
  }
  if (coupling) for (const [a, b] of links) join(a, b)
  const groups = new Map<number, number[]>()
  for (let hole = 0; hole < items; hole++) groups.set(root(hole), [...(groups.get(root(hole)) ?? []), hole])
  return [...groups.values()]
}

function usersOf(may: Uint8Array, items: number, bins: number, bin: number): number[] {
  return Array.from({ length: items }, (_, hole) => hole).filter((hole) => may[hole * bins + bin])
}

type GroupTask = {
  task: AssignmentTask
  may: Uint8Array
  weights: Weights
  coupling: Coupling | null
  clashes: Clash[]
  holes: number[]
  /** A placement that is known to be complete. */
  witness: Int32Array
}

function weighGroup(group: GroupTask): Group {
  const { task, may, coupling, holes } = group
  const bound =
    coupling &&
    holes.some((hole) =>
      Array.from({ length: task.bins }, (_, b) => hole * task.bins + b).some(
        (pair) => may[pair] && coupling.binds(pair),
      ),
    )
  return (bound ? byListing(group) : byCounting(group)) ?? bySampling(group)
}

function logWeight({ weights }: GroupTask, pair: number, target: number): number {
  return -weights.own[pair]! - weights.habit[target]![pair]!
}

/** The kinds that may run short within the group, with how many of them there are. */
function scarceBins({ task, may, holes }: GroupTask): { bin: number; room: number }[] {
  const scarce = []
  for (let bin = 0; bin < task.bins; bin++) {
    const users = holes.filter((hole) => may[hole * task.bins + bin]).length
    if (users > task.capacity[bin]!) scarce.push({ bin, room: task.capacity[bin]! })
  }
  return scarce
}

/** null where there are too many states. */
function byCounting(group: GroupTask): Group | null {
  const { task, may, weights, holes } = group
  const { bins } = task
  const scarce = scarceBins(group)
  // A state is what has been used of each scarce kind, written as one number.
  const place = new Float64Array(bins).fill(0)
  const digit = new Map<number, { radix: number; room: number }>()
  let radix = 1
  for (const { bin, room } of scarce) {
    place[bin] = radix
    digit.set(bin, { radix, room })
    radix *= room + 1
  }
  if (radix > Number.MAX_SAFE_INTEGER) return null
  const layers: { key: number[]; index: Map<number, number> }[] = [{ key: [0], index: new Map([[0, 0]]) }]
  const steps: { from: number; to: number; pair: number }[][] = []
  let states = 1
  for (const hole of holes) {
    const here = layers[layers.length - 1]!
    const next = { key: [] as number[], index: new Map<number, number>() }
    const out: { from: number; to: number; pair: number }[] = []
    here.key.forEach((key, from) => {
      for (let b = 0; b < bins; b++) {
        if (!may[hole * bins + b]) continue
        const limit = digit.get(b)
        if (limit && Math.floor(key / limit.radix) % (limit.room + 1) >= limit.room) continue
        const then = key + place[b]!
        let to = next.index.get(then)
        if (to === undefined) {
          to = next.key.length
          next.key.push(then)
          next.index.set(then, to)
        }
        out.push({ from, to, pair: hole * bins + b })
      }
    })
    states += next.key.length
    if (states > MOST_STATES) return null
    layers.push(next)
    steps.push(out)
  }
  const logSum = new Float64Array(weights.targets.length)
  const share = weights.targets.map((_, target) => {
    const found = sumLayers(group, target, layers, steps)
    logSum[target] = found.logSum
    return found.share
  })
  return { holes, logSum, share, error: 0, sampled: false }
}

function sumLayers(
  group: GroupTask,
  target: number,
  layers: { key: number[] }[],
  steps: { from: number; to: number; pair: number }[][],
) {
  const share = new Float64Array(group.may.length)
  const after = layers.map(({ key }) => new Float64Array(key.length))
  after[layers.length - 1]!.fill(1)
  let logSum = 0
  const factors = steps.map((out) => {
    const logs = out.map(({ pair }) => logWeight(group, pair, target))
    const top = Math.max(...logs)
    logSum += top
    return logs.map((log) => Math.exp(log - top))
  })
  for (let i = steps.length - 1; i >= 0; i--) {
    const now = after[i]!
    steps[i]!.forEach(({ from, to }, s) => {
      now[from]! += factors[i]![s]! * after[i + 1]![to]!
    })
    logSum += rescale(now)
  }
  let before = new Float64Array([1])
  steps.forEach((out, i) => {
    const next = new Float64Array(layers[i + 1]!.key.length)
    let all = 0
    out.forEach(({ from, to, pair }, s) => {
      const reach = before[from]! * factors[i]![s]!
      next[to]! += reach
      share[pair]! += reach * after[i + 1]![to]!
      all += reach * after[i + 1]![to]!
    })
    const hole = Math.floor(out[0]!.pair / group.task.bins)
    for (let b = 0; b < group.task.bins; b++) share[hole * group.task.bins + b]! /= all
    rescale(next)
    before = next
  })
  return { share, logSum }
}

/** Divides by the greatest, so that long products stay in range; returns its ln. */
function rescale(values: Float64Array): number {
  const top = Math.max(...values)
  for (let i = 0; i < values.length; i++) values[i]! /= top
  return Math.log(top)
}

/** null where there are too many placements. */
function byListing(group: GroupTask): Group | null {
  const { task, may, coupling, clashes, holes } = group
  const { bins } = task
  const room = Float64Array.from(task.capacity)
  const chosen = new Chosen(task.items, bins)
  const listed: number[][] = []
  let visits = 0
  const go = (at: number): boolean => {
    if (++visits > MOST_VISITS) return false
    if (at === holes.length) {
      const clash = coupling!.clash(chosen.pairs)
      if (clash) clashes.push(clash)
      else listed.push(chosen.pairs.slice())
      return listed.length <= MOST_LISTED
    }
    for (let b = 0; b < bins; b++) {
      const pair = holes[at]! * bins + b
      if (!may[pair] || room[b]! < 1) continue
      chosen.push(pair)
      room[b]!--
      const fine = chosen.breaks(clashes) || go(at + 1)
      room[b]!++
      chosen.pop()
      if (!fine) return false
    }
    return true
  }
  if (!go(0)) return null
  return summed(
    group,
    listed,
    listed.map(() => 0),
  )
}

/** Pairs chosen so far, one for each hole. */
class Chosen {
  readonly pairs: number[] = []
  private readonly at: Int32Array
  private readonly bins: number

  constructor(items: number, bins: number) {
    this.at = new Int32Array(items).fill(-1)
    this.bins = bins
  }

  push(pair: number): void {
    this.pairs.push(pair)
    this.at[Math.floor(pair / this.bins)] = pair
  }

  pop(): void {
    this.at[Math.floor(this.pairs.pop()! / this.bins)] = -1
  }

  /** Whether the newest pair completes a known clash. */
  breaks(clashes: Clash[]): boolean {
    const newest = this.pairs[this.pairs.length - 1]!
    for (const clash of clashes) {
      if (!clash.includes(newest)) continue
      let whole = true
      for (const pair of clash) if (this.at[Math.floor(pair / this.bins)] !== pair) whole = false
      if (whole) return true
    }
    return false
  }
}

/** Sums over listed placements; `logDraw`: ln of how likely each was to be drawn (0 where all are listed once). */
function summed(group: GroupTask, listed: number[][], logDraw: number[], draws = 0): Group {
  const { weights, holes, may } = group
  const logSum = new Float64Array(weights.targets.length)
  let error = 0
  const share = weights.targets.map((_, target) => {
    const logs = listed.map((pairs, i) =>
      pairs.reduce((sum, pair) => sum + logWeight(group, pair, target), -logDraw[i]!),
    )
    const top = Math.max(...logs)
    const shares = new Float64Array(may.length)
    const scaled = logs.map((log) => Math.exp(log - top))
    const all = scaled.reduce((a, b) => a + b, 0)
    listed.forEach((pairs, i) => {
      for (const pair of pairs) shares[pair]! += scaled[i]! / all
    })
    logSum[target] = top + Math.log(draws > 0 ? all / draws : all)
    if (draws > 0) {
      // Standard error of a ratio of means, p(1 − p) at its worst, over the draws that count (A. Kong, 1992).
      const effective = all ** 2 / scaled.reduce((sum, w) => sum + w * w, 0)
      error = Math.max(error, Math.sqrt(Math.max(...Array.from(shares, (p) => p * (1 - p))) / effective))
    }
    return shares
  })
  return { holes, logSum, share, error, sampled: draws > 0 }
}

function bySampling(group: GroupTask): Group {
  const { task, may, coupling, clashes, holes, weights } = group
  const { bins } = task
  const random = seededRandom(holes.length * 7919 + bins)
  const drawn: number[][] = []
  const logDraw: number[] = []
  const small: AssignmentTask = {
    items: holes.length,
    bins,
    cost: new Float64Array(holes.length * bins),
    capacity: task.capacity,
  }
  holes.forEach((hole, i) => {
    for (let b = 0; b < bins; b++) small.cost[i * bins + b] = may[hole * bins + b] ? 0 : Number.POSITIVE_INFINITY
  })
  const pull = holes.map((hole) =>
    Array.from({ length: bins }, (_, b) =>
      weights.targets.reduce((sum, p, t) => sum + p * Math.exp(logWeight(group, hole * bins + b, t)), 0),
    ),
  )
  let draws = 0
  for (; draws < DRAWS; draws++) {
    const cost = small.cost.slice()
    let start = cheapestAssignment({ ...small, cost })
    const chosen = new Chosen(task.items, bins)
    let log = 0
    for (let i = 0; start && i < holes.length; i++) {
      const open = assignablePairs({ ...small, cost }, start.bin)
      const choice = Array.from({ length: bins }, (_, b) => b).filter((b) => {
        if (!open[i * bins + b]) return false
        if (!coupling) return true
        chosen.push(holes[i]! * bins + b)
        const breaks = chosen.breaks(clashes)
        chosen.pop()
        return !breaks
      })
      const total = choice.reduce((sum, b) => sum + pull[i]![b]!, 0)
      let left = random() * total
      const bin =
        choice.find((b) => {
          left -= pull[i]![b]!
          return left <= 0
        }) ?? choice[choice.length - 1]
      if (bin === undefined) {
        start = null
        break
      }
      log += Math.log(pull[i]![bin]! / total)
      chosen.push(holes[i]! * bins + bin)
      for (let b = 0; b < bins; b++) if (b !== bin) cost[i * bins + b] = Number.POSITIVE_INFINITY
      if (start.bin[i] !== bin) start = cheapestAssignment({ ...small, cost })
    }
    if (!start) continue
    const clash = coupling?.clash(chosen.pairs)
    if (clash) clashes.push(clash)
    else {
      drawn.push(chosen.pairs)
      logDraw.push(log)
    }
  }
  if (drawn.length > 0) return summed(group, drawn, logDraw, draws)
  // Nothing drawn was possible: one placement is known, and that is all that can be said.
  const known = holes.map((hole) => hole * bins + group.witness[hole]!)
  return { ...summed(group, [known], [0], 1), error: 0.5 }
}
