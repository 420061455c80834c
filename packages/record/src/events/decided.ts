import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { maybe, note, where } from './parts.ts'
import { atWords, becauseWords } from './words.ts'

/** A decision and its reason. */
export const decided = defineEvent({
  type: 'decided',
  body: z.strictObject({ ...where, decision: note, reason: maybe(note) }),
  writes: () => [],
  say: ({ decision, reason, face, hole }) => `Decided${atWords({ face, hole })}: ${decision}${becauseWords(reason)}`,
})
