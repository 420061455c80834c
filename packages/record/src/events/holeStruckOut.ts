import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { atHole, maybe, shortText } from './parts.ts'
import { holePlace } from './places.ts'
import { becauseWords } from './words.ts'

/** A hole that is none, or was marked twice. */
export const holeStruckOut = defineEvent({
  type: 'hole-struck-out',
  body: z.strictObject({ ...atHole, reason: maybe(shortText) }),
  writes: ({ face, hole }) => [{ at: holePlace(face, hole), there: false }],
  say: ({ face, hole, reason }) => `Hole ${hole} of ${face} struck out${becauseWords(reason)}`,
})
