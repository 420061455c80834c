import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, maybe, shortText } from './parts.ts'
import { facePlace } from './places.ts'
import { becauseWords } from './words.ts'

/** A face that is none, or was entered twice. */
export const faceStruckOut = defineEvent({
  type: 'face-struck-out',
  body: z.strictObject({ face: id, reason: maybe(shortText) }),
  writes: ({ face }) => [{ at: facePlace(face), there: false }],
  say: ({ face, reason }) => `Face ${face} struck out${becauseWords(reason)}`,
})
