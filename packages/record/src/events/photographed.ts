import * as z from 'zod/mini'
import { defineEvent, writeFields } from './define.ts'
import { id, maybe, sha256Hex, shortText, where, whole } from './parts.ts'
import { thingPlace } from './places.ts'
import { atWords } from './words.ts'

/** A photograph, kept by the hash of its content. */
export const photographed = defineEvent({
  type: 'photographed',
  body: z.strictObject({
    photograph: sha256Hex,
    width: whole(1, 100_000),
    height: whole(1, 100_000),
    ...where,
    part: maybe(id),
    caption: maybe(shortText),
  }),
  writes: ({ photograph, ...rest }) => writeFields(thingPlace('photograph', photograph), rest),
  say: ({ caption, part, ...at }) =>
    `Photographed${part === undefined ? '' : ` part ${part}`}${atWords(at)}${caption === undefined ? '' : `: ${caption}`}`,
})
