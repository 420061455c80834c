import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, maybe, shortText } from './parts.ts'
import { thingPlace } from './places.ts'

/** A part is in its place again. */
export const partWentIn = defineEvent({
  type: 'part-went-in',
  body: z.strictObject({ part: id, wayRound: maybe(shortText) }),
  writes: ({ part }) => [{ at: thingPlace('part', part), field: 'fate', value: 'in' }],
  say: ({ part, wayRound }) => `Part ${part} went in${wayRound === undefined ? '' : `, ${wayRound}`}`,
})
