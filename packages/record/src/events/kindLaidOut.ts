import * as z from 'zod/mini'
import { defineEvent, writeFields } from './define.ts'
import { id, kindFields, maybe } from './parts.ts'
import { kindPlace } from './places.ts'

/** A bolt kind in the tray of a face, or in the tray that the faces share. */
export const kindLaidOut = defineEvent({
  type: 'kind-laid-out',
  body: z.strictObject({ face: maybe(id), kind: id, ...kindFields }),
  writes: (body) => writeFields(kindPlace(body.face, body.kind), body, 'face', 'kind'),
  say: ({ kind, count, face }) =>
    `Bolts of kind ${kind}${count === undefined ? '' : `, ${count} of them,`} in the tray${face === undefined ? '' : ` of ${face}`}`,
})
