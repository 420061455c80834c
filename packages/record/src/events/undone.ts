import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { maybe, shortText, uuid } from './parts.ts'
import { becauseWords } from './words.ts'

/** An earlier entry no longer counts. It stays on the record; undoing the undoing brings it back. */
export const undone = defineEvent({
  type: 'undone',
  body: z.strictObject({ event: uuid, reason: maybe(shortText) }),
  writes: () => [],
  say: ({ event, reason }) => `Undone: entry ${event}${becauseWords(reason)}`,
})
