import * as z from 'zod/mini'
import { defineEvent, writeFields } from './define.ts'
import { above0, id, maybe, shortText } from './parts.ts'
import { thingPlace } from './places.ts'

/** A clock that runs on every device: sealant open, plates soaking, a part warmed. */
export const clockStarted = defineEvent({
  type: 'clock-started',
  body: z.strictObject({ clock: id, what: shortText, minutes: above0, face: maybe(id) }),
  writes: ({ clock, ...rest }) => [
    ...writeFields(thingPlace('clock', clock), rest),
    { at: thingPlace('clock', clock), field: 'running', value: true },
  ],
  say: ({ what, minutes, face }) =>
    `Clock started: ${what}, ${minutes} min${face === undefined ? '' : `, for ${face}`}`,
})
