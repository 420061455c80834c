import * as z from 'zod/mini'
import { defineEvent, writeFields } from './define.ts'
import { atHole, holeFields, maybe, photoPoint } from './parts.ts'
import { holePlace } from './places.ts'

/** A hole’s mark put where it belongs. */
export const holeMoved = defineEvent({
  type: 'hole-moved',
  body: z.strictObject({ ...atHole, mark: maybe(photoPoint), at: holeFields.at }),
  writes: (body) => writeFields(holePlace(body.face, body.hole), body, 'face', 'hole'),
  say: ({ face, hole }) => `Hole ${hole} of ${face} moved`,
})
