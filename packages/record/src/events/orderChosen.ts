import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, maybe, shortText } from './parts.ts'
import { facePlace } from './places.ts'
import { becauseWords } from './words.ts'

/** The order and passes by which a face is tightened: the manual’s, or a proposal by its name. */
export const orderChosen = defineEvent({
  type: 'order-chosen',
  body: z.strictObject({
    face: id,
    name: shortText,
    passes: z
      .array(
        z.strictObject({
          share: z.number().check(z.gt(0), z.lte(1)),
          sequence: z.array(id).check(z.minLength(1), z.maxLength(10_000)),
        }),
      )
      .check(z.minLength(1), z.maxLength(100)),
    reason: maybe(shortText),
  }),
  writes: ({ face, name, passes }) => [{ at: facePlace(face), field: 'orderChosen', value: { name, passes } }],
  say: ({ face, name, passes, reason }) =>
    `Face ${face} is tightened by ${name}, ${passes.length === 1 ? 'one pass' : `${passes.length} passes`}${becauseWords(reason)}`,
})
