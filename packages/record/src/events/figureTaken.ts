import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { from0, id, instrument, maybe, shortText, where } from './parts.ts'
import { thingPlace } from './places.ts'

/** A reading that is no length of a hole or bolt: end play, coil resistance, flatness, rotating torque. Before teardown and after have the same name. */
export const figureTaken = defineEvent({
  type: 'figure-taken',
  body: z.strictObject({
    reading: id,
    when: z.enum(['before', 'during', 'after']),
    value: z.number().check(z.gte(-1e9), z.lte(1e9)),
    plusMinus: maybe(from0),
    unit: shortText,
    ...where,
    instrument: maybe(instrument),
    conditions: maybe(shortText),
  }),
  writes: ({ reading, when, value, plusMinus, unit }) => [
    {
      at: thingPlace('reading', reading),
      field: when,
      value: { value, unit, ...(plusMinus === undefined ? {} : { plusMinus }) },
    },
  ],
  say: ({ reading, when, value, plusMinus, unit }) =>
    `${reading} ${when === 'during' ? '' : `${when} `}read as ${value}${plusMinus === undefined ? '' : ` ± ${plusMinus}`} ${unit}`,
})
