import * as z from 'zod/mini'
import { defineEvent, writeFields } from './define.ts'
import { atHole, id, maybe, shortText } from './parts.ts'
import { holePlace } from './places.ts'
import { atWords } from './words.ts'

/** What sat in a hole when the face came apart; "none" for an empty one. */
export const boltFound = defineEvent({
  type: 'bolt-found',
  body: z.strictObject({ ...atHole, kind: id, condition: maybe(shortText) }),
  writes: ({ face, hole, kind, ...rest }) => [
    { at: holePlace(face, hole), field: 'asFound', value: kind },
    ...writeFields(holePlace(face, hole), rest),
  ],
  say: ({ kind, condition, ...at }) =>
    `${kind === 'none' ? 'No bolt' : `A bolt of kind ${kind}`} found${atWords(at)}${condition === undefined ? '' : `: ${condition}`}`,
})
