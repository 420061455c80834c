import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { atHole, maybe, sha256Hex } from './parts.ts'
import { holePlace, STEP } from './places.ts'

/** The paint line across head and seat after the final pass. */
export const witnessMarked = defineEvent({
  type: 'witness-marked',
  body: z.strictObject({ ...atHole, photograph: maybe(sha256Hex) }),
  writes: ({ face, hole }) => [{ at: holePlace(face, hole), field: `${STEP}witness mark`, value: true }],
  say: ({ face, hole }) => `Witness mark on hole ${hole} of ${face}`,
})
