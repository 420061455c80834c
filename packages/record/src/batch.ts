/** The rules of `Store.append`, once for every store: a store looks up what it has, asks here, and keeps or refuses. */
import type { Hash } from './chain.ts'
import { type Event, readEvent } from './events/event.ts'
import type { Head, Refusal } from './store.ts'

/** What a store has kept that bears on a batch. */
export type Kept = {
  /** Hash of the entry with this id. */
  hashOf(id: string): string | undefined
  /** Id of the entry with this number of a device about a unit; asked only for numbers up to the head's. */
  idOf(unit: string, device: string, seq: number): string | undefined
  head(unit: string, device: string): Head | undefined
}

export type Judged =
  /** `fresh`: what is to be kept, in the order of the batch; `text`: the entry as canonical JSON. */
  | { ok: true; fresh: { event: Event; text: string }[]; known: number }
  | { ok: false; refusals: [Refusal, ...Refusal[]] }

/** An entry by itself: what can be said of it without knowing what is kept. */
export type ReadEntry =
  | { ok: true; event: Event; text: string; hasOwnHash: boolean }
  /** `path`: what is wrong with it. */
  | { ok: false; id: string; path: string }

/** The part of the work that needs no store and takes the time: shape, text and hash of every entry. */
export function readBatch(batch: readonly unknown[], hash: Hash): ReadEntry[] {
  return batch.map((given) => {
    const read = readEvent(given)
    if (!read.ok) return { ok: false, id: String((given as Event | null)?.id), path: read.path }
    const event = read.value
    return { ok: true, event, text: read.text.whole, hasOwnHash: hash(read.text.hashed) === event.hash }
  })
}

/** Judges a whole batch: every refusal is told, the first of each chain only, since those after it would but echo it. */
export function judgeBatch(batch: readonly ReadEntry[], kept: Kept): Judged {
  const refusals: Refusal[] = []
  const fresh = new Map<string, { event: Event; text: string }>()
  const heads = new Map<string, Head | undefined>()
  const broken = new Set<string>()
  let known = 0
  batch.forEach((read, index) => {
    if (!read.ok) {
      refusals.push({ index, id: read.id, code: 'malformed', path: read.path })
      return
    }
    const { event, text } = read
    const chain = `${event.unit} ${event.device}`
    if (!heads.has(chain)) heads.set(chain, kept.head(event.unit, event.device))
    const idOf = (seq: number) => {
      const earlier = [...fresh.values()].find(
        ({ event: { unit, device, seq: own } }) => own === seq && unit === event.unit && device === event.device,
      )
      return earlier?.event.id ?? kept.idOf(event.unit, event.device, seq)
    }
    const sameId = kept.hashOf(event.id) ?? fresh.get(event.id)?.event.hash
    const verdict = read.hasOwnHash ? judge(event, sameId, heads.get(chain), idOf) : ({ code: 'wrong-hash' } as const)
    if (verdict === 'known') known++
    else if (verdict !== 'fresh') {
      if (!broken.has(chain)) refusals.push({ index, id: event.id, ...verdict })
      broken.add(chain)
    } else {
      fresh.set(event.id, { event, text })
      heads.set(chain, { device: event.device, seq: event.seq, hash: event.hash })
    }
  })
  const [first, ...others] = refusals
  return first === undefined
    ? { ok: true, fresh: [...fresh.values()], known }
    : { ok: false, refusals: [first, ...others] }
}

type Reason = Refusal extends infer R ? (R extends Refusal ? Omit<R, 'index' | 'id'> : never) : never

function judge(
  event: Event,
  sameId: string | undefined,
  head: Head | undefined,
  idOf: (seq: number) => string | undefined,
): 'fresh' | 'known' | Reason {
  if (sameId !== undefined) return sameId === event.hash ? 'known' : { code: 'same-id-other-content' }
  const expected = (head?.seq ?? 0) + 1
  if (event.seq > expected) return { code: 'missing-before', expected }
  if (event.seq < expected) return { code: 'same-number-other-entry', kept: idOf(event.seq) ?? '' }
  return event.before === (head?.hash ?? null) ? 'fresh' : { code: 'broken-chain' }
}
