import { must } from '../must.ts'
import type { Job } from '../unit.ts'
import type { JobGroup, PlannedJob, WorkClash, WorkPlan } from './answer.ts'
import { emptyBits, hasBit, setBit } from './bits.ts'
import { shortestCircles } from './circle.ts'
import { withLessWaiting } from './lessWaiting.ts'
import { NONE, type WorkProblem } from './problem.ts'
import { closingAnswers, openNeeds, windowAnswer } from './ready.ts'
import { type KnownThings, type OpenedWindow, relationsOf } from './relations.ts'
import { fewestChanges } from './search.ts'
import { timeOf } from './times.ts'
import { type Walk, walk } from './walk.ts'
import { type Ordered, withWindows } from './windows.ts'

export type WorkAsked = {
  /** What `buries` may name besides jobs. */
  known?: KnownThings
  /** Tool in the hand and how the unit lies now; the first of either costs nothing when it is not stated. */
  tool?: string
  side?: string
  /** Minutes for which windows have run that are open now, by the job that opened them; 0 unless stated. */
  elapsed?: Readonly<Record<string, number>>
}

/**
 * An order of the jobs still to do that keeps what comes before what, what buries what and every window, with the fewest changes of tools and turns of the
 * unit together, and of those with little idle time. Clashes are told as the shortest circles of reasons, then there is no order. Also what is
 * not ready, the chance of closing each window in time, and what each closing step would bury as things stand. Faults: none; names that lead nowhere
 * are told in `unknownNames` and count for nothing.
 */
export function planWork(all: readonly Job[], asked: WorkAsked = {}): WorkPlan {
  const relations = relationsOf(all, asked.known ?? { faces: [], parts: [] })
  const { jobs } = relations
  const kept = all.filter(({ skip, done }) => skip !== true && done !== true)
  const rest = {
    notReady: kept.flatMap(openNeeds),
    closing: closingAnswers(all),
    minutesUnknown: kept.filter((job) => timeOf(job) === undefined).map(({ id }) => id),
    unknownNames: relations.unknownNames,
  }
  const ordered = withWindows(
    jobs.map(({ id }) => id),
    relations.reasons,
    relations.windows,
  )
  if (!('rules' in ordered)) {
    const circles = shortestCircles(ordered.reasons).map((reasons): WorkClash => ({ what: 'circle', reasons }))
    return { ...nothing, ...rest, clashes: [...circles, ...relations.clashes] }
  }
  const { problem, tools } = problemOf(jobs, ordered, relations.windows, asked)
  const found = fewestChanges(problem) ?? fewestChanges(withoutLimits(problem))
  must(found !== undefined, 'planWork: without limits there is an order', problem.rules)
  const order = withLessWaiting(problem, found.order)
  const gone = walk(problem, order)
  const late = gone.late.map(({ rule, took }): WorkClash => {
    const { opens, members, most } = problem.rules[rule]!
    const inside = jobs.filter((_, i) => hasBit(members, i)).map(({ id }) => id)
    return { what: 'window', opens: jobs[opens]!.id, jobs: inside, takes: took, lasts: most }
  })
  const clashes = [...late, ...relations.clashes]
  const planned = order.map((job, i) => plannedJob(jobs[job]!, i, gone, tools))
  return {
    feasible: clashes.length === 0,
    order: planned,
    groups: groupsOf(planned, asked.tool, asked.side),
    toolChanges: gone.toolChanges,
    turns: gone.turns,
    minutes: figure(gone.minutes),
    waiting: figure(gone.waiting),
    proven: found.proven,
    atLeast: found.atLeast,
    clashes,
    windows: problem.rules.map((rule, w) =>
      windowAnswer(rule, jobs, ordered.before, problem.start.done, -problem.start.opened[w]!),
    ),
    ...rest,
  }
}

const nothing = {
  feasible: false,
  order: [],
  groups: [],
  toolChanges: 0,
  turns: 0,
  minutes: 0,
  waiting: 0,
  proven: true,
  atLeast: 0,
  windows: [],
}

/** Jobs, tools and sides as numbers. */
function problemOf(
  jobs: readonly Job[],
  { before, after, rules }: Ordered,
  windows: readonly OpenedWindow[],
  asked: WorkAsked,
): { problem: WorkProblem; tools: string[] } {
  const tools = numbered([
    ...(asked.tool === undefined ? [] : [asked.tool]),
    ...jobs.flatMap((job) => (job.tools ?? []).flatMap(({ any }) => any)),
  ])
  const sides = numbered([
    ...(asked.side === undefined ? [] : [asked.side]),
    ...jobs.flatMap(({ side }) => (side === undefined ? [] : [side])),
  ])
  const faces = numbered(jobs.flatMap(({ face }) => (face === undefined ? [] : [face])))
  const done = emptyBits(jobs.length)
  jobs.forEach((job, i) => {
    if (job.done === true) setBit(done, i)
  })
  const problem: WorkProblem = {
    before,
    after,
    stages: jobs.map((job) => (job.tools ?? []).map(({ any }) => [...new Set(any)].map((tool) => tools.indexOf(tool)))),
    sides: jobs.map(({ side }) => (side === undefined ? NONE : sides.indexOf(side))),
    faces: jobs.map(({ face }) => (face === undefined ? NONE : faces.indexOf(face))),
    minutes: jobs.map((job) => timeOf(job)?.minutes ?? 0),
    rules,
    start: {
      done,
      tool: asked.tool === undefined ? NONE : tools.indexOf(asked.tool),
      side: asked.side === undefined ? NONE : sides.indexOf(asked.side),
      opened: windows.map(({ opens, running }) => (running ? -(asked.elapsed?.[opens] ?? 0) : 0)),
    },
  }
  return { problem, tools }
}

const numbered = (names: readonly string[]): string[] => [...new Set(names)]

/** The same work with every window open as long as it takes: what comes out says which one is missed. */
function withoutLimits(problem: WorkProblem): WorkProblem {
  return { ...problem, rules: problem.rules.map((rule) => ({ ...rule, tight: false })) }
}

/** Sums of tenths without the dust of their binary form. */
const figure = (minutes: number): number => Math.round(minutes * 1e9) / 1e9

function plannedJob(job: Job, i: number, gone: Walk, tools: readonly string[]): PlannedJob {
  return {
    job: job.id,
    tools: gone.tools[i]!.map((tool) => tools[tool]!),
    changes: gone.changes[i]!,
    ...(job.side === undefined ? {} : { side: job.side }),
    turned: gone.turned[i]!,
    from: figure(gone.from[i]!),
    minutes: timeOf(job)?.minutes ?? 0,
    wait: figure(gone.waits[i]!),
  }
}

/** The order in groups that need no change between them; a job that changes its tool inside lists all of them in its group. */
function groupsOf(planned: readonly PlannedJob[], startTool?: string, startSide?: string): JobGroup[] {
  const groups: JobGroup[] = []
  let side = startSide
  let hand = startTool
  for (const { job, tools, side: lies, changes, turned } of planned) {
    side = lies ?? side
    let group = groups.at(-1)
    if (group === undefined || changes > 0 || turned) {
      group = { tools: hand === undefined || tools.length > 0 ? [] : [hand], jobs: [] }
      groups.push(group)
    }
    if (side !== undefined) group.side = side
    for (const tool of tools) if (group.tools.at(-1) !== tool) group.tools.push(tool)
    group.jobs.push(job)
    hand = tools.at(-1) ?? hand
  }
  return groups
}
