import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { atHole, id, maybe, shortText } from './parts.ts'
import { holePlace } from './places.ts'
import { atWords } from './words.ts'

/** The kind that goes back into a hole. */
export const boltPlaced = defineEvent({
  type: 'bolt-placed',
  body: z.strictObject({ ...atHole, kind: id, wayRound: maybe(shortText) }),
  writes: ({ face, hole, kind }) => [{ at: holePlace(face, hole), field: 'placed', value: kind }],
  say: ({ kind, ...at }) => `A bolt of kind ${kind} put${atWords(at)}`,
})
