import * as z from 'zod/mini'
import { defineEvent, writeFields } from './define.ts'
import { atHole, holeFields, maybe, photoPoint } from './parts.ts'
import { holePlace } from './places.ts'

/** A hole tapped on the photograph, or entered by hand. Its thread may be a list of candidates. */
export const holeMarked = defineEvent({
  type: 'hole-marked',
  body: z.strictObject({ ...atHole, mark: maybe(photoPoint), ...holeFields }),
  writes: (body) => writeFields(holePlace(body.face, body.hole), body, 'face', 'hole'),
  say: ({ face, hole }) => `Hole ${hole} marked on ${face}`,
})
