import type { Job } from '../../unit.ts'
import type { WorkPlan } from '../answer.ts'

/**
 * What an answer breaks, in words, read straight from the jobs: each once, order, burying, tools and sides as counted, and the clocks of windows. Written from the
 * rules, not from the planner.
 */
export function brokenRules(jobs: readonly Job[], plan: WorkPlan): string[] {
  const broken: string[] = []
  const at = new Map(plan.order.map(({ job }, i) => [job, i]))
  const say = (holds: boolean, what: string) => {
    if (!holds) broken.push(what)
  }
  say(plan.order.length === jobs.length && at.size === jobs.length, 'each job once')
  const ends = new Map(plan.order.map(({ job, from, minutes }) => [job, from + minutes]))
  const starts = new Map(plan.order.map(({ job, from }) => [job, from]))
  let time = 0
  for (const { from, minutes, wait } of plan.order) {
    say(Math.abs(from - wait - time) < 1e-6, 'one after the other')
    time = from + minutes
  }
  for (const { id, after = [], buries = [], window } of jobs) {
    for (const earlier of [...after, ...buries]) say(at.get(earlier)! < at.get(id)!, `${earlier} before ${id}`)
    if (window === undefined) continue
    const { minutes = Number.POSITIVE_INFINITY, least = 0, until } = window
    for (const closer of until) {
      say(at.get(id)! < at.get(closer)!, `${id} opens before ${closer}`)
      say(starts.get(closer)! >= ends.get(id)! + least - 1e-6, `${closer} after ${least} min`)
      say(ends.get(closer)! <= ends.get(id)! + minutes + 1e-6, `${closer} within ${minutes} min`)
    }
  }
  let [hand, side, changes, turns] = ['', '', 0, 0]
  const byId = new Map(jobs.map((job) => [job.id, job]))
  for (const { job, tools } of plan.order) {
    const { tools: stages = [], side: lies } = byId.get(job)!
    say(tools.length === stages.length && stages.every(({ any }, i) => any.includes(tools[i]!)), `tools of ${job}`)
    for (const tool of tools) {
      if (hand !== '' && hand !== tool) changes += 1
      hand = tool
    }
    if (lies === undefined) continue
    if (side !== '' && side !== lies) turns += 1
    side = lies
  }
  say(changes === plan.toolChanges, `${changes} changes, ${plan.toolChanges} said`)
  say(turns === plan.turns, `${turns} turns, ${plan.turns} said`)
  for (const window of blocksOf(jobs)) {
    const from = at.get(window.opens)!
    const to = Math.max(...window.until.map((closer) => at.get(closer)!))
    for (const { job } of plan.order.slice(from + 1, to + 1))
      say(window.allowed.has(job), `${job} while the window of ${window.opens} runs`)
  }
  return broken
}

/** Windows in which nothing else is done, each with what may be done while it runs: what lies between, and what lies between for windows that run with it. */
export function blocksOf(jobs: readonly Job[]): { opens: string; until: string[]; allowed: Set<string> }[] {
  const next = new Map<string, string[]>(jobs.map(({ id }) => [id, []]))
  for (const { id, after = [], buries = [], window } of jobs) {
    for (const earlier of [...after, ...buries]) next.get(earlier)!.push(id)
    next.get(id)!.push(...(window?.until ?? []))
  }
  for (;;) {
    const leads = (from: string): Set<string> => {
      const seen = new Set(next.get(from))
      for (const job of seen) for (const later of next.get(job)!) seen.add(later)
      return seen
    }
    const ahead = new Map(jobs.map(({ id }) => [id, leads(id)]))
    const strict = jobs.flatMap(({ id, window }) =>
      window?.minutes !== undefined && !window.least ? [{ opens: id, until: window.until }] : [],
    )
    const inside = strict.map(
      ({ opens, until }) =>
        new Set([
          opens,
          ...[...ahead.get(opens)!].filter((job) => until.some((c) => c === job || ahead.get(job)!.has(c))),
        ]),
    )
    const goes = (a: number, b: number) => strict[b]!.until.some((closer) => ahead.get(strict[a]!.opens)!.has(closer))
    const groups = strict.map((_, i) => new Set([i]))
    for (let round = 0; round < strict.length; round += 1)
      for (let a = 0; a < strict.length; a += 1)
        for (let b = 0; b < strict.length; b += 1)
          if ([...inside[a]!].some((job) => inside[b]!.has(job)) || (goes(a, b) && goes(b, a)))
            for (const c of groups[b]!) groups[a]!.add(c)
    const blocks = strict.map((window, i) => ({
      ...window,
      allowed: new Set([...groups[i]!].flatMap((other) => [...inside[other]!])),
    }))
    // what a closing job waits for from outside comes before the opening, and may widen another window
    let grew = false
    for (const { opens, until, allowed } of blocks)
      for (const { id } of jobs)
        if (!allowed.has(id) && until.some((c) => ahead.get(id)!.has(c)) && !ahead.get(id)!.has(opens)) {
          next.get(id)!.push(opens)
          grew = true
        }
    if (!grew) return blocks
  }
}
