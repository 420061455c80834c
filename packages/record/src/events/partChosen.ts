import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import type { Json } from './json.ts'
import { id, length, maybe, shortText } from './parts.ts'
import { thingPlace } from './places.ts'
import { becauseWords, quantityWords } from './words.ts'

/** The selective part for a place: shim, washer, ring or plate. */
export const partChosen = defineEvent({
  type: 'part-chosen',
  body: z.strictObject({ place: id, part: shortText, thickness: maybe(length), reason: maybe(shortText) }),
  writes: ({ place, part, thickness }) => [
    { at: thingPlace('fit', place), field: 'part', value: part },
    { at: thingPlace('fit', place), field: 'thickness', value: (thickness ?? null) as Json },
  ],
  say: ({ place, part, thickness, reason }) =>
    `For ${place}: ${part}${thickness === undefined ? '' : `, ${quantityWords(thickness)}`}${becauseWords(reason)}`,
})
