import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { atHole, maybe, shortText } from './parts.ts'
import { holePlace } from './places.ts'
import { becauseWords } from './words.ts'

/** A bolt is out again: the stages it had reached no longer hold. */
export const boltBackedOut = defineEvent({
  type: 'bolt-backed-out',
  body: z.strictObject({ ...atHole, reason: maybe(shortText) }),
  writes: ({ face, hole }) => [{ at: holePlace(face, hole), backsOut: true }],
  say: ({ face, hole, reason }) => `Hole ${hole} of ${face} backed out${becauseWords(reason)}`,
})
