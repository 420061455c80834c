import type { Job, JobWindow } from '../unit.ts'
import type { Before, WorkClash, WorkPlan } from './answer.ts'

/** Names that `buries` may lead to besides jobs. A part that goes back has the job `part/…` of its own. */
export type KnownThings = { faces: readonly string[]; parts: readonly string[] }

export const partJob = (part: string): string => `part/${part}`

/** A window of jobs that are still to do. `running` when the job that opens it is done. */
export type OpenedWindow = Pick<JobWindow, 'what' | 'minutes' | 'least'> & {
  opens: string
  until: string[]
  running: boolean
}

export type Relations = {
  /** Jobs still to do, and those done whose window still runs. */
  jobs: Job[]
  reasons: Before[]
  windows: OpenedWindow[]
  clashes: WorkClash[]
  unknownNames: WorkPlan['unknownNames']
}

/** What of a list of jobs must be done before what, and why. A job that is left out hands on what it came after; of what is done nothing is asked any more. */
export function relationsOf(all: readonly Job[], known: KnownThings): Relations {
  const byId = new Map(all.map((job) => [job.id, job]))
  const unknownNames: Relations['unknownNames'] = []
  const handedOn = (names: readonly string[], passed: ReadonlySet<string> = new Set()): string[] =>
    names.flatMap((name) => {
      const job = byId.get(name)
      if (job?.skip !== true) return job === undefined ? [] : [name]
      return passed.has(name) ? [] : handedOn(job.after ?? [], new Set([...passed, name]))
    })
  const toDo = (id: string): boolean => byId.get(id)?.done !== true
  const kept = all.filter(({ skip }) => skip !== true)
  const reasons: Before[] = []
  const windows: OpenedWindow[] = []
  const clashes: WorkClash[] = []
  for (const job of kept) {
    for (const field of ['after', 'buries', 'until'] as const) {
      const names = (field === 'until' ? job.window?.until : job[field]) ?? []
      for (const name of names) {
        const isThing = field === 'buries' && (known.faces.includes(name) || known.parts.includes(name))
        if (!byId.has(name) && !isThing) unknownNames.push({ job: job.id, field, name })
      }
    }
    const unfinished = new Set<string>()
    for (const what of job.buries ?? [])
      for (const buried of buriedBy(job, what, kept).filter(({ id }) => toDo(id))) {
        if (job.done) unfinished.add(buried.id)
        else reasons.push({ earlier: buried.id, later: job.id, because: 'buries', what })
      }
    if (unfinished.size > 0) clashes.push({ what: 'closed over', job: job.id, unfinished: [...unfinished] })
    const until = [...new Set(handedOn(job.window?.until ?? []))].filter((id) => id !== job.id && toDo(id))
    if (job.window !== undefined && until.length > 0 && (job.window.minutes ?? job.window.least ?? 0) > 0) {
      const { what, minutes, least } = job.window
      windows.push({
        opens: job.id,
        until,
        running: job.done === true,
        ...(what === undefined ? {} : { what }),
        ...(minutes === undefined ? {} : { minutes }),
        ...(least === undefined || least === 0 ? {} : { least }),
      })
      for (const later of until) reasons.push({ earlier: job.id, later, because: 'opens' })
    }
    if (job.done) continue
    for (const earlier of new Set(handedOn(job.after ?? [])))
      if (toDo(earlier)) reasons.push({ earlier, later: job.id, because: 'after' })
  }
  const running = new Set(windows.filter((window) => window.running).map(({ opens }) => opens))
  return { jobs: kept.filter(({ id }) => toDo(id) || running.has(id)), reasons, windows, clashes, unknownNames }
}

/** The jobs that a name in `buries` stands for: the job itself, the setting of a part, all other work on a face. */
export function buriedBy(job: Job, what: string, all: readonly Job[]): Job[] {
  return all.filter(
    ({ id, face, skip }) => skip !== true && id !== job.id && (id === what || id === partJob(what) || face === what),
  )
}
