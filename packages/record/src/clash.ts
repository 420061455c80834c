/** True contradictions: what two devices wrote into the same field without knowing of each other. */
import { canonical } from './canonical.ts'
import type { Event } from './events/event.ts'
import type { Json } from './events/json.ts'
import type { Place } from './events/places.ts'
import type { Clash, Standing } from './unit.ts'

/** One write into one field. */
export type Entry = { event: Event; value: Json }

/** Whether the device that made `later` had `earlier` when it did. */
export function knew(later: Event, earlier: Event): boolean {
  const upTo = later.device === earlier.device ? later.seq - 1 : (later.seen[earlier.device] ?? 0)
  return earlier.seq <= upTo
}

/** The entries that are left of a field when one more is written: those that it did not know, and itself. Said twice in one entry, the last holds. */
export function written(entries: readonly Entry[], entry: Entry): Entry[] {
  const left = entries.filter(({ event }) => event !== entry.event && !knew(entry.event, event))
  // only entries with forged ticks come after one that knew them
  return left.some(({ event }) => knew(event, entry.event)) ? left : [...left, entry]
}

/** The entries that no other knew. */
export function unsurpassed(entries: readonly Entry[]): Entry[] {
  return entries.filter(({ event }) => !entries.some((other) => knew(other.event, event)))
}

/** What a field holds by the entries left of it: nothing, one value that they all agree on, or a contradiction. */
export type Held = { is: 'nothing' } | { is: 'one'; standing: Standing } | { is: 'clash'; entries: readonly Entry[] }

export function held(entries: readonly Entry[]): Held {
  const [first, ...others] = entries
  if (first === undefined) return { is: 'nothing' }
  if (others.some(({ value }) => !sameValue(value, first.value))) return { is: 'clash', entries }
  if (first.value === null) return { is: 'nothing' }
  const { id, who, at } = first.event
  return { is: 'one', standing: { value: first.value, event: id, who, at } }
}

export function clashOf(place: Place, field: string, entries: readonly Entry[]): Clash {
  return {
    place,
    field,
    entries: entries.map(({ event, value }) => ({
      event: event.id,
      device: event.device,
      who: event.who,
      at: event.at,
      value,
    })),
  }
}

function sameValue(a: Json, b: Json): boolean {
  return a === b || (typeof a === 'object' && typeof b === 'object' && canonical(a) === canonical(b))
}
