/** The units as this tab reads them: each entry is read from the database and parsed once. */
import { type Event, type FoldedUnit, fold, inOrder } from '@gripbook/record'
import { Dexie } from 'dexie'
import type { Database, EntryRow, OwnState } from './database.ts'
import { inWords, type ShopRefusal } from './faults.ts'
import type { NewsDesk } from './news.ts'
import { oneAtATime } from './telling.ts'

/** An entry with where it stands: 'received' came from another device. */
export type EntryHere = { event: Event; state: OwnState | 'received'; refusal?: ShopRefusal }

export type Units = {
  unitOf(unit: string): Promise<FoldedUnit>
  entriesOf(unit: string): Promise<EntryHere[]>
  units(): Promise<string[]>
  watch(unit: string, listener: (unit: FoldedUnit) => void, failed: (error: unknown) => void): () => void
}

type Read = { upTo: number; events: Event[]; folded: FoldedUnit | null }

export function unitsHere(db: Database, news: NewsDesk): Units {
  const read = new Map<string, Promise<Read>>()

  /** Reads what is new since the last time; one after the other, so that no entry is read twice. */
  function now(unit: string): Promise<Read> {
    const before = read.get(unit) ?? Promise.resolve<Read>({ upTo: 0, events: [], folded: null })
    const next = before.then((known) => inWords(() => readOn(unit, known)))
    // A read that failed leaves what was known, and the next one tries again.
    read.set(
      unit,
      next.catch(() => before),
    )
    return next
  }

  async function readOn(unit: string, known: Read): Promise<Read> {
    const rows = await db.entries.where('[unit+nr]').between([unit, known.upTo], [unit, Dexie.maxKey], false).toArray()
    const last = rows.at(-1)
    if (last === undefined) return known
    const events = [...known.events, ...rows.map(({ text }) => JSON.parse(text) as Event)]
    return { upTo: last.nr!, events, folded: null }
  }

  async function unitOf(unit: string): Promise<FoldedUnit> {
    const known = await now(unit)
    known.folded ??= fold(unit, known.events)
    return known.folded
  }

  return {
    unitOf,
    entriesOf: (unit) =>
      inWords(async () => {
        const rows = await db.entries.where('[unit+nr]').between([unit, 0], [unit, Dexie.maxKey]).toArray()
        return rows.map(here).sort((a, b) => inOrder(a.event, b.event))
      }),
    units: () => inWords(() => db.knowledge.toCollection().primaryKeys()),
    watch(unit, listener, failed) {
      let told: FoldedUnit | null = null
      const telling = oneAtATime(
        () => unitOf(unit),
        (folded) => {
          if (folded === told) return
          told = folded
          listener(folded)
        },
        failed,
      )
      const stop = news.listen((one) => {
        if (one.of === 'units' && one.units.includes(unit)) telling.tell()
      })
      telling.tell()
      return () => {
        telling.stop()
        stop()
      }
    },
  }
}

function here({ text, state, refusal }: EntryRow): EntryHere {
  return {
    event: JSON.parse(text) as Event,
    state: state ?? 'received',
    ...(refusal === undefined ? {} : { refusal }),
  }
}
