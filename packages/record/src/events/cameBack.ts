import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { maybe, note } from './parts.ts'
import { unitPlace } from './places.ts'

/** The customer has a question, or the unit is back: the release no longer closes the record. */
export const cameBack = defineEvent({
  type: 'came-back',
  body: z.strictObject({
    complaint: note,
    /** It is to be answered before the next release (`come-back-answered`). Entries from before there was an answer are without it, and ask for none. */
    toAnswer: maybe(z.boolean()),
  }),
  writes: ({ complaint }) => [
    { at: unitPlace, field: 'released', value: null },
    { at: unitPlace, field: 'cameBack', value: complaint },
  ],
  say: ({ complaint }) => `Came back: ${complaint}`,
})
