/**
 * What every kind of entry is defined by: the schema of its body (type, check and published JSON Schema come from this one), what it does to
 * the unit, and its sentence. A definition is also the way to say that it happened: `noteWritten({ text: '…' })`.
 */
import type * as z from 'zod/mini'
import type { Json } from './json.ts'
import type { Place } from './places.ts'

/**
 * What an entry does to the unit. Writes are data, so that two devices that did not know of each other can be compared field by field.
 * Whatever is written at a place says that the place, and what it lies in, is there.
 */
export type Write =
  /** `value` holds in this field; null makes it unknown again. */
  | { at: Place; field: string; value: Json }
  /** The place is there, or was taken away (a hole that is none). */
  | { at: Place; there: boolean }
  /** The stages of tightening reached here no longer hold: the bolt is out again. */
  | { at: Place; backsOut: true }

export type Definition<T extends string = string, B = unknown> = {
  readonly type: T
  /** Of `body`; counts up when an older body would no longer pass. */
  readonly version: number
  readonly body: z.ZodMiniType<B, unknown>
  /** The step from each version to the next: `[from 1 to 2, from 2 to 3]`. As many as `version` − 1; a step is never changed once released. */
  readonly upgrades: readonly ((body: Json) => Json)[]
  writes(body: B): Write[]
  /** What happened, in one sentence without who and when. */
  say(body: B): string
}

/** What a device hands to `nextEntry`, beside id, clock and person. */
export type Happening<T extends string = string> = { type: T; version: number; body: { [name: string]: Json } }

export type Happens<T extends string, B> = Definition<T, B> & ((body: B) => Happening<T>)

type Given<T extends string, B> = Omit<Definition<T, B>, 'version' | 'upgrades'> &
  Partial<Pick<Definition<T, B>, 'version' | 'upgrades'>>

export function defineEvent<const T extends string, B>(given: Given<T, B>): Happens<T, B> {
  const definition: Definition<T, B> = { version: 1, upgrades: [], ...given }
  const happens = (body: B): Happening<T> => ({
    type: definition.type,
    version: definition.version,
    body: body as { [name: string]: Json },
  })
  return Object.assign(happens, definition)
}

/** One write for every field of a body that is given, but those named. */
export function writeFields(at: Place, body: object, ...but: readonly string[]): Write[] {
  return Object.entries(body)
    .filter(([field]) => !but.includes(field))
    .map(([field, value]) => ({ at, field, value: value as Json }))
}

/** The writes that make fields unknown again. */
export function forget(at: Place, fields: readonly string[] = []): Write[] {
  return fields.map((field) => ({ at, field, value: null }))
}
