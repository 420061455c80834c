/** The device's own entries on their way to the shop: what waits, what was taken, what was refused, what has to go again. */
import type { Head } from '@gripbook/record'
import { Dexie } from 'dexie'
import type { Database, EntryRow, Self } from './database.ts'
import type { ShopRefusal } from './faults.ts'

const LAST = Number.MAX_SAFE_INTEGER

/** Units with entries that can go now. A unit whose first waiting entry stands behind a refused one is not among them. */
export async function unitsToSend(db: Database): Promise<string[]> {
  const firsts = await firstOfEach(db, 'waiting')
  const refused = await firstOfEach(db, 'refused')
  return [...firsts].flatMap(([unit, seq]) => (seq < (refused.get(unit) ?? LAST) ? [unit] : []))
}

/** The lowest number of each unit in a state: one step of the index per unit, however many entries wait. */
async function firstOfEach(db: Database, state: 'waiting' | 'refused'): Promise<Map<string, number>> {
  const firsts = new Map<string, number>()
  for (let after: [string, string | number, number] = [state, Dexie.minKey, LAST]; ; ) {
    const row = await db.entries
      .where('[state+unit+seq]')
      .between(after, [state, Dexie.maxKey, LAST], false, true)
      .first()
    if (row === undefined) return firsts
    firsts.set(row.unit, row.seq)
    after = [state, row.unit, LAST]
  }
}

/** The next entries of a unit to send, in order of their numbers: none behind a refused one, at most `most`, and `bytes` of text (but always one). */
export async function nextBatch(
  db: Database,
  unit: string,
  { most, bytes }: { most: number; bytes: number },
): Promise<EntryRow[]> {
  return db.transaction('r', db.entries, async () => {
    const refused = await inState(db, 'refused', unit).first()
    const rows = await inState(db, 'waiting', unit).limit(most).toArray()
    const utf8 = new TextEncoder()
    let used = 0
    return rows.filter(({ seq, text }, index) => {
      used += utf8.encode(text).length
      return seq < (refused?.seq ?? LAST) && (index === 0 || used <= bytes)
    })
  })
}

export async function markSent(db: Database, rows: readonly EntryRow[]): Promise<void> {
  await db.transaction('rw', db.entries, async () => {
    for (const { nr } of rows) await db.entries.where('nr').equals(nr!).modify(sentNow)
  })
}

export function sentNow(row: EntryRow): void {
  row.state = 'sent'
  delete row.refusal
}

export async function markRefused(db: Database, row: EntryRow, refusal: ShopRefusal): Promise<void> {
  await db.entries.update(row.nr!, { state: 'refused', refusal })
}

/** Refused entries wait again: of a unit, or of all for those refused for one of these reasons. Returns the units that changed. */
export async function waitAgain(
  db: Database,
  which: { unit: string } | { codes: readonly string[] },
): Promise<string[]> {
  const units = new Set<string>()
  await db.transaction('rw', db.entries, async () => {
    const refused = 'unit' in which ? inState(db, 'refused', which.unit) : db.entries.where('state').equals('refused')
    await refused
      .filter(({ refusal }) => 'unit' in which || which.codes.includes(refusal?.code ?? ''))
      .modify((row: EntryRow) => {
        row.state = 'waiting'
        delete row.refusal
        units.add(row.unit)
      })
  })
  return [...units]
}

/** Entries that were taken once and that the shop lacks now wait again, from this number on. Returns them. */
export async function lostFrom(db: Database, unit: string, seq: number): Promise<EntryRow[]> {
  return db.transaction('rw', db.entries, async () => {
    const lost = await db.entries
      .where('[state+unit+seq]')
      .between(['sent', unit, seq], ['sent', unit, LAST], true, true)
      .toArray()
    for (const { nr } of lost) await db.entries.update(nr!, { state: 'waiting' })
    return lost
  })
}

/**
 * Holds what the shop has of this device about a unit against what lies here. Waiting and refused entries that it has are sent (the answer was
 * lost, or they came to it another way), sent ones that it lacks wait again. Where the shop has another entry at that number, nothing counts as found: sending then tells the reason.
 */
export async function compare(
  db: Database,
  self: Self,
  unit: string,
  heads: readonly Head[],
): Promise<{ lost: EntryRow[]; found: number; shopHasMore: boolean }> {
  return db.transaction('rw', db.entries, async () => {
    const head = heads.find(({ device }) => device === self.id)
    const there = head?.seq ?? 0
    const row = await db.entries.where('[unit+device+seq]').equals([unit, self.id, there]).first()
    const last = await db.entries
      .where('[unit+device+seq]')
      .between([unit, self.id, 0], [unit, self.id, LAST], true, true)
      .last()
    // Only the same entry at the shop's last number proves that those up to it are the same: each holds the hash of the one before.
    const found =
      row !== undefined && row.hash === head?.hash
        ? await db.entries
            .where('[state+unit+seq]')
            .between(['waiting', unit, 0], ['waiting', unit, there], true, true)
            .or('[state+unit+seq]')
            .between(['refused', unit, 0], ['refused', unit, there], true, true)
            .modify(sentNow)
        : 0
    const lost = await lostFrom(db, unit, there + 1)
    return { lost, found, shopHasMore: there > (last?.seq ?? 0) }
  })
}

/** Units about which this device has written, the one that something happened to last first. */
export async function unitsWritten(db: Database): Promise<string[]> {
  const written = await db.knowledge.filter(({ seq }) => seq > 0).toArray()
  return written.sort((a, b) => b.tick - a.tick).map(({ unit }) => unit)
}

function inState(db: Database, state: 'waiting' | 'refused', unit: string) {
  return db.entries.where('[state+unit+seq]').between([state, unit, 0], [state, unit, LAST], true, true)
}
