/**
 * One entry of a unit's record, as it is made on a device, sent, stored and exported: the same object everywhere, never changed.
 *
 * Causality is carried, not guessed from clocks: `seq` orders a device's own entries, `seen` says what it had of the other devices, and
 * `tick` gives one order that all devices agree on and that never puts an entry before one that it had seen (`inOrder.ts`).
 */
import * as z from 'zod/mini'
import { isPlainAscii, isWellFormedText } from '../canonical.ts'
import { type EntryText, entryText } from '../entryText.ts'
import { SHA256_HEX, UUID } from '../identity.ts'
import { isPrintable } from '../unitFile/localChecks.ts'
import type { Json } from './json.ts'
import { sha256Hex, uuid } from './parts.ts'

/** How much one entry may hold. */
export const EVENT_LIMITS = {
  /** Characters of the entry as canonical JSON. */
  text: 1_000_000,
  /** Characters of a type, a person's or a device's id. */
  idText: 100,
  /** Devices that work on one unit. */
  devices: 1_000,
  /** Highest tick: beyond any date that `at` can hold, far below where counting on would lose digits. */
  tick: 1e15,
  /** Braces and brackets inside each other in a body. */
  depth: 32,
} as const

export type Event = {
  /** UUID made on the device; the same entry sent twice has the same id. */
  id: string
  /** UUID of the unit. */
  unit: string
  /** UUID of the device. */
  device: string
  /** 1, 2, 3 …: the device's entries about this unit. */
  seq: number
  /** The device's clock, ISO 8601 in UTC with milliseconds: `2026-03-01T09:30:00.000Z`. Shown, never trusted for the order alone. */
  at: string
  /** Milliseconds of `at` since 1970, or one more than the highest tick that the device had of this unit, whichever is greater. */
  tick: number
  /** For every other device: its highest `seq` of this unit that was on this device when the entry was made. */
  seen: Record<string, number>
  /** Id of the person. */
  who: string
  /** What happened, in the trade's words: `reading-taken`. */
  type: string
  /** Version of the body's schema. */
  version: number
  body: { [name: string]: Json }
  /** `hash` of the device's entry before this one about this unit; null for its first. */
  before: string | null
  /** SHA-256 of the canonical JSON (RFC 8785) of all the other fields, 64 lower-case hex digits. */
  hash: string
}

const whole = z.number().check(z.int(), z.gte(1), z.lte(Number.MAX_SAFE_INTEGER))
/** Everything of an entry that can be checked without knowing its type: an entry of a newer version is kept too. */
export const eventSchema = z.strictObject({
  id: uuid,
  unit: uuid,
  device: uuid,
  seq: whole,
  at: z.iso.datetime({ precision: 3 }),
  tick: z.number().check(z.int(), z.gte(1), z.lte(EVENT_LIMITS.tick)),
  seen: z.record(uuid, whole).check(z.refine((seen) => Object.keys(seen).length <= EVENT_LIMITS.devices)),
  who: z.string().check(z.minLength(1), z.maxLength(EVENT_LIMITS.idText), z.refine(isPrintable)),
  type: z.string().check(z.regex(/^[a-z]+(-[a-z]+)*$/), z.maxLength(EVENT_LIMITS.idText)),
  version: z.number().check(z.int(), z.gte(1), z.lte(1_000_000)),
  /** That it is plain JSON is looked at before (`unplainAt`). */
  body: z.record(z.string(), z.unknown()),
  before: z.nullable(sha256Hex),
  hash: sha256Hex,
})

/** An entry from anything that was parsed as JSON, or the path of what is wrong with it (`body.value`, `seq`; empty for the whole). Never throws. */
export function readEvent(value: unknown): { ok: true; value: Event; text: EntryText } | { ok: false; path: string } {
  const unplain = unplainAt(value, EVENT_LIMITS.depth)
  if (unplain !== null) return { ok: false, path: unplain.join('.') }
  if (!isEnvelope(value)) {
    const read = eventSchema.safeParse(value)
    if (!read.success) return { ok: false, path: (read.error.issues[0]?.path ?? []).join('.') }
  }
  const text = entryText(value as Event)
  if (text.whole.length > EVENT_LIMITS.text) return { ok: false, path: '' }
  return { ok: true, value: value as Event, text }
}

const TYPE = /^[a-z]+(-[a-z]+)*$/
/** The pattern that the schema itself goes by: it knows how many days a month has. */
const DAY_AND_TIME = z.regexes.datetime({ precision: 3 })
const NAMES = Object.keys(eventSchema.shape).length

/**
 * The quick way of `eventSchema`, a fifth of its time, for the many that are right: true only for what it would take. False says nothing yet. A test
 * holds the two against each other.
 */
export function isEnvelope(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false
  const { id, unit, device, seq, at, tick, seen, who, type, version, body, before, hash } = value as Record<
    string,
    unknown
  >
  return (
    Object.keys(value).length === NAMES &&
    isText(id, UUID) &&
    isText(unit, UUID) &&
    isText(device, UUID) &&
    isText(hash, SHA256_HEX) &&
    (before === null || isText(before, SHA256_HEX)) &&
    isText(type, TYPE) &&
    type.length <= EVENT_LIMITS.idText &&
    isText(at, DAY_AND_TIME) &&
    typeof who === 'string' &&
    who.length > 0 &&
    who.length <= EVENT_LIMITS.idText &&
    isPrintable(who) &&
    isWhole(seq, Number.MAX_SAFE_INTEGER) &&
    isWhole(tick, EVENT_LIMITS.tick) &&
    isWhole(version, 1_000_000) &&
    isNames(body) &&
    isSeen(seen)
  )
}

function isText(value: unknown, pattern: RegExp): value is string {
  return typeof value === 'string' && pattern.test(value)
}

function isWhole(value: unknown, most: number): boolean {
  return typeof value === 'number' && Number.isSafeInteger(value) && value >= 1 && value <= most
}

function isNames(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

function isSeen(seen: unknown): boolean {
  if (!isNames(seen)) return false
  const devices = Object.keys(seen)
  return (
    devices.length <= EVENT_LIMITS.devices &&
    devices.every((device) => UUID.test(device) && isWhole(seen[device], Number.MAX_SAFE_INTEGER))
  )
}

/**
 * Where a value is that would not come back the same from canonical JSON or from a database: half a surrogate pair, U+0000, −0, a field that
 * is undefined, the reserved name `__proto__`, nesting beyond `depth`. Null when there is none.
 */
function unplainAt(value: unknown, depth: number): string[] | null {
  if (typeof value === 'string') return isPlainText(value) ? null : []
  if (typeof value === 'number') return Number.isFinite(value) && !Object.is(value, -0) ? null : []
  if (value === null || typeof value === 'boolean') return null
  if (typeof value !== 'object' || depth === 0 || !isPlainObject(value)) return []
  for (const name of Object.keys(value)) {
    if (name === '__proto__' || !isPlainText(name)) return [name]
    const inner = unplainAt((value as Record<string, unknown>)[name], depth - 1)
    if (inner !== null) return [name, ...inner]
  }
  return null
}

/** A list, or an object of names and values: not a date, a map or anything else that JSON writes as something else. */
function isPlainObject(value: object): boolean {
  if (Array.isArray(value)) return true
  const kind: unknown = Object.getPrototypeOf(value)
  return kind === null || Object.getPrototypeOf(kind) === null
}

function isPlainText(text: string): boolean {
  return isPlainAscii(text) || (isWellFormedText(text) && !text.includes('\u0000'))
}
