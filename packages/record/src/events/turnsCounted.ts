import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { atHole } from './parts.ts'
import { holePlace, STEP } from './places.ts'

/** Turns until the head seated, or until it stopped before. */
export const turnsCounted = defineEvent({
  type: 'turns-counted',
  body: z.strictObject({ ...atHole, turns: z.number().check(z.gte(0), z.lte(1_000)), seated: z.boolean() }),
  writes: ({ face, hole, turns, seated }) => [
    { at: holePlace(face, hole), field: `${STEP}turns`, value: { turns, seated } },
  ],
  say: ({ face, hole, turns, seated }) =>
    `Hole ${hole} of ${face}: ${turns} turns, ${seated ? 'the head seated' : 'stopped before the head seated'}`,
})
