/** What is to be done next on a unit: the engine's order of work, with what the record says is done already. */
import { type Job, jobsOf, planWork, type WorkClash } from '@gripbook/engine'
import { doneBeforeOpening, type FaceStep, type FoldedUnit, faceSteps, unitFileOf } from '@gripbook/record'
import type { BookName, Route } from '../app/route.ts'

export type JobLine = {
  id: string
  name: string
  face: string | null
  minutes: number | null
  tools: string[]
  /** What is not said to be ready. */
  notReady: string[]
  /** How it becomes done: said here, by the steps at the bench, or by the part that goes in. */
  doneBy: 'hand' | 'bench' | { part: string }
}

export type Work = { next: JobLine[]; done: number; all: number; clashes: WorkClash[]; jobs: Job[] }

/** Null while no face has a hole: then there is nothing to put together yet. */
export function workOf(folded: FoldedUnit): Work | null {
  const { unit } = unitFileOf(folded)
  if (unit === null) return null
  const told = toldByBench(folded)
  const jobs = jobsOf(unit, { plugs: Object.keys(folded.things.plug) }).map((job): Job => {
    const plug = folded.things.plug[job.id.slice('plug/'.length)]
    const plugIn = job.id.startsWith('plug/') && plug?.placed !== undefined
    if (told.get(job.id) === true || plugIn) return { ...job, done: true }
    if (job.id.startsWith(PART) || doneBeforeOpening(folded, job.id, job.face) === undefined) return job
    const { done: _, ...again } = job
    return again
  })
  const known = { faces: unit.faces.map(({ id }) => id), parts: (unit.parts ?? []).map(({ id }) => id) }
  const plan = planWork(jobs, { known })
  const byId = new Map(jobs.map((job) => [job.id, job]))
  const next = plan.order.map(({ job, tools }): JobLine => {
    const { name, face, minutes } = byId.get(job)!
    return {
      id: job,
      name: name ?? job,
      face: face ?? null,
      minutes: minutes ?? null,
      tools,
      notReady: plan.notReady.filter((open) => open.job === job).map(({ need }) => need.name),
      doneBy: doneBy(job, told, folded),
    }
  })
  const kept = jobs.filter(({ skip }) => skip !== true)
  const done = kept.filter((job) => job.done === true).length
  return { next, done, all: kept.length, clashes: plan.clashes, jobs }
}

/** Where a job is done; null: on the spot. */
export function placeOfJob({ id, face, doneBy: by }: JobLine, at: { book: BookName; unit: string }): Route | null {
  if (id === 'readings') return { at: 'figures', ...at }
  if (face === null) return null
  if (id === `${face}/tray`) return { at: 'tray', ...at, face }
  if (id === `${face}/clean`) return { at: 'readings', ...at, face }
  return by === 'bench' ? { at: 'bench', ...at, face } : null
}

const PART = 'part/'

function doneBy(job: string, told: ReadonlyMap<string, boolean>, { things }: FoldedUnit): JobLine['doneBy'] {
  const part = job.startsWith(PART) ? job.slice(PART.length) : ''
  if (Object.hasOwn(things.part, part)) return { part }
  return AT_BENCH.test(job) && told.has(job) ? 'bench' : 'hand'
}

const AT_BENCH = /\/(?:hand-start|run down|pass \d|witness marks|close)/

/** Jobs of the faces of which the record tells whether they are done, by their ids. A cover that has a bolt in it is on, clean, tried and sealed. */
function toldByBench(folded: FoldedUnit): Map<string, boolean> {
  const told = new Map<string, boolean>()
  for (const { id: face, holes } of folded.unit.faces) {
    if (holes.length === 0) continue
    const steps = faceSteps(folded, face)
    const isDone = (of: (step: FaceStep) => boolean) => steps.filter(of).every(({ done }) => done !== undefined)
    const on = steps.some(({ stage, done }) => stage === 'hand-start' && done !== undefined)
    if (on)
      for (const before of ['clean', 'tray', 'dry fit', 'gasket', 'sealant', 'place'])
        told.set(`${face}/${before}`, true)
    const visits = [...new Set(steps.map(({ visit }) => visit))].sort((a, b) => a - b)
    for (const visit of visits) {
      const named = visit === visits[0] ? '' : ` ${visit}`
      const here = (stage: FaceStep['stage']) => isDone((step) => step.stage === stage && step.visit === visit)
      told.set(`${face}/hand-start${named}`, here('hand-start'))
      told.set(`${face}/run down${named}`, here('run-down'))
      const passes = [
        ...new Set(steps.flatMap((step) => (step.stage === 'pass' && step.visit === visit ? [step.pass!] : []))),
      ]
      for (const [i, pass] of passes.sort((a, b) => a - b).entries()) {
        const id = `${face}/pass ${i + 1}${named === '' ? '' : ` of visit${named}`}`
        told.set(
          id,
          isDone((step) => step.stage === 'pass' && step.visit === visit && step.pass === pass),
        )
      }
    }
    told.set(
      `${face}/witness marks`,
      isDone(({ stage }) => stage === 'witness mark'),
    )
    told.set(`${face}/close`, folded.faces[face]?.closed?.value === true)
  }
  return told
}
