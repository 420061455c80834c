import { type Bits, hasBit, within } from './bits.ts'
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
  rules: WindowRule[]
  /** `opened`: for each window when it was opened, minutes, not above 0; 0 where it is still to be opened. */
  start: { done: Bits; tool: number; side: number; opened: number[] }
}

/** The fewest changes of tools within a job, by the tool that it begins with and the tool that it ends with. Empty for a job without stages. */
export function insideOf(stages: readonly (readonly number[])[]): Map<number, Map<number, number>> {
  return new Map(
    (stages[0] ?? []).map((begin): [number, Map<number, number>] => {
      let now = new Map([[begin, 0]])
      for (const stage of stages.slice(1)) {
        const least = Math.min(...now.values())
        now = new Map(stage.map((tool) => [tool, Math.min(now.get(tool) ?? Number.POSITIVE_INFINITY, least + 1)]))
      }
      return [begin, now]
    }),
  )
}

/** True when the job leaves nothing to change with this tool in the hand and the unit lying so. */
export function isFree(problem: WorkProblem, job: number, tool: number, side: number): boolean {
  const wanted = problem.sides[job]!
  if (wanted !== NONE && wanted !== side) return false
  return problem.stages[job]!.every((stage) => stage.includes(tool))
}

/** True when a job may be done next: not done, all before it done, and inside every strict window that runs. */
export function mayBeNext({ before, rules }: WorkProblem, job: number, done: Bits): boolean {
  if (hasBit(done, job) || !within(before[job]!, done)) return false
  return rules.every((rule) => !rule.strict || hasBit(rule.allowed, job) || !runs(rule, done))
}

/** True from the end of the job that opens a window to the end of its last. */
export function runs({ opens, until }: WindowRule, done: Bits): boolean {
  return hasBit(done, opens) && until.some((job) => !hasBit(done, job))
}

/** When a job can begin, minutes: now, or when what it waits for has stood its least time. */
export function beginOf({ rules }: WorkProblem, job: number, opened: readonly number[], now: number): number {
  let begin = now
  rules.forEach(({ until, least }, w) => {
    if (least > 0 && until.includes(job)) begin = Math.max(begin, opened[w]! + least)
  })
  return begin
}
