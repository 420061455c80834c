import * as z from 'zod/mini'
import { defineEvent, writeFields } from './define.ts'
import { from0, id, maybe, shortText } from './parts.ts'
import { thingPlace } from './places.ts'

/** A job of the order of work: what must be done before it, what it buries, what it needs ready. */
export const jobPlanned = defineEvent({
  type: 'job-planned',
  body: z.strictObject({
    job: id,
    name: maybe(shortText),
    /** Jobs that must be done before. */
    after: maybe(z.array(id).check(z.maxLength(1_000))),
    /** Jobs, parts or faces that can no longer be reached once it is done. */
    buries: maybe(z.array(id).check(z.maxLength(1_000))),
    /** Parts, tools, readings and signatures that must be ready. */
    needs: maybe(z.array(shortText).check(z.maxLength(1_000))),
    minutes: maybe(from0),
  }),
  writes: ({ job, ...rest }) => writeFields(thingPlace('job', job), rest),
  say: ({ job, name }) => `Planned: ${name ?? job}`,
})
