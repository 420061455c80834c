import { seededRandom } from '../../maths/random.ts'
import type { Job, JobTools } from '../../unit.ts'

export type PlanShape = {
  jobs: number
  tools: number
  sides: number
  /** Chance that a job must come after an earlier one. */
  density: number
  /** Windows in which nothing else is done, and windows in which something stands a least time (with an end too when `ends`). */
  windows: number
  soaks: number
  ends?: boolean
}

/** A plan that some order keeps, drawn from a seed. The jobs stand in no order that would keep it. */
export function randomPlan(seed: number, shape: PlanShape): Job[] {
  const random = seededRandom(seed)
  const below = (n: number) => Math.floor(random() * n)
  const id = (i: number) => `j${i}`
  const tools = () => {
    const first = below(shape.tools)
    const any = [`t${first}`]
    if (random() < 0.25) any.push(`t${below(shape.tools)}`)
    return [...new Set(any)]
  }
  const jobs = Array.from({ length: shape.jobs }, (_, i): Job => {
    const after = Array.from({ length: i }, (_, k) => k)
      .filter((k) => random() < shape.density * (i - k < 8 ? 1 : 0.3))
      .map(id)
    const stages: JobTools[] =
      random() < 0.2 ? [] : random() < 0.15 ? [{ any: tools() }, { stage: 'final', any: tools() }] : [{ any: tools() }]
    return {
      id: id(i),
      minutes: 1 + below(9),
      ...(after.length > 0 ? { after } : {}),
      ...(stages.length > 0 ? { tools: stages } : {}),
      ...(random() < 0.6 ? { side: `s${below(shape.sides)}` } : {}),
    }
  })
  for (const job of jobs)
    if (random() < 0.15 && job.after !== undefined) {
      const [buried, ...rest] = job.after
      job.buries = [buried!]
      job.after = rest
    }
  for (let w = 0; w < shape.windows + shape.soaks; w += 1) {
    const opener = below(shape.jobs - 1)
    const until = opener + 1 + below(Math.min(4, shape.jobs - 1 - opener))
    if (jobs[opener]!.window !== undefined) continue
    jobs[opener]!.window =
      w < shape.windows
        ? { minutes: 500, until: [id(until)] }
        : shape.ends
          ? { least: 3 + below(9), minutes: 8 + below(12), until: [id(until)] }
          : { least: 3 + below(20), until: [id(until)] }
  }
  for (let i = jobs.length - 1; i > 0; i -= 1) {
    const k = below(i + 1)
    ;[jobs[i], jobs[k]] = [jobs[k]!, jobs[i]!]
  }
  return jobs
}

/** The same plan under way: some jobs are done that need wait for nothing, so that windows run. */
export function underWay(seed: number, jobs: readonly Job[]): Job[] {
  const random = seededRandom(seed)
  const done = new Set<string>()
  const opens = (id: string) => jobs.filter(({ window }) => window?.until.includes(id)).map((job) => job.id)
  for (let draw = 0; draw < 2 * jobs.length; draw += 1) {
    const { id, after = [], buries = [] } = jobs[Math.floor(random() * jobs.length)]!
    if (random() < 0.5 && [...after, ...buries, ...opens(id)].every((earlier) => done.has(earlier))) done.add(id)
  }
  return jobs.map((job) => (done.has(job.id) ? { ...job, done: true } : job))
}
