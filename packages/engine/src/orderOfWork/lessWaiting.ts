import type { WorkProblem } from './problem.ts'
import { keepsOrder, type Walk, walk } from './walk.ts'

/** Rounds through all jobs; each round that helps takes idle time off, so few are needed. */
const MOST_ROUNDS = 8

/**
 * An order with no more changes of tools and turns and less idle time: one job at a time is moved to where most waiting is filled by work, until none
 * helps. The least over single moves, not over all orders.
 */
export function withLessWaiting(problem: WorkProblem, found: readonly number[]): number[] {
  let order = [...found]
  let now = walk(problem, order)
  for (let round = 0; round < MOST_ROUNDS && now.waiting > 0; round += 1) {
    const before = now.waiting
    for (const job of found) {
      const from = order.indexOf(job)
      const rest = order.filter((other) => other !== job)
      let best: { order: number[]; walk: Walk } | undefined
      for (let to = 0; to <= rest.length; to += 1) {
        if (to === from) continue
        const moved = [...rest.slice(0, to), job, ...rest.slice(to)]
        const tried = walk(problem, moved)
        if (isBetter(tried, best?.walk ?? now) && keepsOrder(problem, moved)) best = { order: moved, walk: tried }
      }
      if (best === undefined) continue
      order = best.order
      now = best.walk
    }
    if (now.waiting >= before) break
  }
  return order
}

function isBetter(one: Walk, other: Walk): boolean {
  return (
    one.waiting < other.waiting - 1e-9 &&
    one.toolChanges + one.turns <= other.toolChanges + other.turns &&
    one.late.length <= other.late.length
  )
}
