import * as z from 'zod/mini'
import { defineEvent, forget, writeFields } from './define.ts'
import { id, maybe, namesOf, note, shortText, unitFields } from './parts.ts'
import { unitPlace } from './places.ts'
import { fieldWords } from './words.ts'

/** What is known of the unit is put right. */
export const unitDescribed = defineEvent({
  type: 'unit-described',
  body: z.strictObject({
    ...unitFields,
    model: maybe(shortText),
    complaint: maybe(note),
    job: maybe(id),
    unknown: namesOf({ ...unitFields, model: 0, complaint: 0, job: 0 }),
  }),
  writes: (body) => [...writeFields(unitPlace, body, 'unknown'), ...forget(unitPlace, body.unknown)],
  say: (body) => `The unit described: ${fieldWords(body)}`,
})
