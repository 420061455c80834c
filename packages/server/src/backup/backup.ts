/**
 * The whole shop in one file while it works: everything is read in one transaction that sees one moment. Entries, people, devices and pairings, photographs; no
 * sessions and no codes, so a stolen backup lets nobody in.
 */
import { createHash, randomUUID } from 'node:crypto'
import { createWriteStream } from 'node:fs'
import { open, rename, rm, stat } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import { pipeline } from 'node:stream/promises'
import { type Event, fold, photographsOf, recordHash, stateHash } from '@gripbook/record'
import type { Kysely } from 'kysely'
import type { Shop } from '../app/shop.ts'
import { signedBy } from '../archives/signature.ts'
import { sha256 } from '../archives/unitArchive.ts'
import { type FileIn, zipOf } from '../archives/zipOut.ts'
import type { Tables } from '../database/tables.ts'
import type { KeptPhotograph } from '../photographs/photographs.ts'
import { BACKUP_FILES, type BackupManifest, type BackupPeople, backupHash, backupPhotograph } from './manifest.ts'

export type BackedUp = Pick<BackupManifest, 'entries' | 'absent'> & {
  units: number
  photographs: number
  bytes: number
}

const PAGE = 2_000

/** Writes `file`, whole or not at all; the name it had before keeps what it was until then. `version` is Gripbook's. */
export async function backUp(
  { db, photographs, clock }: Pick<Shop, 'db' | 'photographs' | 'clock'>,
  file: string,
  version: string,
): Promise<BackedUp> {
  const part = join(dirname(file), `.${basename(file)}.${randomUUID()}.part`)
  try {
    const manifest = await db
      .transaction()
      .setIsolationLevel('repeatable read')
      .setAccessMode('read only')
      .execute(async (trx) => {
        let made: BackupManifest | undefined
        const files = filesOf(trx, photographs, new Date(clock()).toISOString(), version, (manifest) => {
          made = manifest
        })
        await pipeline(zipOf(files), createWriteStream(part, { mode: 0o600, flags: 'wx' }))
        return made!
      })
    await flush(part)
    await rename(part, file)
    await flush(dirname(file))
    const { size } = await stat(file)
    const { entries, absent, units } = manifest
    return { entries, absent, units: Object.keys(units).length, photographs: manifest.photographs.length, bytes: size }
  } catch (error) {
    await rm(part, { force: true })
    throw error
  }
}

async function* filesOf(
  db: Kysely<Tables>,
  photographs: Shop['photographs'],
  at: string,
  version: string,
  made: (manifest: BackupManifest) => void,
): AsyncGenerator<FileIn> {
  const hash = createHash('sha256')
  let entries = 0
  yield {
    name: BACKUP_FILES.entries,
    bytes: (async function* () {
      for await (const text of entriesOf(db)) {
        entries++
        hash.update(text)
        yield text
      }
    })(),
  }
  const people = `${JSON.stringify(await peopleOf(db), null, 1)}\n`
  yield { name: BACKUP_FILES.people, bytes: Buffer.from(people) }
  const { units, spokenOf } = await unitsOf(db)
  const kept: KeptPhotograph[] = []
  for await (const photograph of photographs.all()) kept.push(photograph)
  for (const { photograph } of kept) {
    const bytes = await photographs.read(photograph, 'full')
    if (bytes !== null) yield { name: backupPhotograph(photograph), bytes }
  }
  const here = new Set(kept.map(({ photograph }) => photograph))
  const unhashed: BackupManifest = {
    gripbook: 'backup/1',
    version,
    at,
    entries,
    units,
    files: { [BACKUP_FILES.entries]: hash.digest('hex'), [BACKUP_FILES.people]: sha256(people) },
    photographs: kept,
    absent: [...spokenOf].filter((photograph) => !here.has(photograph)).sort(),
    hash: '',
  }
  const manifest = { ...unhashed, hash: backupHash(unhashed, sha256) }
  yield { name: BACKUP_FILES.manifest, bytes: Buffer.from(`${JSON.stringify(manifest, null, 1)}\n`) }
  yield { name: BACKUP_FILES.signature, bytes: Buffer.from(await signedBy(db, manifest.hash)) }
  made(manifest)
}

/** Every entry's text, one to a line, in the order in which the shop kept them. */
async function* entriesOf(db: Kysely<Tables>): AsyncGenerator<string> {
  for (let position = 0; ; ) {
    const rows = await db
      .selectFrom('record_entry')
      .select(['position', 'entry'])
      .where('position', '>', position)
      .orderBy('position')
      .limit(PAGE)
      .execute()
    for (const { entry } of rows) yield `${entry}\n`
    if (rows.length < PAGE) return
    position = rows.at(-1)!.position
  }
}

async function peopleOf(db: Kysely<Tables>): Promise<BackupPeople> {
  return {
    people: await db.selectFrom('entrance_person').selectAll().orderBy('id').execute(),
    devices: await db.selectFrom('entrance_device').selectAll().orderBy('id').execute(),
    pairings: await db.selectFrom('entrance_pairing').selectAll().orderBy('device').orderBy('person').execute(),
  }
}

/** One unit after the other, so that no more than one is in memory. */
async function unitsOf(db: Kysely<Tables>): Promise<{ units: BackupManifest['units']; spokenOf: Set<string> }> {
  const units: BackupManifest['units'] = {}
  const spokenOf = new Set<string>()
  const names = await db.selectFrom('record_head').select('unit').distinct().orderBy('unit').execute()
  for (const { unit } of names) {
    const rows = await db.selectFrom('record_entry').select('entry').where('unit', '=', unit).execute()
    const events = rows.map(({ entry }) => JSON.parse(entry) as Event)
    const folded = fold(unit, events)
    for (const photograph of photographsOf(events)) spokenOf.add(photograph)
    units[unit] = {
      heads: folded.heads,
      entries: events.length,
      record: recordHash(events, sha256),
      state: stateHash(folded, sha256),
    }
  }
  return { units, spokenOf }
}

/** Until what was written, or renamed in the folder, is on the disk. */
async function flush(path: string): Promise<void> {
  const handle = await open(path, 'r')
  try {
    await handle.sync()
  } finally {
    await handle.close()
  }
}
