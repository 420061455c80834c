import * as z from 'zod/mini'
import { defineEvent, writeFields } from './define.ts'
import { id, maybe, shortText, whole } from './parts.ts'
import { thingPlace } from './places.ts'

/** A plug as it was found in its socket, before it came off. */
export const plugFound = defineEvent({
  type: 'plug-found',
  body: z.strictObject({
    plug: id,
    socket: maybe(id),
    colours: maybe(z.array(shortText).check(z.maxLength(50))),
    pins: maybe(whole(1, 1_000)),
    tag: maybe(shortText),
  }),
  writes: ({ plug, ...rest }) => writeFields(thingPlace('plug', plug), rest),
  say: ({ plug, socket, tag }) =>
    `Plug ${plug} found${socket === undefined ? '' : ` in socket ${socket}`}${tag === undefined ? '' : `, tag ${tag}`}`,
})
