import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, shortText } from './parts.ts'
import { thingPlace } from './places.ts'
import { becauseWords } from './words.ts'

/** A part does not go back, and why. */
export const partWrittenOff = defineEvent({
  type: 'part-written-off',
  body: z.strictObject({ part: id, reason: shortText }),
  writes: ({ part }) => [{ at: thingPlace('part', part), field: 'fate', value: 'written off' }],
  say: ({ part, reason }) => `Part ${part} written off${becauseWords(reason)}`,
})
