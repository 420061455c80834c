import { type Bits, hasBit } from './bits.ts'
import { NONE, type WorkProblem } from './problem.ts'

/**
 * The fewest changes of tools, and turns, that what is left to do can have, seen from any state: never more than there are. For tools and for sides each
 * the greater of two counts: the longest chain of jobs that wait for each other and cannot follow without a change, and the tools (sides) that are
 * still to come and have nothing in common with each other or with what is in the hand.
 */
export function lowerBound(problem: WorkProblem): (done: Bits, tool: number, side: number) => number {
  const tools = boundOf(problem, problem.stages)
  const sides = boundOf(
    problem,
    problem.sides.map((side) => (side === NONE ? [] : [[side]])),
  )
  return (done, tool, side) => tools(done, tool) + sides(done, side)
}

function boundOf({ before, after }: WorkProblem, stages: readonly number[][][]): (done: Bits, now: number) => number {
  const bound = stages.flatMap((own, job) => (own.length > 0 ? [job] : []))
  const size = after.map((bits) => bits.reduce((sum, word) => sum + ones(word), 0))
  const chain = new Array<number>(before.length).fill(0)
  for (const job of [...bound].sort((a, b) => size[a]! - size[b]!)) {
    const own = stages[job]!
    let onward = 0
    for (const later of bound)
      if (hasBit(after[job]!, later))
        onward = Math.max(onward, chain[later]! + (apart(own.at(-1)!, stages[later]![0]!) ? 1 : 0))
    chain[job] = onward + own.filter((stage, i) => i > 0 && apart(own[i - 1]!, stage)).length
  }
  const narrowFirst = bound
    .flatMap((job) => stages[job]!.map((any) => ({ job, any })))
    .sort((a, b) => a.any.length - b.any.length)
  const highest = Math.max(0, ...narrowFirst.flatMap(({ any }) => any))
  const taken = new Int32Array(highest + 1)
  let stamp = 0
  return (done, now) => {
    let longest = 0
    for (const job of bound) {
      if (hasBit(done, job)) continue
      const change = now !== NONE && !stages[job]![0]!.includes(now) ? 1 : 0
      longest = Math.max(longest, chain[job]! + change)
    }
    stamp += 1
    let distinct = 0
    if (now !== NONE && now <= highest) taken[now] = stamp
    for (const { job, any } of narrowFirst) {
      if (hasBit(done, job) || any.some((tool) => taken[tool] === stamp)) continue
      for (const tool of any) taken[tool] = stamp
      distinct += 1
    }
    return Math.max(longest, now === NONE ? distinct - 1 : distinct, 0)
  }
}

const apart = (a: readonly number[], b: readonly number[]): boolean => !a.some((one) => b.includes(one))

function ones(word: number): number {
  let count = 0
  for (let rest = word; rest !== 0; rest &= rest - 1) count += 1
  return count
}
