/** What is said of an order of work. Plain JSON; jobs are named by their ids, minutes are of one pair of hands. */
import type { Interval } from '../quantity/interval.ts'
import type { Job, JobNeed, ToolForm } from '../unit.ts'

/** Why `earlier` must be done before `later`. */
export type Before = { earlier: string; later: string } & (
  | { because: 'after' }
  /** `later` buries `what`: the job `earlier` itself, or a part or a face that it is work on. */
  | { because: 'buries'; what: string }
  /** The window that `earlier` opens is until `later`. */
  | { because: 'opens' }
  /** `later` opens a window until `until`, which comes after `earlier`: nothing that it waits for is left to do once it is open. */
  | { because: 'ready first'; until: string }
)

export type WorkClash =
  /** Each job must be done before the next, and the last before the first: no shorter circle leads through them. */
  | { what: 'circle'; reasons: Before[] }
  /** What must be done inside the window takes longer than it lasts. */
  | { what: 'window'; opens: string; jobs: string[]; takes: number; lasts: number }
  /** It is done, and what it buries is not. */
  | { what: 'closed over'; job: string; unfinished: string[] }

export type StatedNeed = Exclude<JobNeed, string>
export type OpenNeed = { job: string; need: StatedNeed }

/** One job in its turn. `tools` one for each stage of it. `from` in minutes since the start; `wait` is idle time before it, for soaking or drying. */
export type PlannedJob = {
  job: string
  tools: string[]
  changes: number
  side?: string
  turned: boolean
  from: number
  minutes: number
  wait: number
}

/** Jobs in a row without a change of tool or a turn of the unit between them. `tools` is one, but for a job that changes its tool inside. */
export type JobGroup = { tools: string[]; side?: string; jobs: string[] }

export type WindowAnswer = {
  opens: string
  what?: string
  until: string[]
  minutes?: number
  least?: number
  /** Jobs that are done while it runs. */
  jobs: string[]
  /** Mean and standard deviation of what they take, minutes, without waiting. */
  takes: { minutes: number; spread: number }
  /** Chance that all is done in time; absent without a limit or where a job's minutes are not known. */
  chance?: number
  minutesUnknown: string[]
  /** What is not said to be ready, of the job that opens it and of those inside. */
  notReady: OpenNeed[]
  /** Jobs still to do before it may be opened. */
  before: string[]
}

/** What a closing step would bury as things stand now. */
export type ClosingAnswer = { job: string; unfinished: string[]; unread: OpenNeed[]; unsigned: OpenNeed[] }

export type WorkPlan = {
  feasible: boolean
  /** Empty when the reasons run in a circle. Where only a window is too short, the order that keeps all the rest. */
  order: PlannedJob[]
  groups: JobGroup[]
  toolChanges: number
  turns: number
  minutes: number
  waiting: number
  /** No order has fewer tool changes and turns together; else `atLeast` is the fewest that is proven. */
  proven: boolean
  atLeast: number
  clashes: WorkClash[]
  notReady: OpenNeed[]
  windows: WindowAnswer[]
  closing: ClosingAnswer[]
  /** Jobs whose minutes nobody has stated: counted as 0. */
  minutesUnknown: string[]
  /** Names that lead to no job, part or face. */
  unknownNames: { job: string; field: 'after' | 'buries' | 'until'; name: string }[]
}

/** What a tool gives at one bolt. Torques in N·m; `setting` is what to set on the wrench, `atBolt` between what the bolt then gets swings. */
export type ReachedBy = {
  tool: string
  form?: ToolForm
  /** A torque may be written down for it; absent when the form is not known. */
  reading?: boolean
  setting?: Interval
  atBolt?: Interval
}

export type ReachAnswer = {
  face: string
  hole: string
  torque?: Interval
  runDown: ReachedBy[]
  final: ReachedBy[]
  /** What there is to mind of the final torque. */
  finding?:
    | 'finish with another tool'
    | 'only by feel'
    | 'no setting: lever or reach not stated'
    | 'no setting: it reaches the hand'
}

export type StepsAnswer = WorkPlan & {
  gripbook: 'steps/1'
  /** All jobs that the order is made from, in words and as planned: Gripbook's own with the user's changes. */
  jobs: Job[]
  reach: ReachAnswer[]
}
