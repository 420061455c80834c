import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, maybe, shortText } from './parts.ts'
import { thingPlace } from './places.ts'

/** A limit from the user’s manual, and where it stands there. */
export const limitStated = defineEvent({
  type: 'limit-stated',
  body: z.strictObject({
    reading: id,
    least: maybe(z.number().check(z.gte(-1e9), z.lte(1e9))),
    most: maybe(z.number().check(z.gte(-1e9), z.lte(1e9))),
    unit: shortText,
    source: shortText,
  }),
  writes: ({ reading, ...limit }) => [{ at: thingPlace('limit', reading), field: 'limit', value: limit }],
  say: ({ reading, least, most, unit, source }) =>
    `Limit of ${reading}: ${[least === undefined ? '' : `at least ${least} ${unit}`, most === undefined ? '' : `at most ${most} ${unit}`].filter(Boolean).join(', ')} (${source})`,
})
