import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, maybe } from './parts.ts'
import { facePlace, unitPlace } from './places.ts'

/** All bolts of a face, or of the unit, lie on the bench; the kinds follow. */
export const trayLaidOut = defineEvent({
  type: 'tray-laid-out',
  body: z.strictObject({ face: maybe(id) }),
  writes: ({ face }) => [{ at: face === undefined ? unitPlace : facePlace(face), field: 'tray', value: true }],
  say: ({ face }) => (face === undefined ? 'The tray of the unit laid out' : `The tray of ${face} laid out`),
})
