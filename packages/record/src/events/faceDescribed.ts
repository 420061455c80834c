import * as z from 'zod/mini'
import { defineEvent, forget, writeFields } from './define.ts'
import { faceFields, id, namesOf } from './parts.ts'
import { facePlace } from './places.ts'
import { fieldWords, unknownWords } from './words.ts'

/** What is known of a joint face, from the manual or from the bench. An entry of this kind starts a face. */
export const faceDescribed = defineEvent({
  type: 'face-described',
  body: z.strictObject({ face: id, ...faceFields, unknown: namesOf(faceFields) }),
  writes: (body) => [
    { at: facePlace(body.face), there: true },
    ...writeFields(facePlace(body.face), body, 'face', 'unknown'),
    ...forget(facePlace(body.face), body.unknown),
  ],
  say: (body) =>
    `Face ${body.face}${fieldWords(body, 'face') === '' ? '' : `: ${fieldWords(body, 'face')}`}${unknownWords(body.unknown)}`,
})
