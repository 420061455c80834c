/** One tray made ready for questions: pairs judged, what is tied found, and the fewest holes that stay empty. */
import { type AssignmentTask, assignablePairs } from '../maths/assignment.ts'
import { type Clash, Coupling, clashesWithinKinds } from './coupling.ts'
import { type Judged, judgePair } from './pair.ts'
import { FOUND_EMPTY, FOUND_UNKNOWN, type Problem } from './problem.ts'
import { type Placement, pairsOf, Search } from './search.ts'
import type { Tools } from './solver.ts'

export type Tray = {
  problem: Problem
  /** Kinds and, last, the bin of the holes left empty. */
  bins: number
  /** By pair number; the empty bin's are missing. */
  judged: Judged[]
  /** Pairs that their own readings, rank lines and trials leave. */
  possible: Uint8Array
  coupling: Coupling | null
  clashes: Clash[]
  search: Search
}

/** `known`: a tray of nearly the same problem, whose judged pairs are taken over where hole, kind and trials are the same. */
export function openTray(problem: Problem, tools: Tools, known?: Tray): Tray {
  const { kinds } = problem
  const bins = kinds.length + 1
  const judged = judgeAll(problem, known)
  const possible = new Uint8Array(judged.length)
  for (let pair = 0; pair < possible.length; pair++)
    if (pair % bins < kinds.length && judged[pair]!.verdict !== 'cannot' && kinds[pair % bins]!.count > 0)
      possible[pair] = 1
  const found = new Coupling(problem, possible)
  if (found.ties)
    for (let pair = 0; pair < possible.length; pair++)
      if (possible[pair] && found.binds(pair) && found.clash([pair])) possible[pair] = 0
  const left = Array.from(possible.keys()).filter((pair) => possible[pair])
  const coupling = found.ties && found.clash(left) ? found : null
  const clashes = coupling ? clashesWithinKinds(problem, possible, coupling) : []
  return { problem, bins, judged, possible, coupling, clashes, search: new Search(coupling, clashes, tools) }
}

/** Every hole and kind alone, by pair number. */
export function judgeAll({ holes, kinds, trials }: Problem, known?: Tray): Judged[] {
  const bins = kinds.length + 1
  const judged: Judged[] = new Array(holes.length * bins)
  const before = known && known.problem.trials.length === trials.length ? known : undefined
  for (const [h, hole] of holes.entries())
    for (const [k, kind] of kinds.entries()) {
      const pair = h * bins + k
      if (before?.problem.holes[h] === hole && before.problem.kinds[k] === kind) judged[pair] = before.judged[pair]!
      else {
        const own = trials.filter((trial) => trial.hole === h && trial.kind === k)
        judged[pair] = judgePair(
          hole,
          kind,
          own.map(({ spans }) => spans),
        )
      }
    }
  return judged
}

/** The task with this cost on every possible pair, and at most `empty` holes without a bolt at `emptyCost` each. */
export function taskOf(tray: Tray, empty: number, costOf: (pair: number) => number, emptyCost = 0): AssignmentTask {
  const { problem, bins, possible } = tray
  const cost = new Float64Array(possible.length)
  for (let pair = 0; pair < cost.length; pair++) {
    if (pair % bins === bins - 1) cost[pair] = empty > 0 ? emptyCost + costOf(pair) : Number.POSITIVE_INFINITY
    else cost[pair] = possible[pair] ? costOf(pair) : Number.POSITIVE_INFINITY
  }
  return { items: problem.holes.length, bins, cost, capacity: [...problem.kinds.map(({ count }) => count), empty] }
}

/** 1 where the pair is not as found, else 0. What was found in a hole may be unknown: then nothing there is a change. */
export function changeOf({ problem, bins }: Tray, pair: number): number {
  const found = problem.holes[Math.floor(pair / bins)]!.asFound
  if (found === FOUND_UNKNOWN) return 0
  const kind = pair % bins
  return (kind === bins - 1 ? FOUND_EMPTY : kind) === found ? 0 : 1
}

/** A placement with the fewest empty holes. */
export async function fewestEmpty(tray: Tray): Promise<{ empty: number; placement: Placement } | null> {
  const full = await tray.search.cheapest(
    taskOf(tray, 0, () => 0),
    true,
  )
  if (full) return { empty: 0, placement: full }
  const holes = tray.problem.holes.length
  const placement = await tray.search.cheapest(taskOf(tray, holes, () => 0, 1))
  return placement && { empty: placement.bin.reduce((sum, b) => sum + (b === tray.bins - 1 ? 1 : 0), 0), placement }
}

/** The pairs that stand in at least one placement with no more than `empty` holes empty; the last bin: the hole may be empty. */
export async function mayPairs(tray: Tray, empty: number, witness: Placement): Promise<Uint8Array> {
  const { bins, search } = tray
  const task = taskOf(tray, empty, () => 0)
  const byCounts = assignablePairs(task, witness.bin)
  if (!tray.coupling) return byCounts
  const seen = new Uint8Array(byCounts.length)
  const note = (placement: Placement) => {
    for (const pair of pairsOf(placement, bins)) seen[pair] = 1
  }
  note(witness)
  for (let pair = 0; pair < seen.length; pair++) {
    if (!byCounts[pair] || seen[pair]) continue
    const hole = Math.floor(pair / bins)
    // What has not been seen yet is cheaper, so that each answer shows as many new pairs as it can.
    const cost = task.cost.map((c, other) =>
      Math.floor(other / bins) === hole && other !== pair ? Number.POSITIVE_INFINITY : c + (seen[other] ? 1 : 0),
    )
    const placement = await search.cheapest({ ...task, cost }, true)
    if (placement) note(placement)
  }
  return seen
}
