import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { atHole, maybe, shortText } from './parts.ts'
import { holePlace } from './places.ts'

/** Resistance felt by hand: the face stops until it is looked at. */
export const resistanceFelt = defineEvent({
  type: 'resistance-felt',
  body: z.strictObject({ ...atHole, feel: shortText, turns: maybe(z.number().check(z.gte(0), z.lte(1_000))) }),
  writes: ({ face, hole, feel }) => [{ at: holePlace(face, hole), field: 'resistance', value: feel }],
  say: ({ face, hole, feel, turns }) =>
    `Resistance at hole ${hole} of ${face}${turns === undefined ? '' : ` after ${turns} turns`}: ${feel}. The face stops`,
})
