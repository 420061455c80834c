/**
 * The state of a unit as a pure function of the set of its entries. In which order they came, and whether some came twice, makes no difference:
 * they are put in the one order of the record first (`inOrder`), and fields are judged by who knew of whom (`clash.ts`), not by who was last.
 */
import { assemble } from './assemble.ts'
import { knew } from './clash.ts'
import { type BodyOf, type BodyRead, readBody } from './events/catalogue.ts'
import type { Definition, Write } from './events/define.ts'
import type { Event } from './events/event.ts'
import { keyOf } from './events/places.ts'
import { inOrder } from './inOrder.ts'
import { enter, type Ledger, valueIn } from './ledger.ts'
import type { FoldedUnit, NotUnderstood } from './unit.ts'

/** An entry with its body in the present version. */
export type Understood = { event: Event; definition: Definition; body: unknown }

/** The unit with this id from all entries that there are of it; entries of other units are passed over. */
export function fold(unit: string, events: Iterable<Event>): FoldedUnit {
  const entries = eachOnce(unit, events)
  const understood: Understood[] = []
  const notUnderstood: NotUnderstood[] = []
  for (const event of entries) {
    const read = bodyOf(event)
    if (read.ok) understood.push({ event, definition: read.definition, body: read.body })
    else {
      const { ok: _, ...why } = read
      notUnderstood.push({ event: event.id, type: event.type, version: event.version, ...why })
    }
  }
  const undoneBy = undoings(understood)
  const standing = understood.filter(({ event }) => !undoneBy.has(event.id))
  const ledger: Ledger = new Map()
  const done = new Map<string, { event: Event; writes: readonly Write[] }>()
  for (const { event, definition, body } of standing) {
    const settles = definition.type === 'clash-settled'
    const writes = settles ? settling(event, body as BodyOf<'clash-settled'>, ledger, done) : definition.writes(body)
    enter(ledger, event, writes)
    done.set(event.id, { event, writes })
  }
  return assemble(unit, { entries, standing, notUnderstood, undoneBy, ledger })
}

/** The unit after more entries, new or known, in any order. */
export function foldMore(folded: FoldedUnit, events: Iterable<Event>): FoldedUnit {
  return fold(folded.id, [...folded.entries, ...events])
}

/** Bodies that were read already: an entry is never changed, and checking it again would be half the work of folding again after each new one. */
const bodies = new WeakMap<Event, BodyRead>()

/** `readBody`, once for each entry. */
export function bodyOf(event: Event): BodyRead {
  const known = bodies.get(event)
  if (known !== undefined) return known
  const read = readBody(event)
  bodies.set(event, read)
  return read
}

/** Every entry of the unit once, in order. Should two differ under one id (no store keeps such), the one with the lower hash is taken everywhere. */
function eachOnce(unit: string, events: Iterable<Event>): Event[] {
  const byId = new Map<string, Event>()
  for (const event of events) {
    const other = byId.get(event.id)
    if (event.unit === unit && (other === undefined || event.hash < other.hash)) byId.set(event.id, event)
  }
  return [...byId.values()].sort(inOrder)
}

/**
 * Which entries are undone, and by which. From the end backwards: an undoing that is itself undone does nothing. Only what its device knew can be
 * undone; an undoing that names anything else stays on the record without effect.
 */
function undoings(understood: readonly Understood[]): Map<string, string> {
  const byId = new Map(understood.map(({ event }) => [event.id, event]))
  const undoneBy = new Map<string, string>()
  for (const { event, definition, body } of understood.toReversed()) {
    if (definition.type !== 'undone' || undoneBy.has(event.id)) continue
    const target = byId.get((body as BodyOf<'undone'>).event)
    if (target !== undefined && knew(event, target)) undoneBy.set(target.id, event.id)
  }
  return undoneBy
}

/**
 * A clash is settled by writing the value of the entry that holds once more, by someone who knew it. The value comes from that entry itself, not
 * from what is left of the field: two who settle the same clash differently, neither knowing of the other, are a clash again.
 */
export function settling(
  event: Event,
  { at, field, stands }: BodyOf<'clash-settled'>,
  ledger: { has(key: string): boolean },
  done: ReadonlyMap<string, { event: Event; writes: readonly Write[] }>,
): Write[] {
  if (!ledger.has(keyOf(at))) return []
  const holds = stands === null ? undefined : done.get(stands)
  if (stands !== null && (holds === undefined || !knew(event, holds.event))) return []
  const value = holds === undefined ? null : valueIn(holds.writes, at, field)
  if (value === undefined) return []
  return [field === 'there' ? { at, there: value !== false } : { at, field, value }]
}
