import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, rankFields } from './parts.ts'
import { spaced } from './words.ts'

/** Two compared by hand, without a figure: `less` is not greater than `more`. */
export const rankStated = defineEvent({
  type: 'rank-stated',
  body: z.strictObject({ face: id, ...rankFields }),
  writes: () => [],
  say: ({ face, quantity, less, more }) =>
    `By hand, on ${face}: ${spaced(quantity)} of ${less} is not greater than that of ${more}`,
})
