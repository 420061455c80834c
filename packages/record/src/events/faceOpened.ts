import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, maybe, shortText } from './parts.ts'
import { facePlace, holePlace } from './places.ts'
import { becauseWords } from './words.ts'

/** A face comes apart (again): the bolts of the holes named are out. */
export const faceOpened = defineEvent({
  type: 'face-opened',
  body: z.strictObject({ face: id, holes: z.array(id).check(z.maxLength(2_000)), reason: maybe(shortText) }),
  writes: ({ face, holes }) => [
    { at: facePlace(face), field: 'closed', value: false },
    { at: facePlace(face), field: 'released', value: null },
    ...holes.map((hole) => ({ at: holePlace(face, hole), backsOut: true }) as const),
  ],
  say: ({ face, reason }) => `Face ${face} opened${becauseWords(reason)}`,
})
