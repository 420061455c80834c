/** Making the next entry on a device: pure, so id, clock and hash are handed in. */
import { type Hash, hashOf } from './chain.ts'
import type { Event } from './events/event.ts'
import { tickAfter } from './inOrder.ts'

/** What a device has of one unit, as far as its next entry depends on it. */
export type Knowledge = {
  unit: string
  device: string
  /** The device's own last entry about this unit. */
  seq: number
  last: string | null
  /** Highest tick of any entry of this unit that is on the device. */
  tick: number
  /** For every other device the highest number up to which all its entries are here. */
  seen: Record<string, number>
}

export type Given = { id: string; at: string; who: string } & Pick<Event, 'type' | 'version' | 'body'>

/** What `device` knows when these are all the entries of `unit` that it has; in any order, the same ones twice do no harm. */
export function knowledgeOf(unit: string, device: string, events: readonly Event[]): Knowledge {
  const nothing: Knowledge = { unit, device, seq: 0, last: null, tick: 0, seen: {} }
  return [...events].sort((a, b) => a.seq - b.seq).reduce(learn, nothing)
}

/** What a device knows after one more entry. An entry that came before those it follows is left out: it counts when it comes again in its turn. */
export function learn(knowledge: Knowledge, event: Event): Knowledge {
  const own = event.device === knowledge.device
  const have = own ? knowledge.seq : (knowledge.seen[event.device] ?? 0)
  if (event.unit !== knowledge.unit || event.seq !== have + 1) return knowledge
  const tick = Math.max(knowledge.tick, event.tick)
  return own
    ? { ...knowledge, seq: event.seq, last: event.hash, tick }
    : { ...knowledge, tick, seen: { ...knowledge.seen, [event.device]: event.seq } }
}

/** The device's next entry, with number, tick, what it had seen, and its place in the chain. `given.at` is the device's clock, right or wrong. */
export function nextEntry(knowledge: Knowledge, given: Given, hash: Hash): Event {
  const unhashed = {
    ...given,
    unit: knowledge.unit,
    device: knowledge.device,
    seq: knowledge.seq + 1,
    tick: tickAfter(given.at, knowledge.tick),
    seen: knowledge.seen,
    before: knowledge.last,
  }
  return { ...unhashed, hash: hashOf(unhashed, hash) }
}
