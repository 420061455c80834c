import * as z from 'zod/mini'
import { PART_SORTS } from '../unitFile/partSorts.ts'
import { defineEvent, writeFields } from './define.ts'
import { id, maybe, sha256Hex, shortText, where, whole } from './parts.ts'
import { thingPlace } from './places.ts'
import { atWords } from './words.ts'

/** Something other than a bolt came out: where it sat, which way round, in what condition. */
export const partCameOut = defineEvent({
  type: 'part-came-out',
  body: z.strictObject({
    part: id,
    what: z.enum(PART_SORTS),
    name: maybe(shortText),
    count: maybe(whole(1, 100_000)),
    ...where,
    place: maybe(shortText),
    wayRound: maybe(shortText),
    condition: maybe(shortText),
    photograph: maybe(sha256Hex),
  }),
  writes: ({ part, ...rest }) => writeFields(thingPlace('part', part), { ...rest, fate: 'out' }),
  say: ({ part, what, name, condition, face, hole }) =>
    `Out came ${what === 'other' ? 'part' : what} ${name ?? part}${atWords({ face, hole })}${condition === undefined ? '' : `: ${condition}`}`,
})
