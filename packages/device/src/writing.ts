/** Writing entries: the device's own, and those of others that came from the shop. */
import {
  type Event,
  type Happening,
  type Knowledge,
  knowledgeOf,
  learn,
  nextEntry,
  readBody,
  readEvent,
  sha256OfText,
} from '@gripbook/record'
import type { Database, EntryRow, Self } from './database.ts'
import { DeviceFault } from './faults.ts'
import type { Place } from './place.ts'
import { sentNow } from './waiting.ts'

/** Why an entry that came was not stored. */
export type NotStored = { id: string } & (
  | { code: 'malformed'; path: string }
  | { code: 'wrong-hash' }
  /** Another entry has its id, or its number in its device's chain. */
  | { code: 'other-entry-there'; there: string }
)

export type Stored = { added: number; units: string[]; notStored: NotStored[] }

/**
 * The next entries of this device about a unit, all of them or none, and resolves when they are on the disk. Number and place in the chain are
 * read and the entries written in one transaction, so two tabs that write at once make one chain.
 * Errors: `DeviceFault` 'bad-entry'; what the database throws otherwise.
 */
export async function writeOwn(
  db: Database,
  self: Self,
  place: Pick<Place, 'clock' | 'newId'>,
  given: { unit: string; who: string; happenings: readonly Happening[] },
): Promise<Event[]> {
  for (const happening of given.happenings) mustBeSound(happening)
  const { unit, who } = given
  return db.transaction('rw', db.knowledge, db.entries, async () => {
    let knowledge = await knowledgeHere(db, self, unit)
    const made: Event[] = []
    const rows: EntryRow[] = []
    for (const { type, version, body } of given.happenings) {
      const at = new Date(place.clock()).toISOString()
      const event = nextEntry(knowledge, { id: place.newId(), at, who, type, version, body }, sha256OfText)
      const read = readEvent(event)
      if (!read.ok) throw new DeviceFault('bad-entry', { type, path: read.path })
      knowledge = learn(knowledge, event)
      made.push(event)
      rows.push({ ...rowOf(event, read.text.whole), state: 'waiting', since: at })
    }
    await db.entries.bulkAdd(rows)
    await db.knowledge.put(knowledge)
    return made
  })
}

function mustBeSound({ type, version, body }: Happening): void {
  const read = readBody({ type, version, body })
  if (read.ok) return
  const { ok: _, ...why } = read
  throw new DeviceFault('bad-entry', { type, ...why })
}

/**
 * Stores entries that came from the shop. Any order, any number of times: what is here already stays. One of this device's own that comes back
 * counts as sent, whatever stood against it. What cannot be read or has another hash than its content is told and not stored.
 */
export async function storeForeign(db: Database, self: Self, entries: readonly unknown[]): Promise<Stored> {
  const notStored: NotStored[] = []
  const sound: { event: Event; text: string }[] = []
  for (const entry of entries) {
    const read = readEvent(entry)
    if (!read.ok) notStored.push({ id: String((entry as Event | null)?.id), code: 'malformed', path: read.path })
    else if (sha256OfText(read.text.hashed) !== read.value.hash)
      notStored.push({ id: read.value.id, code: 'wrong-hash' })
    else sound.push({ event: read.value, text: read.text.whole })
  }
  const changed = new Set<string>()
  let added = 0
  if (sound.length === 0) return { added, units: [], notStored }
  await db.transaction('rw', db.knowledge, db.entries, async () => {
    const here = new Map(
      (
        await db.entries
          .where('id')
          .anyOf(sound.map(({ event }) => event.id))
          .toArray()
      ).map((row) => [row.id, row]),
    )
    const grown = new Map<string, Set<string>>()
    for (const { event, text } of sound) {
      const same = here.get(event.id)
      if (same?.hash === event.hash) {
        if (same.state === undefined || same.state === 'sent') continue
        await db.entries.where('nr').equals(same.nr!).modify(sentNow)
        changed.add(event.unit)
        continue
      }
      const there = same ?? (await atNumber(db, event))
      if (there !== undefined) {
        notStored.push({ id: event.id, code: 'other-entry-there', there: there.id })
        continue
      }
      const own = event.device === self.id
      const row: EntryRow = { ...rowOf(event, text), ...(own ? { state: 'sent', since: event.at } : {}) }
      row.nr = await db.entries.add(row)
      here.set(event.id, row)
      added++
      changed.add(event.unit)
      grown.set(event.unit, (grown.get(event.unit) ?? new Set()).add(event.device))
    }
    for (const [unit, devices] of grown) await learnMore(db, self, unit, devices)
  })
  return { added, units: [...changed], notStored }
}

/** What the device knows of a unit after entries of these devices came; those that had come before their turn count now. */
async function learnMore(db: Database, self: Self, unit: string, devices: Iterable<string>): Promise<void> {
  let knowledge = await knowledgeHere(db, self, unit)
  for (const device of devices) {
    const from = numberOf(knowledge, device) + 1
    const chain = await db.entries
      .where('[unit+device+seq]')
      .between([unit, device, from], [unit, device, Number.MAX_SAFE_INTEGER], true, true)
      .toArray()
    for (const { text } of chain) knowledge = learn(knowledge, JSON.parse(text) as Event)
  }
  await db.knowledge.put(knowledge)
}

/** The number up to which all entries of a device are here. */
export function numberOf(knowledge: Knowledge, device: string): number {
  return device === knowledge.device ? knowledge.seq : (knowledge.seen[device] ?? 0)
}

export async function knowledgeHere(db: Database, self: Self, unit: string): Promise<Knowledge> {
  return (await db.knowledge.get(unit)) ?? knowledgeOf(unit, self.id, [])
}

function atNumber(db: Database, { unit, device, seq }: Event): Promise<EntryRow | undefined> {
  return db.entries.where('[unit+device+seq]').equals([unit, device, seq]).first()
}

function rowOf(event: Event, text: string): EntryRow {
  const { id, unit, device, seq, hash } = event
  return { id, unit, device, seq, hash, text }
}
