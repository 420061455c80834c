import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, maybe, note, where } from './parts.ts'
import { atWords } from './words.ts'

/** A note, spoken or typed. */
export const noteWritten = defineEvent({
  type: 'note-written',
  body: z.strictObject({ ...where, part: maybe(id), text: note }),
  writes: () => [],
  say: ({ text, face, hole }) => `Note${atWords({ face, hole })}: ${text}`,
})
