import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { note } from './parts.ts'
import { unitPlace } from './places.ts'

/** The customer has a question, or the unit is back: the release no longer closes the record. */
export const cameBack = defineEvent({
  type: 'came-back',
  body: z.strictObject({ complaint: note }),
  writes: ({ complaint }) => [
    { at: unitPlace, field: 'released', value: null },
    { at: unitPlace, field: 'cameBack', value: complaint },
  ],
  say: ({ complaint }) => `Came back: ${complaint}`,
})
