import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, maybe, shortText, uuid } from './parts.ts'
import { sayPlace } from './places.ts'
import { becauseWords, spaced } from './words.ts'

/** Of entries that contradict each other, the one that holds; null when none does. */
export const clashSettled = defineEvent({
  type: 'clash-settled',
  body: z.strictObject({
    at: z.array(id).check(z.maxLength(4)),
    field: shortText,
    stands: z.nullable(uuid),
    reason: maybe(shortText),
  }),
  writes: () => [],
  say: ({ at, field, stands, reason }) =>
    `Settled for ${sayPlace(at)}, ${spaced(field)}: ${stands === null ? 'none of the entries holds' : `entry ${stands} holds`}${becauseWords(reason)}`,
})
