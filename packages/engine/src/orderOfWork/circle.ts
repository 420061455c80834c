import type { Before } from './answer.ts'

/**
 * The shortest circle of reasons in each knot of jobs that wait for each other, the first found among equals; none when some order keeps all reasons.
 * Of several reasons for one pair the first stands. Every circle is found by a search in width from each of its jobs, so none is longer than it must be.
 */
export function shortestCircles(reasons: readonly Before[]): Before[][] {
  const next = new Map<string, Map<string, Before>>()
  for (const reason of reasons) {
    const after = next.get(reason.earlier) ?? new Map<string, Before>()
    next.set(reason.earlier, after)
    if (!after.has(reason.later)) after.set(reason.later, reason)
  }
  const circles: Before[][] = []
  const told = new Set<string>()
  const found = [...next.keys()].flatMap((from) => {
    const circle = circleThrough(from, next)
    return circle === undefined ? [] : [circle]
  })
  for (const circle of found.sort((a, b) => a.length - b.length)) {
    if (circle.some(({ earlier }) => told.has(earlier))) continue
    circles.push(circle)
    for (const job of knotOf(circle[0]!.earlier, next)) told.add(job)
  }
  return circles
}

function circleThrough(start: string, next: ReadonlyMap<string, ReadonlyMap<string, Before>>): Before[] | undefined {
  const cameBy = new Map<string, Before>()
  const queue = [start]
  for (const job of queue) {
    for (const [later, reason] of next.get(job) ?? []) {
      if (later === start) {
        const circle = [reason]
        for (let at = job; at !== start; at = cameBy.get(at)!.earlier) circle.unshift(cameBy.get(at)!)
        return circle
      }
      if (cameBy.has(later)) continue
      cameBy.set(later, reason)
      queue.push(later)
    }
  }
  return undefined
}

/** All jobs that lie on some circle with this one. */
function knotOf(job: string, next: ReadonlyMap<string, ReadonlyMap<string, Before>>): string[] {
  const back = new Map<string, Set<string>>()
  for (const [earlier, after] of next)
    for (const later of after.keys()) back.set(later, (back.get(later) ?? new Set()).add(earlier))
  const ahead = reached(job, (at) => next.get(at)?.keys() ?? [])
  const behind = reached(job, (at) => back.get(at) ?? [])
  return [...ahead].filter((one) => behind.has(one))
}

function reached(from: string, step: (job: string) => Iterable<string>): Set<string> {
  const seen = new Set([from])
  for (const job of seen) for (const other of step(job)) seen.add(other)
  return seen
}
