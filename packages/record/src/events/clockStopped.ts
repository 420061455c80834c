import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id } from './parts.ts'
import { thingPlace } from './places.ts'

/** The work that a clock ran for is done. */
export const clockStopped = defineEvent({
  type: 'clock-stopped',
  body: z.strictObject({ clock: id }),
  writes: ({ clock }) => [{ at: thingPlace('clock', clock), field: 'running', value: false }],
  say: ({ clock }) => `Clock ${clock} stopped`,
})
