import * as z from 'zod/mini'
import { defineEvent, forget, writeFields } from './define.ts'
import { id, kindChanges, maybe, namesOf } from './parts.ts'
import { kindPlace } from './places.ts'
import { fieldWords, unknownWords } from './words.ts'

/** What is known of a bolt kind is put right. */
export const kindDescribed = defineEvent({
  type: 'kind-described',
  body: z.strictObject({ face: maybe(id), kind: id, ...kindChanges, unknown: namesOf(kindChanges) }),
  writes: (body) => [
    ...writeFields(kindPlace(body.face, body.kind), body, 'face', 'kind', 'unknown'),
    ...forget(kindPlace(body.face, body.kind), body.unknown),
  ],
  say: (body) => `Kind ${body.kind}: ${fieldWords(body, 'face', 'kind')}${unknownWords(body.unknown)}`,
})
