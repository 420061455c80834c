import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { atHole } from './parts.ts'
import { holePlace, STEP } from './places.ts'

/** A bolt brought snug. */
export const snugged = defineEvent({
  type: 'snugged',
  body: z.strictObject({ ...atHole }),
  writes: ({ face, hole }) => [{ at: holePlace(face, hole), field: `${STEP}snug`, value: true }],
  say: ({ face, hole }) => `Hole ${hole} of ${face} snug`,
})
