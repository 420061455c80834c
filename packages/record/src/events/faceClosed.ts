import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id } from './parts.ts'
import { facePlace } from './places.ts'

/** A cover or body is on its seat; what lies behind can no longer be reached. */
export const faceClosed = defineEvent({
  type: 'face-closed',
  body: z.strictObject({ face: id }),
  writes: ({ face }) => [{ at: facePlace(face), field: 'closed', value: true }],
  say: ({ face }) => `Face ${face} closed`,
})
