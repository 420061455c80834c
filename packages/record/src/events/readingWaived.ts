import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, shortText } from './parts.ts'
import { thingPlace } from './places.ts'
import { becauseWords } from './words.ts'

/** A reading outside its limit, or not taken, is accepted by a person by name. */
export const readingWaived = defineEvent({
  type: 'reading-waived',
  body: z.strictObject({ reading: id, reason: shortText }),
  writes: ({ reading, reason }) => [{ at: thingPlace('reading', reading), field: 'waived', value: reason }],
  say: ({ reading, reason }) => `${reading} waived${becauseWords(reason)}`,
})
