/** The rules of `Store.append`, once for every store: a store looks up what it has, asks here, and keeps or refuses. */
import { type Hash, hasOwnHash } from './chain.ts'
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
  /** `fresh`: what is to be kept, in the order of the batch. */
  { ok: true; fresh: Event[]; known: number } | { ok: false; refusals: [Refusal, ...Refusal[]] }

/** Judges a whole batch: every refusal is told, the first of each chain only, since those after it would but echo it. */
export function judgeBatch(batch: readonly Event[], kept: Kept, hash: Hash): Judged {
  const refusals: Refusal[] = []
  const fresh = new Map<string, Event>()
  const heads = new Map<string, Head | undefined>()
  const numbered = new Map<string, string>()
  const broken = new Set<string>()
  let known = 0
  batch.forEach((event, index) => {
    const read = readEvent(event)
    if (!read.ok) {
      refusals.push({ index, id: String((event as Event | null)?.id), code: 'malformed', path: read.path })
      return
    }
    const chain = `${event.unit} ${event.device}`
    if (!heads.has(chain)) heads.set(chain, kept.head(event.unit, event.device))
    const idOf = (seq: number) => numbered.get(`${chain} ${seq}`) ?? kept.idOf(event.unit, event.device, seq)
    const verdict = judge(event, kept.hashOf(event.id) ?? fresh.get(event.id)?.hash, heads.get(chain), idOf, hash)
    if (verdict === 'known') known++
    else if (verdict !== 'fresh') {
      if (!broken.has(chain)) refusals.push({ index, id: event.id, ...verdict })
      broken.add(chain)
    } else {
      fresh.set(event.id, event)
      numbered.set(`${chain} ${event.seq}`, event.id)
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
  hash: Hash,
): 'fresh' | 'known' | Reason {
  if (!hasOwnHash(event, hash)) return { code: 'wrong-hash' }
  if (sameId !== undefined) return sameId === event.hash ? 'known' : { code: 'same-id-other-content' }
  const expected = (head?.seq ?? 0) + 1
  if (event.seq > expected) return { code: 'missing-before', expected }
  if (event.seq < expected) return { code: 'same-number-other-entry', kept: idOf(event.seq) ?? '' }
  return event.before === (head?.hash ?? null) ? 'fresh' : { code: 'broken-chain' }
}
