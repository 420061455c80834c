/** What lies on the device: one IndexedDB database, whose writes are on the disk when they are reported as done. */
import type { Knowledge } from '@gripbook/record'
import { Dexie, type Table } from 'dexie'
import { DeviceFault, type ShopRefusal, storageFault } from './faults.ts'
import { beginFreshLog } from './freshLog.ts'
import { hexOf, type Place } from './place.ts'

/** Who this device is to the shop, made when it was first opened. The secret proves to the shop that it is the same device. */
export type Self = {
  key: 'self'
  id: string
  secret: string
  /** The device that this browser was before, when the database of that one was gone. */
  replaces?: string
}

/** Which tab sends at the moment, where the browser has no locks; until when, in ms since 1970. */
export type Lease = { key: 'lease'; owner: string; until: number }

/** The state of an entry that this device made. */
export type OwnState = 'waiting' | 'sent' | 'refused'

export type EntryRow = {
  /** Counts up in the order in which entries came to lie here; `unit` and `nr` together say what is new to a tab. */
  nr?: number
  id: string
  unit: string
  device: string
  seq: number
  hash: string
  /** The entry as canonical JSON: what is sent, letter for letter. */
  text: string
  /** Only of this device's own. */
  state?: OwnState
  /** ISO 8601; since when it waits. */
  since?: string
  refusal?: ShopRefusal
}

export type PhotographRow = {
  sha256: string
  bytes: number
  state: OwnState
  /** ISO 8601; when it was taken. */
  since: string
  /** Milliseconds since 1970; when it was last looked at, for making room. */
  used: number
  refusal?: ShopRefusal
}

/** A photograph lies in pieces, so that sending one never needs the whole of it in memory. */
export type PieceRow = { sha256: string; number: number; bytes: Uint8Array<ArrayBuffer> }

/** Version of the tables below; counts up with each change of them. */
const VERSION = 1

export class Database extends Dexie {
  declare readonly about: Table<Self | Lease, string>
  declare readonly knowledge: Table<Knowledge, string>
  declare readonly entries: Table<EntryRow, number>
  declare readonly photographs: Table<PhotographRow, string>
  declare readonly pieces: Table<PieceRow, [string, number]>
  /** Called when this tab has no more to do with the database. */
  leave: () => void = () => {}

  constructor(name: string) {
    // Once a newer Gripbook in another tab has taken the database over, it is not opened again behind its back.
    super(name, { chromeTransactionDurability: 'strict', autoOpen: false })
    this.version(VERSION).stores({
      about: 'key',
      knowledge: 'unit',
      entries: '++nr, &id, &[unit+device+seq], [unit+nr], state, [state+unit+seq]',
      photographs: 'sha256, state, [state+used]',
      pieces: '[sha256+number]',
    })
  }
}

/** The database and who the device is. A database of a newer Gripbook, or a damaged one, is left as it is and named by a fault. */
export async function openDatabase(
  place: Pick<Place, 'name' | 'random' | 'newId' | 'locks' | 'reusesLog' | 'marks'>,
): Promise<[Database, Self]> {
  const db = new Database(place.name)
  const mark = `gripbook-device:${place.name}`
  try {
    // Dexie would open a newer database and write its own tables into it, so its version is looked at first.
    const found = (await versionOf(place.name)) / 10
    if (found > VERSION) throw new DeviceFault('newer-version', { found, known: VERSION })
    if (found > 0) db.leave = await beginFreshLog(place)
    await db.open()
    const self = await db.transaction('rw', db.about, db.entries, db.photographs, async () => {
      const known = (await db.about.get('self')) as Self | undefined
      if (known !== undefined) return known
      // Entries without the device that made them: a new id would write on under another name.
      const left = (await db.entries.count()) + (await db.photographs.count())
      if (left > 0) throw new DeviceFault('damaged', { left })
      const before = place.marks?.getItem(mark) ?? null
      const made: Self = {
        key: 'self',
        id: place.newId(),
        secret: hexOf(place.random(32)),
        ...(before === null ? {} : { replaces: before }),
      }
      await db.about.add(made)
      return made
    })
    // Outside of the database, so that it is noticed when that was deleted behind the page's back.
    place.marks?.setItem(mark, self.id)
    return [db, self]
  } catch (error) {
    db.close()
    db.leave()
    throw storageFault(error)
  }
}

/** The version of the database that lies here, as the browser counts (ten times Dexie's); 0 when there is none, and then none is made. */
function versionOf(name: string): Promise<number> {
  return new Promise((done, fail) => {
    const opening = indexedDB.open(name)
    let none = false
    opening.onupgradeneeded = () => {
      none = true
      opening.transaction?.abort()
    }
    opening.onsuccess = () => {
      const { version } = opening.result
      opening.result.close()
      done(version)
    }
    opening.onerror = (event) => {
      event.preventDefault()
      if (none) done(0)
      else fail(opening.error)
    }
  })
}
