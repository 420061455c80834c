import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id } from './parts.ts'
import { thingPlace } from './places.ts'

/** A plug put into a socket. */
export const plugPlaced = defineEvent({
  type: 'plug-placed',
  body: z.strictObject({ plug: id, socket: id }),
  writes: ({ plug, socket }) => [{ at: thingPlace('plug', plug), field: 'placed', value: socket }],
  say: ({ plug, socket }) => `Plug ${plug} put into socket ${socket}`,
})
