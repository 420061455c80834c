/**
 * The fields of a unit as they are filled by entries that come in any order. The fold goes through the record once, in order; a device that takes
 * part learns an older entry after a newer one, and for every entry that it makes the gates need what it knew. So each field also keeps up to
 * which entry of each device it was known by whoever wrote here: an entry that comes late and was known is not let in.
 */
import { type Entry, knew } from '../clash.ts'
import type { Write } from '../events/define.ts'
import type { Event } from '../events/event.ts'
import { keyOf, type Place } from '../events/places.ts'
import { inOrder } from '../inOrder.ts'
import type { Ledger, PlaceFields } from '../ledger.ts'

/** Number up to which entries of a device were known, by device. */
type Frontier = Map<string, number>

export type Registers = {
  ledger: Ledger
  /** Does what an entry says. Every entry once, in any order: what is left is what the fold would leave. */
  enter(event: Event, writes: readonly Write[]): void
}

/** `touched` is told every place that an entry writes to. */
export function registers(touched: (place: Place) => void): Registers {
  const ledger: Ledger = new Map()
  const frontiers = new Map<string, Frontier>()

  const placeAt = (place: Place): PlaceFields => {
    const key = keyOf(place)
    let here = ledger.get(key)
    if (here === undefined) {
      here = { place, there: [], fields: new Map(), backedOut: [] }
      ledger.set(key, here)
    }
    return here
  }
  const frontierOf = (place: Place, field: string): Frontier => {
    const key = keyOf([...place, '', field])
    let frontier = frontiers.get(key)
    if (frontier === undefined) {
      frontier = new Map()
      frontiers.set(key, frontier)
    }
    return frontier
  }
  const sayThere = (place: Place, event: Event, value: boolean): void => {
    const here = placeAt(place)
    here.there = written(here.there, { event, value }, frontierOf(place, 'there'))
  }

  const enter = (event: Event, writes: readonly Write[]): void => {
    const spokenOf = new Set<string>()
    for (const write of writes) {
      const own = 'there' in write ? write.at.length - 2 : write.at.length
      for (let depth = 2; depth <= own; depth += 2) {
        const place = write.at.slice(0, depth)
        const key = keyOf(place)
        if (!spokenOf.has(key)) sayThere(place, event, true)
        spokenOf.add(key)
      }
      if ('there' in write) {
        sayThere(write.at, event, write.there)
        spokenOf.add(keyOf(write.at))
      } else {
        const here = placeAt(write.at)
        if ('backsOut' in write)
          here.backedOut = [...here.backedOut.filter((other) => other.event !== event), { event, value: null }]
        else {
          // a field of its own name beside `there`
          const frontier = frontierOf(write.at, `field ${write.field}`)
          here.fields.set(
            write.field,
            written(here.fields.get(write.field) ?? [], { event, value: write.value }, frontier),
          )
        }
      }
      touched(write.at)
    }
  }
  return { ledger, enter }
}

/** What is left of a field after one more entry, whenever it comes. */
function written(left: readonly Entry[], entry: Entry, frontier: Frontier): Entry[] {
  const { event } = entry
  const late = event.seq <= (frontier.get(event.device) ?? 0)
  raise(frontier, event.device, event.seq - 1)
  for (const device in event.seen) raise(frontier, device, event.seen[device]!)
  const others = left.filter((other) => other.event !== event && !knew(event, other.event))
  if (late) return others
  const isLast = others.every((other) => inOrder(other.event, event) < 0)
  others.push(entry)
  return isLast ? others : others.sort((a, b) => inOrder(a.event, b.event))
}

function raise(frontier: Frontier, device: string, to: number): void {
  if (to > (frontier.get(device) ?? 0)) frontier.set(device, to)
}
