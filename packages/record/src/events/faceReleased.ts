import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, maybe } from './parts.ts'
import { facePlace } from './places.ts'

/** A face is right and done. */
export const faceReleased = defineEvent({
  type: 'face-released',
  body: z.strictObject({ face: id, onlyPerson: maybe(z.boolean()) }),
  writes: ({ face }) => [{ at: facePlace(face), field: 'released', value: true }],
  say: ({ face, onlyPerson }) => `Face ${face} released${onlyPerson === true ? ' (the shop is one person)' : ''}`,
})
