import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, maybe, shortText } from './parts.ts'
import { thingPlace } from './places.ts'
import { becauseWords } from './words.ts'

/** A new part went in for one that came out. */
export const partReplaced = defineEvent({
  type: 'part-replaced',
  body: z.strictObject({ part: id, by: shortText, reason: maybe(shortText) }),
  writes: ({ part, by }) => [
    { at: thingPlace('part', part), field: 'fate', value: 'replaced' },
    { at: thingPlace('part', part), field: 'replacedBy', value: by },
  ],
  say: ({ part, by, reason }) => `Part ${part} replaced by ${by}${becauseWords(reason)}`,
})
