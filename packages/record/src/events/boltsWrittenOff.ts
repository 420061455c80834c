import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, maybe, shortText, whole } from './parts.ts'
import { kindPlace } from './places.ts'
import { becauseWords } from './words.ts'

/** Bolts of a kind that do not go back: stretched, damaged, lost. */
export const boltsWrittenOff = defineEvent({
  type: 'bolts-written-off',
  body: z.strictObject({ face: maybe(id), kind: id, count: whole(1, 100_000), reason: shortText }),
  writes: ({ face, kind }) => [{ at: kindPlace(face, kind), there: true }],
  say: ({ kind, count, reason }) => `Written off: ${count} of kind ${kind}${becauseWords(reason)}`,
})
