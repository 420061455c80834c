import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { from0, id, maybe, shortText } from './parts.ts'
import { thingPlace } from './places.ts'

/** A job of the order of work is done. */
export const jobDone = defineEvent({
  type: 'job-done',
  body: z.strictObject({ job: id, name: maybe(shortText), minutes: maybe(from0) }),
  writes: ({ job }) => [{ at: thingPlace('job', job), field: 'done', value: true }],
  say: ({ job, name }) => `Done: ${name ?? job}`,
})
