import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { atHole, note } from './parts.ts'
import { holePlace } from './places.ts'

/** What the resistance was, and that work may go on. */
export const resistanceCleared = defineEvent({
  type: 'resistance-cleared',
  body: z.strictObject({ ...atHole, found: note }),
  writes: ({ face, hole }) => [{ at: holePlace(face, hole), field: 'resistance', value: null }],
  say: ({ face, hole, found }) => `Resistance at hole ${hole} of ${face} cleared: ${found}`,
})
