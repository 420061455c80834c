import * as z from 'zod/mini'
import { jobFields } from '../unitFile/jobSchema.ts'
import { defineEvent, forget, writeFields } from './define.ts'
import { id, namesOf } from './parts.ts'
import { thingPlace } from './places.ts'

/** A job of the order of work: what must be done before it, what it buries, what it needs ready. */
export const jobPlanned = defineEvent({
  type: 'job-planned',
  body: z.strictObject({ job: id, ...jobFields, unknown: namesOf(jobFields) }),
  writes: ({ job, unknown, ...rest }) => [
    ...writeFields(thingPlace('job', job), rest),
    ...forget(thingPlace('job', job), unknown),
  ],
  say: ({ job, name, skip }) => `${skip === true ? 'Left out of the plan' : 'Planned'}: ${name ?? job}`,
})
