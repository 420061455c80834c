/** All fields of a unit with the entries that are left in them: what the fold keeps while it goes through the record. */
import { must } from '@gripbook/engine'
import { type Entry, unsurpassed, written } from './clash.ts'
import type { Write } from './events/define.ts'
import type { Event } from './events/event.ts'
import type { Json } from './events/json.ts'
import { keyOf, type Place, STEP } from './events/places.ts'
import { inOrder } from './inOrder.ts'

export type PlaceFields = {
  place: Place
  there: Entry[]
  fields: Map<string, Entry[]>
  /** Every time that the bolt was backed out. */
  backedOut: Entry[]
}

/** Places in the order in which they were first spoken of. */
export type Ledger = Map<string, PlaceFields>

/** Does what an entry says. Entries come in the order of the record; what one knew is replaced by it, what it did not know stays beside it. */
export function enter(ledger: Ledger, event: Event, writes: readonly Write[]): void {
  const spokenOf = new Set<string>()
  for (const write of writes) {
    const own = 'there' in write ? write.at.length - 2 : write.at.length
    for (let depth = 2; depth <= own; depth += 2) sayThere(ledger, write.at.slice(0, depth), event, spokenOf)
    const here = placeIn(ledger, write.at)
    if ('there' in write) {
      here.there = written(here.there, { event, value: write.there })
      spokenOf.add(keyOf(write.at))
    } else if ('backsOut' in write)
      here.backedOut = [...here.backedOut.filter((other) => other.event !== event), { event, value: null }]
    else here.fields.set(write.field, written(here.fields.get(write.field) ?? [], { event, value: write.value }))
  }
}

/** What is left in a field of a place. A stage of tightening is also held against every backing out. */
export function entriesOf(here: PlaceFields, field: string): Entry[] {
  const entries = here.fields.get(field) ?? []
  return field.startsWith(STEP) && here.backedOut.length > 0
    ? unsurpassed([...entries, ...here.backedOut].sort((a, b) => inOrder(a.event, b.event)))
    : entries
}

/** The value that an entry wrote into a field of a place; undefined when it wrote nothing there. */
export function valueIn(writes: readonly Write[], place: Place, field: string): Json | undefined {
  const key = keyOf(place)
  if (field === 'there') {
    const own = writes.find((write) => 'there' in write && keyOf(write.at) === key)
    if (own !== undefined && 'there' in own) return own.there
    return writes.some(({ at }) => keyOf(at.slice(0, place.length)) === key) ? true : undefined
  }
  for (const write of writes.toReversed()) {
    if (keyOf(write.at) !== key) continue
    if ('field' in write && write.field === field) return write.value
    if ('backsOut' in write && field.startsWith(STEP)) return null
  }
  return undefined
}

function sayThere(ledger: Ledger, place: Place, event: Event, spokenOf: Set<string>): void {
  const key = keyOf(place)
  if (spokenOf.has(key)) return
  spokenOf.add(key)
  const here = placeIn(ledger, place)
  here.there = written(here.there, { event, value: true })
}

function placeIn(ledger: Ledger, place: Place): PlaceFields {
  must(place.length % 2 === 0, 'a place is pairs of what and which', place)
  const key = keyOf(place)
  const here = ledger.get(key) ?? { place, there: [], fields: new Map(), backedOut: [] }
  ledger.set(key, here)
  return here
}
