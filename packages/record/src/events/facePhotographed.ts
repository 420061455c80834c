import * as z from 'zod/mini'
import { defineEvent, writeFields } from './define.ts'
import { above0, id, maybe, sha256Hex, whole } from './parts.ts'
import { facePlace, thingPlace } from './places.ts'

/** The photograph on which the holes of a face are marked. */
export const facePhotographed = defineEvent({
  type: 'face-photographed',
  body: z.strictObject({
    face: id,
    photograph: sha256Hex,
    width: whole(1, 100_000),
    height: whole(1, 100_000),
    /** Pixels of the photograph to one millimetre of the face, where that is known. */
    pixelsPerMillimetre: maybe(above0),
  }),
  writes: ({ face, ...picture }) => [
    { at: facePlace(face), field: 'photograph', value: picture },
    ...writeFields(thingPlace('photograph', picture.photograph), {
      face,
      width: picture.width,
      height: picture.height,
    }),
  ],
  say: ({ face }) => `Face ${face} photographed`,
})
