/**
 * The chain of one device's entries about one unit: each carries the hash of its own content and of the one before, so that a changed, missing
 * or moved entry is found and named.
 */
import { entryText } from './entryText.ts'
import type { Event } from './events/event.ts'
import { inOrder, tickAfter } from './inOrder.ts'

/** SHA-256 of a text as UTF-8, 64 lower-case hex digits. `sha256OfText`, or the server's own. */
export type Hash = (text: string) => string

/** An entry without its hash: what the hash is made of. */
export type Unhashed = Omit<Event, 'hash'>

export type ChainFault = {
  event: string
  device: string
  seq: number
} /** The content is not the one that was hashed. */ & (
  | { code: 'changed' }
  /** The device's entries from `from` to `to` about this unit are not there; `event` is the first after them. */
  | { code: 'missing'; from: number; to: number }
  /** It follows another entry than the one with the number before: one of the two was exchanged or moved. */
  | { code: 'does-not-follow'; before: string }
  /** Two entries of the device have this number. */
  | { code: 'number-twice'; other: string }
  /** Two entries have this id. */
  | { code: 'id-twice' }
  /** Its tick is not the one that its clock and the entries that it had seen give: it was moved, or its device counts wrongly. */
  | { code: 'wrong-tick'; expected: number }
  /** It stands after an entry with a higher number of the same device. Told only for lists that claim an order. */
  | { code: 'moved'; after: string }
)

export function hashOf(unhashed: Unhashed, hash: Hash): string {
  return hash(entryText({ ...unhashed, hash: '' }).hashed)
}

export function hasOwnHash(event: Event, hash: Hash): boolean {
  return hashOf(event, hash) === event.hash
}

/**
 * Every fault in the chains of one unit's entries; empty when all are whole. The list may be in any order. What was cut off at the end of a chain
 * leaves no trace in it: give `heads` (device: last seq), as a manifest or a signature holds them, to find that too.
 */
export function chainFaults(events: readonly Event[], hash: Hash, heads: Record<string, number> = {}): ChainFault[] {
  const faults: ChainFault[] = []
  const ids = new Set<string>()
  const changed = new Set<Event>()
  const chains = new Map<string, Event[]>()
  for (const event of [...events].sort((a, b) => a.seq - b.seq || inOrder(a, b))) {
    if (!hasOwnHash(event, hash)) {
      faults.push({ ...named(event), code: 'changed' })
      changed.add(event)
    }
    if (ids.has(event.id)) faults.push({ ...named(event), code: 'id-twice' })
    ids.add(event.id)
    const chain = chains.get(event.device)
    if (chain === undefined) chains.set(event.device, [event])
    else chain.push(event)
  }
  for (const device of Object.keys(heads)) if (!chains.has(device)) chains.set(device, [])
  for (const [device, chain] of chains) {
    faults.push(...linkFaults(chain))
    const last = chain.at(-1)?.seq ?? 0
    const head = heads[device] ?? last
    if (head > last) faults.push({ event: '', device, seq: head, code: 'missing', from: last + 1, to: head })
  }
  return [...faults, ...tickFaults(events.filter((event) => !changed.has(event)))]
}

/** Entries of one device that stand, in a list that claims to be in the order of the record, after one of a higher number. */
export function movedFaults(events: readonly Event[]): ChainFault[] {
  const highest = new Map<string, Event>()
  return events.flatMap((event): ChainFault[] => {
    const before = highest.get(event.device)
    if (before !== undefined && before.seq > event.seq) return [{ ...named(event), code: 'moved', after: before.id }]
    highest.set(event.device, event)
    return []
  })
}

function linkFaults(chain: readonly Event[]): ChainFault[] {
  const faults: ChainFault[] = []
  let before: Event | undefined
  for (const event of chain) {
    const expected = (before?.seq ?? 0) + 1
    if (event.seq > expected) faults.push({ ...named(event), code: 'missing', from: expected, to: event.seq - 1 })
    else if (event.seq < expected && before !== undefined)
      faults.push({ ...named(event), code: 'number-twice', other: before.id })
    else if (event.before !== (before?.hash ?? null))
      faults.push({ ...named(event), code: 'does-not-follow', before: before?.id ?? '' })
    before = event
  }
  return faults
}

/** Ticks that cannot be, among entries whose content is whole. While entries that were seen are not here, only that the tick is above those that are. */
function tickFaults(events: readonly Event[]): ChainFault[] {
  const ticksOf = new Map(events.map(({ device, seq, tick }) => [`${device} ${seq}`, tick]))
  return events.flatMap((event): ChainFault[] => {
    const known = [[event.device, event.seq - 1] as const, ...Object.entries(event.seen)].filter(([, seq]) => seq > 0)
    const ticks = known.map(([device, seq]) => ticksOf.get(`${device} ${seq}`))
    const highest = ticks.reduce<number>((most, tick) => Math.max(most, tick ?? 0), 0)
    const least = tickAfter(event.at, highest)
    const isRight = ticks.includes(undefined) ? event.tick >= least : event.tick === least
    return isRight ? [] : [{ ...named(event), code: 'wrong-tick', expected: least }]
  })
}

function named({ id, device, seq }: Event): { event: string; device: string; seq: number } {
  return { event: id, device, seq }
}
