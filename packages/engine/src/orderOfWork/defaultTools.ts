import type { BenchTool, Hole, JobTools } from '../unit.ts'

/** What turns bolts where nobody has said what reaches them: common practice, no source. */
const USUAL = { runDown: 'socket', final: 'torque wrench' } as const

/** Tools for running the bolts of these holes down, in few stages: they are run down in any order, so those that one tool reaches are taken together. */
export function toolsToRunDown(holes: readonly Hole[]): JobTools[] {
  return fewStages(
    holes.map(({ reach }) => reach?.runDown ?? [USUAL.runDown]),
    'running down',
  )
}

/**
 * Tools for one pass. A stated sequence is kept: a stage for each run of bolts that one tool reaches. Without one the bolts that one tool reaches are taken
 * together. Of the unit's tools every torque wrench does where a hole states none.
 */
export function toolsForPass(holes: readonly Hole[], stated: boolean, tools: readonly BenchTool[] = []): JobTools[] {
  const wrenches = tools.filter(({ form }) => form === 'torque wrench').map(({ id }) => id)
  const usual: string[] = wrenches.length > 0 ? wrenches : [USUAL.final]
  const each = holes.map(({ reach }) => reach?.final ?? usual)
  if (!stated) return fewStages(each, 'final')
  const stages: JobTools[] = []
  for (const any of each) {
    const last = stages.at(-1)
    const shared = last?.any.filter((tool) => any.includes(tool)) ?? []
    if (last !== undefined && shared.length > 0) last.any = shared
    else stages.push({ stage: 'final', any: [...any] })
  }
  return stages
}

/** The tool that reaches most bolts first, then the one that reaches most of those left. */
function fewStages(each: readonly (readonly string[])[], stage: NonNullable<JobTools['stage']>): JobTools[] {
  const stages: JobTools[] = []
  let left = each
  while (left.length > 0) {
    const counts = new Map<string, number>()
    for (const any of left) for (const tool of new Set(any)) counts.set(tool, (counts.get(tool) ?? 0) + 1)
    const [best] = [...counts].reduce((most, one) => (one[1] > most[1] ? one : most))
    const together = left.filter((any) => any.includes(best))
    stages.push({ stage, any: together[0]!.filter((tool) => together.every((any) => any.includes(tool))) })
    left = left.filter((any) => !any.includes(best))
  }
  return stages
}
