import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, maybe, shortText, whole } from './parts.ts'
import { kindPlace } from './places.ts'

/** Bolts of a kind that come into the tray: new ones, or found again. */
export const boltsAdded = defineEvent({
  type: 'bolts-added',
  body: z.strictObject({ face: maybe(id), kind: id, count: whole(1, 100_000), from: maybe(shortText) }),
  writes: ({ face, kind }) => [{ at: kindPlace(face, kind), there: true }],
  say: ({ kind, count, from }) => `Added to the tray: ${count} of kind ${kind}${from === undefined ? '' : `, ${from}`}`,
})
