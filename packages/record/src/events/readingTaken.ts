import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import type { Json } from './json.ts'
import { atHole, from0, id, instrument, length, maybe, note } from './parts.ts'
import type { Place } from './places.ts'
import { facePlace, holePlace, kindPlace, sayPlace } from './places.ts'
import { quantityWords, spaced } from './words.ts'

const HOLE_READINGS = ['grip', 'bracket', 'gasket', 'mouth', 'threadDepth', 'bottomDepth', 'behind'] as const
const KIND_READINGS = ['length', 'threadLength', 'tip'] as const

function placeOf(of: { face?: string; hole?: string; kind?: string }): Place {
  if (of.kind !== undefined) return kindPlace(of.face, of.kind)
  return of.hole === undefined ? facePlace(of.face ?? '') : holePlace(of.face ?? '', of.hole)
}

/** One measured value of a hole or a kind, as it was entered, with its instrument and its uncertainty (`plusMinus`). */
export const readingTaken = defineEvent({
  type: 'reading-taken',
  body: z.strictObject({
    of: z.union([
      z.strictObject({ ...atHole, quantity: z.enum(HOLE_READINGS) }),
      z.strictObject({ face: maybe(id), kind: id, quantity: z.enum(KIND_READINGS) }),
      z.strictObject({ face: id, quantity: z.enum(['gasket']) }),
    ]),
    value: length,
    instrument: maybe(instrument),
    /** The single readings when it was read several times. */
    repeated: maybe(z.array(from0).check(z.minLength(2), z.maxLength(1_000))),
    note: maybe(note),
  }),
  writes: ({ of, value }) => [{ at: placeOf(of), field: of.quantity, value: value as Json }],
  say: ({ of, value, instrument: by }) =>
    `${spaced(of.quantity)} of ${sayPlace(placeOf(of))}: ${quantityWords(value)}${by === undefined ? '' : `, by ${by.name}`}`,
})
