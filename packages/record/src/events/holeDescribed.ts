import * as z from 'zod/mini'
import { defineEvent, forget, writeFields } from './define.ts'
import { atHole, holeChanges, namesOf } from './parts.ts'
import { holePlace } from './places.ts'
import { fieldWords, unknownWords } from './words.ts'

/** What is known of a hole, from the manual or seen. */
export const holeDescribed = defineEvent({
  type: 'hole-described',
  body: z.strictObject({ ...atHole, ...holeChanges, unknown: namesOf(holeChanges) }),
  writes: (body) => [
    ...writeFields(holePlace(body.face, body.hole), body, 'face', 'hole', 'unknown'),
    ...forget(holePlace(body.face, body.hole), body.unknown),
  ],
  say: (body) => `Hole ${body.hole} of ${body.face}: ${fieldWords(body, 'face', 'hole')}${unknownWords(body.unknown)}`,
})
