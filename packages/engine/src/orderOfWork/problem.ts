import { type Bits, emptyBits, hasBit, setBit } from './bits.ts'
import type { WindowRule } from './windows.ts'

/** No tool in the hand yet, or no way to lie yet: the first costs nothing. Also: no tool needed, any way will do. */
export const NONE = -1

/** An order of work as numbers: jobs, tools and sides from 0 up. */
export type WorkProblem = {
  before: Bits[]
  after: Bits[]
  /** For each job its stages, each with the tools of which any one does. */
  stages: number[][][]
  sides: number[]
  minutes: number[]
  /** Jobs of one face like to follow each other, where it costs nothing. */
  faces: number[]
  tools: number
  rules: WindowRule[]
  start: { done: Bits; tool: number; side: number; elapsed: number[] }
}

/** For each job, from each tool at its beginning to each at its end, the fewest changes between its stages; Infinity where it cannot be. */
export type Inside = { first: number[]; changes: Map<number, Map<number, number>> }

/** Changes of tools within a job, by the tool that it begins with and the tool that it ends with. A job without stages leaves the hand as it is. */
export function insideOf(stages: readonly (readonly number[])[]): Inside {
  const first = [...(stages[0] ?? [])]
  const changes = new Map(
    first.map((begin): [number, Map<number, number>] => {
      let now = new Map([[begin, 0]])
      for (const stage of stages.slice(1)) {
        const least = Math.min(...now.values())
        now = new Map(stage.map((tool) => [tool, Math.min(now.get(tool) ?? Number.POSITIVE_INFINITY, least + 1)]))
      }
      return [begin, now]
    }),
  )
  return { first, changes }
}

/** True when the job leaves nothing to change with this tool in the hand and the unit lying so. */
export function isFree(problem: WorkProblem, job: number, tool: number, side: number): boolean {
  const wanted = problem.sides[job]!
  if (wanted !== NONE && wanted !== side) return false
  return problem.stages[job]!.every((stage) => stage.includes(tool))
}

/** Jobs that may be done next: not done, all before them done, and inside every strict window that runs. */
export function nextJobs({ before, rules }: WorkProblem, done: Bits): number[] {
  const open = rules.filter((rule) => rule.strict && runs(rule, done))
  const next: number[] = []
  for (let job = 0; job < before.length; job += 1) {
    if (hasBit(done, job) || open.some(({ allowed }) => !hasBit(allowed, job))) continue
    let ready = true
    const first = before[job]!
    for (let i = 0; i < first.length && ready; i += 1) ready = (first[i]! & ~done[i]!) === 0
    if (ready) next.push(job)
  }
  return next
}

/** True from the end of the job that opens a window to the end of its last. */
export function runs({ opens, until }: WindowRule, done: Bits): boolean {
  return hasBit(done, opens) && until.some((job) => !hasBit(done, job))
}

export function doneOf(count: number, jobs: Iterable<number>): Bits {
  const done = emptyBits(count)
  for (const job of jobs) setBit(done, job)
  return done
}
