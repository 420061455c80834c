/** What the schema of the unit file is made of. */
import * as z from 'zod/mini'
import { LIMITS } from './limits.ts'
import { isPrintable, isPrintableNote } from './localChecks.ts'

export type Schema<T = unknown> = z.ZodMiniType<T, unknown>

/** A value of several shapes: which shape the user was writing, or undefined when it is none of them. */
export type Shapes = { shapes: readonly Schema[]; choose: (value: unknown) => Schema | undefined; what: ShapeName }
type ShapeName = 'quantity' | 'thread' | 'material' | 'washer' | 'trial' | 'need'

/** Every union of the schema with the way to tell its shapes apart, so that a fault speaks of the shape that was meant. */
export const shapesOf = new Map<unknown, Shapes>()

export function oneOf<T>(
  what: ShapeName,
  shapes: readonly Schema[],
  choose: Shapes['choose'],
  meta: { id: string; title: string },
): Schema<T> {
  const union = z.union(shapes as [Schema, ...Schema[]]).check(z.meta(meta))
  shapesOf.set(union, { shapes, choose, what })
  return union as unknown as Schema<T>
}

export const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** An optional field with its meaning, as the published schema shows it. */
export const maybe = <T>(schema: Schema<T>, meaning: string) => z.exactOptional(schema).check(z.describe(meaning))

export const text = (longest: number) =>
  z
    .string()
    .check(z.minLength(1), z.maxLength(longest), z.refine(isPrintable, { params: { code: 'text-unprintable' } }))
export const idText = text(LIMITS.idText)
export const shortText = text(LIMITS.shortText)
export const note = z
  .string()
  .check(z.maxLength(LIMITS.noteText), z.refine(isPrintableNote, { params: { code: 'text-unprintable' } }))

export const above0 = (most: number) => z.number().check(z.gt(0), z.lte(most))
export const from0 = (most: number) => z.number().check(z.gte(0), z.lte(most))
/** Names of tools, any one of which will do. */
export const toolNames = z.array(idText).check(z.minLength(1), z.maxLength(LIMITS.words))
