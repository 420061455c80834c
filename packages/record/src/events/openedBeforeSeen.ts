import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, maybe, note, sha256Hex } from './parts.ts'
import { facePlace, unitPlace } from './places.ts'
import { atWords } from './words.ts'

/** A sign that someone had it apart before. */
export const openedBeforeSeen = defineEvent({
  type: 'opened-before-seen',
  body: z.strictObject({ face: maybe(id), sign: note, photograph: maybe(sha256Hex) }),
  writes: ({ face }) =>
    face === undefined
      ? [{ at: unitPlace, field: 'history', value: 'opened before' }]
      : [{ at: facePlace(face), field: 'history', value: 'opened before' }],
  say: ({ face, sign }) => `A sign that it was opened before${atWords({ face })}: ${sign}`,
})
