/**
 * What keeps the record: a database, a phone's storage, a list in memory. Every store passes `storeSuite`. A store knows nothing of what an
 * entry means: it keeps entries of types and versions that it has never heard of.
 */
import type { Event } from './events/event.ts'

/** Where reading goes on. Only the store that gave it can read it. */
export type Position = string

/** Why a batch was refused, with the place of the entry in the batch. Nothing of a refused batch is kept. */
export type Refusal = { index: number; id: string } & (
  | { code: 'malformed'; path: string }
  /** The entry's own hash does not fit its content. */
  | { code: 'wrong-hash' }
  /** An entry with this id is kept already, or stands earlier in the batch, with another content. */
  | { code: 'same-id-other-content' }
  /** The device has an entry with this number about this unit already, under another id. */
  | { code: 'same-number-other-entry'; kept: string }
  /** Entries of this device about this unit are missing in between: send from `expected` on. */
  | { code: 'missing-before'; expected: number }
  /** `before` is not the hash of the entry before it. */
  | { code: 'broken-chain' }
)

/** `added`: entries that are new. `known`: entries that were kept already. Both are durable once this has been returned. */
export type Appended =
  | { ok: true; added: number; known: number }
  | { ok: false; refusals: readonly [Refusal, ...Refusal[]] }

/** The last entry of one device about one unit. */
export type Head = { device: string; seq: number; hash: string }

export type Page = {
  events: Event[]
  /** Where to go on. The same as was asked from when nothing is new. */
  position: Position | null
  /** More is kept already beyond this page. */
  more: boolean
}

export interface Store {
  /**
   * Keeps a batch, all of it or nothing, and returns when it is durable. Sending again is harmless: what is kept already, to the letter, counts
   * as `known`. A batch may mix units and devices; entries of one device about one unit stand in order of `seq`. Two calls at the same time end as one after the other.
   */
  append(batch: readonly Event[]): Promise<Appended>
  /**
   * Up to `limit` (at least 1) entries of all units that were kept after `position`, in the order in which the store kept them; from the beginning for
   * null. Whoever reads page after page misses none, also of those kept meanwhile, and meets each once; a device's entries about a unit come in order of `seq`.
   */
  since(position: Position | null, limit: number): Promise<Page>
  /** Where reading goes on for what comes from now on; null while nothing is kept. */
  end(): Promise<Position | null>
  /** All entries of a unit, sorted by `inOrder`; empty for a unit that is not known. */
  ofUnit(unit: string): Promise<Event[]>
  /**
   * Up to `limit` (at least 1) entries of a unit that whoever has those up to these numbers (device: seq) lacks; a device's entries come in order of
   * `seq`. Asking again with what came goes on; `more` says whether to.
   */
  beyond(
    unit: string,
    have: Readonly<Record<string, number>>,
    limit: number,
  ): Promise<{ events: Event[]; more: boolean }>
  /** The last entry of each device about a unit, sorted by device; what a device compares its own with to know what to send. */
  heads(unit: string): Promise<Head[]>
  /** Ids of all units that have entries, sorted. */
  units(): Promise<string[]>
}
