import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { atHole } from './parts.ts'
import { holePlace, STEP } from './places.ts'

/** A bolt started by hand. */
export const handStarted = defineEvent({
  type: 'hand-started',
  body: z.strictObject({ ...atHole }),
  writes: ({ face, hole }) => [{ at: holePlace(face, hole), field: `${STEP}hand-started`, value: true }],
  say: ({ face, hole }) => `Hole ${hole} of ${face} hand-started`,
})
