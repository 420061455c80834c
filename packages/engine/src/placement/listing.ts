/**
 * Likelihoods in a group that lengths, rank lines or trials tie: every placement is listed, and where that would be too many they are drawn
 * and weighed (importance sampling), with the standard error said.
 */
import { type AssignmentTask, moveItem } from '../maths/assignment.ts'
import { seededRandom } from '../maths/random.ts'
import type { Clash } from './coupling.ts'
import { binsOf, type Group, type GroupTask, logWeight } from './group.ts'

const MOST_LISTED = 10_000
const MOST_VISITS = 50_000
const DRAWS = 500

/** null where there are too many placements. */
export function byListing(group: GroupTask): Group | null {
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
    const open = binsOf(may, holes[at]!, bins)
    const taken = open.length > 1 ? 1 : 0
    for (const b of open) {
      if (room[b]! < taken) continue
      chosen.push(holes[at]! * bins + b)
      room[b]! -= taken
      const fine = chosen.breaks(clashes) || go(at + 1)
      room[b]! += taken
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

/** Placements drawn at random, each weighed by how likely it was to be drawn. */
export function bySampling(group: GroupTask): Group {
  const { task, may, coupling, clashes, holes, weights, witness } = group
  const { bins } = task
  const random = seededRandom(holes.length * 7919 + bins)
  const drawn: number[][] = []
  const logDraw: number[] = []
  // Settled holes bring their own bolt, so that each hole of the group takes one.
  const capacity = Float64Array.from(task.capacity)
  const cost = new Float64Array(holes.length * bins).fill(Number.POSITIVE_INFINITY)
  const pull = new Float64Array(holes.length * bins)
  holes.forEach((hole, i) => {
    const open = binsOf(may, hole, bins)
    if (open.length === 1) capacity[open[0]!]!++
    for (const b of open) {
      cost[i * bins + b] = 0
      pull[i * bins + b] = weights.targets.reduce(
        (sum, p, t) => sum + p * Math.exp(logWeight(group, hole * bins + b, t)),
        0,
      )
    }
  })
  const small: AssignmentTask = { items: holes.length, bins, cost, capacity }
  const start = Int32Array.from(holes, (hole) => witness[hole]!)
  for (let draw = 0; draw < DRAWS; draw++) {
    const bin = start.slice()
    const chosen = new Chosen(task.items, bins)
    let log = 0
    for (let i = 0; i < holes.length && log > Number.NEGATIVE_INFINITY; i++) log += drawBin(i)
    if (log === Number.NEGATIVE_INFINITY) continue
    const clash = coupling?.clash(chosen.pairs)
    if (clash) clashes.push(clash)
    else {
      drawn.push(chosen.pairs)
      logDraw.push(log)
    }

    /** Draws a bin for hole i by its pull, until one is found with which the rest can still be filled; ln of its chance, −Infinity: none. */
    function drawBin(i: number): number {
      let open = binsOf(may, holes[i]!, bins)
      if (coupling)
        open = open.filter((b) => {
          chosen.push(holes[i]! * bins + b)
          const breaks = chosen.breaks(clashes)
          chosen.pop()
          return !breaks
        })
      open = open.filter((b) => moveItem(small, bin.slice(), i, b, i + 1))
      let total = 0
      for (const b of open) total += pull[i * bins + b]!
      let left = random() * total
      let drawnBin = -1
      for (const b of open) {
        drawnBin = b
        left -= pull[i * bins + b]!
        if (left <= 0) break
      }
      if (drawnBin < 0) return Number.NEGATIVE_INFINITY
      moveItem(small, bin, i, drawnBin, i + 1)
      chosen.push(holes[i]! * bins + drawnBin)
      return Math.log(pull[i * bins + drawnBin]! / total)
    }
  }
  if (drawn.length > 0) return summed(group, drawn, logDraw, DRAWS)
  // Nothing drawn was possible: one placement is known, and that is all that can be said.
  const known = holes.map((hole) => hole * bins + group.witness[hole]!)
  return { ...summed(group, [known], [0], 1), error: 0.5 }
}
