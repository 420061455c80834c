import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { atHole } from './parts.ts'
import { holePlace, STEP } from './places.ts'

/** A bolt run down until its head touches. */
export const runDown = defineEvent({
  type: 'run-down',
  body: z.strictObject({ ...atHole }),
  writes: ({ face, hole }) => [{ at: holePlace(face, hole), field: `${STEP}run-down`, value: true }],
  say: ({ face, hole }) => `Hole ${hole} of ${face} run down`,
})
