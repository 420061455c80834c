import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, maybe, shortText } from './parts.ts'
import { kindPlace } from './places.ts'
import { becauseWords } from './words.ts'

/** A kind that is none, or was laid out twice. */
export const kindStruckOut = defineEvent({
  type: 'kind-struck-out',
  body: z.strictObject({ face: maybe(id), kind: id, reason: maybe(shortText) }),
  writes: ({ face, kind }) => [{ at: kindPlace(face, kind), there: false }],
  say: ({ kind, reason }) => `Kind ${kind} struck out${becauseWords(reason)}`,
})
