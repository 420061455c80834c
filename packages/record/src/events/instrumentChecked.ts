import * as z from 'zod/mini'
import { defineEvent, writeFields } from './define.ts'
import { day, id, maybe, shortText } from './parts.ts'
import { thingPlace } from './places.ts'

/** An instrument or wrench of the shop, until when it is in calibration. */
export const instrumentChecked = defineEvent({
  type: 'instrument-checked',
  body: z.strictObject({
    instrument: id,
    name: maybe(shortText),
    calibratedUntil: maybe(day),
    result: maybe(shortText),
  }),
  writes: ({ instrument: number, ...rest }) => writeFields(thingPlace('instrument', number), rest),
  say: ({ instrument: number, name, calibratedUntil, result }) =>
    `${name ?? 'Instrument'} ${number} checked${result === undefined ? '' : `: ${result}`}${calibratedUntil === undefined ? '' : `, in calibration until ${calibratedUntil}`}`,
})
