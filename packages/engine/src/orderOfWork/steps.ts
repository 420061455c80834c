import type { Unit } from '../unit.ts'
import type { StepsAnswer } from './answer.ts'
import { jobsOf, type MoreParts } from './defaultJobs.ts'
import { planWork, type WorkAsked } from './planWork.ts'
import { reachOf } from './reach.ts'

/** The order of work of a unit: Gripbook's own jobs with the user's changes, planned, and which tool reaches which bolt. Errors: as `planWork`, none. */
export function steps(unit: Unit, asked: Omit<WorkAsked, 'known'> & MoreParts = {}): StepsAnswer {
  const { plugs = [], ...rest } = asked
  const jobs = jobsOf(unit, { plugs })
  const known = { faces: unit.faces.map(({ id }) => id), parts: (unit.parts ?? []).map(({ id }) => id) }
  return {
    gripbook: 'steps/1',
    ...planWork(jobs, { ...rest, known }),
    jobs,
    reach: unit.faces.flatMap((face) => reachOf(face, unit.tools)),
  }
}
