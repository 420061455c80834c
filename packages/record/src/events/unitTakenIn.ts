import * as z from 'zod/mini'
import { defineEvent, writeFields } from './define.ts'
import { id, maybe, note, shortText, unitFields } from './parts.ts'
import { unitPlace } from './places.ts'

/** The unit comes to the bench. */
export const unitTakenIn = defineEvent({
  type: 'unit-taken-in',
  body: z.strictObject({
    ...unitFields,
    model: maybe(shortText),
    /** What is said to be wrong with it. */
    complaint: maybe(note),
    /** The shop's own number of the job. */
    job: maybe(id),
  }),
  writes: (body) => writeFields(unitPlace, body),
  say: ({ name, complaint }) =>
    `Taken in${name === undefined ? '' : `: ${name}`}${complaint === undefined ? '' : `. Complaint: ${complaint}`}`,
})
