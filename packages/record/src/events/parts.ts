/** What bodies are made of. Fields of faces, holes and kinds are those of the unit file, from its own schema: one shape everywhere. */
import type { Kind, Rank, Trial } from '@gripbook/engine'
import * as z from 'zod/mini'
import { SHA256_HEX, UUID } from '../identity.ts'
import { LIMITS } from '../unitFile/limits.ts'
import { isPrintable, isPrintableNote } from '../unitFile/localChecks.ts'
import { unitSchema } from '../unitFile/schema.ts'

type Schema<T> = z.ZodMiniType<T, unknown>
type ShapeOf<T> = {
  [K in keyof T]-?: object extends Pick<T, K> ? z.ZodMiniExactOptional<Schema<NonNullable<T[K]>>> : Schema<T[K]>
}

/** The schema of the items of an optional list; its type is that of the list, which hides it. */
function itemOf<T>(list: Schema<T[]>): Schema<T> {
  return (list as unknown as { _zod: { def: { innerType: z.ZodMiniArray } } })._zod.def.innerType._zod.def
    .element as unknown as Schema<T>
}

const shapeOf = <T>(schema: Schema<T>): ShapeOf<T> => (schema as unknown as z.ZodMiniObject).shape as ShapeOf<T>

const face = unitSchema.shape.faces._zod.def.element
const hole = face.shape.holes._zod.def.element
const kind = { shape: shapeOf(itemOf<Kind>(unitSchema.shape.kinds)) }

const { id: _hole, ...holeRest } = hole.shape
const { id: _kind, ...kindRest } = kind.shape
const { id: _face, holes: _holes, kinds: _kinds, ranks: _ranks, trials: _trials, ...faceRest } = face.shape
const { thread: holeThread, ...holeOptional } = holeRest
const { thread: kindThread, ...kindOptional } = kindRest

export const faceFields = faceRest
/** All fields of a hole but its id; `holeChanges` without the duty to name the thread. */
export const holeFields = holeRest
export const holeChanges = { thread: z.exactOptional(holeThread), ...holeOptional }
export const kindFields = kindRest
export const kindChanges = { thread: z.exactOptional(kindThread), ...kindOptional }
export const unitFields = {
  name: unitSchema.shape.name,
  history: unitSchema.shape.history,
  tools: unitSchema.shape.tools,
  note: unitSchema.shape.note,
}
export const rankFields = shapeOf(itemOf<Rank>(face.shape.ranks))
export const trialField = itemOf<Trial>(face.shape.trials)
export const length = hole.shape.grip._zod.def.innerType
export const torque = hole.shape.torque._zod.def.innerType

const printable = z.refine<string>(isPrintable, { params: { code: 'text-unprintable' } })
/** An id of a face, hole, kind or thing. `__proto__` would mix up whoever looks something up by it. */
export const id = z.string().check(
  z.minLength(1),
  z.maxLength(LIMITS.idText),
  printable,
  z.refine((name) => name !== '__proto__', { params: { code: 'reserved-name' } }),
)
export const shortText = z.string().check(z.minLength(1), z.maxLength(LIMITS.shortText), printable)
export const note = z
  .string()
  .check(
    z.minLength(1),
    z.maxLength(LIMITS.noteText),
    z.refine(isPrintableNote, { params: { code: 'text-unprintable' } }),
  )
export const maybe = z.exactOptional
export const sha256Hex = z.string().check(z.regex(SHA256_HEX))
export const uuid = z.string().check(z.regex(UUID))
export const day = z.iso.date()
export const whole = (least: number, most: number) => z.number().check(z.int(), z.gte(least), z.lte(most))
export const above0 = z.number().check(z.gt(0), z.lte(1e9))
export const from0 = z.number().check(z.gte(0), z.lte(1e9))
/** A point on a photograph in its pixels, x to the right and y down. */
export const photoPoint = z.tuple([from0, from0])
export const atHole = { face: id, hole: id }
/** Names of fields that become unknown again. */
export const namesOf = <T extends object>(fields: T) =>
  maybe(z.array(z.enum(Object.keys(fields) as [string, ...string[]])).check(z.minLength(1), z.maxLength(LIMITS.words)))
/** A place named by what lies there; with none of them the unit. */
export const where = { face: maybe(id), hole: maybe(id) }

/** What was measured with. The uncertainty is carried to every verdict. */
export const instrument = z.strictObject({
  name: shortText,
  /** Own number of the instrument in the shop. */
  number: maybe(id),
  /** Smallest step that it shows, and its error limit, in the unit of the reading. */
  resolution: maybe(above0),
  errorLimit: maybe(from0),
  calibratedUntil: maybe(day),
})

/** What a bolt was tightened with. A tool without a reading, or none, is by feel and says so. */
export const tool = z.strictObject({
  name: shortText,
  number: maybe(id),
  calibratedUntil: maybe(day),
  /** N·m from and to which it reads. */
  range: maybe(z.tuple([from0, from0])),
  /** Largest deviation as a share of its reading: 0.04 for ±4 %. */
  deviation: maybe(z.number().check(z.gt(0), z.lte(1))),
  byFeel: maybe(z.boolean()),
})
