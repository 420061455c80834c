/**
 * The whole shop in one file while it works: everything is read in one transaction that sees one moment. Entries, people, devices and pairings, photographs; no
 * sessions and no codes, so a stolen backup lets nobody in.
 */
import { createHash } from 'node:crypto'
import { stat } from 'node:fs/promises'
import { must } from '@gripbook/engine'
import { fold, photographsOf, recordHash, stateHash } from '@gripbook/record'
import type { Kysely } from 'kysely'
import type { Shop } from '../app/shop.ts'
import { shopKey, signedBy } from '../archives/signature.ts'
import { openZip } from '../archives/zipIn.ts'
import { type FileIn, zipOf } from '../archives/zipOut.ts'
import type { Tables } from '../database/tables.ts'
import type { KeptPhotograph } from '../photographs/photographs.ts'
import { sha256 } from '../sha256.ts'
import { entryIn } from './entryIn.ts'
import { type Fault, Faults } from './fault.ts'
import {
  BACKUP_FILES,
  BACKUP_LIMITS,
  type BackupManifest,
  type BackupPeople,
  backupHash,
  backupPhotograph,
} from './manifest.ts'
import { atOneMoment } from './oneMoment.ts'
import { BadBackup, readBackup } from './readBackup.ts'
import { mustNotBeRestoring } from './unfinished.ts'
import { wholeFile } from './wholeFile.ts'

export type BackedUp = Pick<BackupManifest, 'entries' | 'absent'> & {
  units: number
  photographs: number
  bytes: number
  /** The public key that it is signed with. */
  key: string
}

/** A record with faults is not backed up: whoever restores it later would find them when it is too late. */
export class NotWhole extends Faults {
  constructor(faults: readonly Fault[]) {
    const head = 'The record is not whole, so no backup was written. `gripbook check` tells everything. What is wrong:'
    super('NotWhole', head, faults.slice(0, 20))
  }
}

const PAGE = 2_000

/**
 * Writes `file`, whole or not at all, and reads it again before it gets its name; what had that name is there until then. `version` is Gripbook's.
 * Throws `NotWhole`, `Damaged` for a photograph, `DatabaseError` for a record that is half restored.
 */
export async function backUp(
  { db, photographs, clock }: Pick<Shop, 'db' | 'photographs' | 'clock'>,
  file: string,
  version: string,
): Promise<BackedUp> {
  await mustNotBeRestoring(db)
  const written = await atOneMoment(db, async (trx) => {
    let manifest: BackupManifest | undefined
    const files = filesOf(trx, photographs, new Date(clock()).toISOString(), version, (made) => {
      manifest = made
    })
    await wholeFile(file, zipOf(files), (path) => mustRead(path, version))
    must(manifest !== undefined, 'a backup that was written has a manifest')
    return manifest
  })
  const { entries, absent, units, photographs: kept } = written
  const { size: bytes } = await stat(file)
  const key = await shopKey(db)
  return { entries, absent, units: Object.keys(units).length, photographs: kept.length, bytes, key }
}

/** What was written is what a restore will accept: chains, hashes, photographs. */
async function mustRead(path: string, version: string): Promise<void> {
  const zip = await openZip(path, BACKUP_LIMITS)
  try {
    await readBackup(zip, version)
  } catch (error) {
    throw error instanceof BadBackup ? new NotWhole(error.faults) : error
  } finally {
    zip.close()
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
      for await (const texts of entriesOf(db)) {
        entries += texts.length
        const lines = texts.map((text) => `${text}\n`).join('')
        hash.update(lines)
        yield lines
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
    must(bytes !== null, 'a photograph that is kept is never taken away', photograph)
    yield { name: backupPhotograph(photograph), bytes }
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

/** The texts of all entries, page after page, in the order in which the shop kept them, without a gap. */
async function* entriesOf(db: Kysely<Tables>): AsyncGenerator<string[]> {
  const { last } = await db.selectFrom('record_log').select('last').executeTakeFirstOrThrow()
  for (let position = 0; ; ) {
    const rows = await db
      .selectFrom('record_entry')
      .select(['position', 'entry'])
      .where('position', '>', position)
      .orderBy('position')
      .limit(PAGE)
      .execute()
    for (const row of rows) {
      position++
      if (row.position !== position)
        throw new NotWhole([{ words: `The entries kept at ${position} to ${row.position - 1} are missing.` }])
    }
    if (rows.length > 0) yield rows.map(({ entry }) => entry)
    if (rows.length === PAGE) continue
    if (position !== last)
      throw new NotWhole([{ words: `The log ends at ${last}, the entries that are kept at ${position}.` }])
    return
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
    const heads = await db.selectFrom('record_head').select(['device', 'seq']).where('unit', '=', unit).execute()
    // What is no entry is named when the file is read again.
    const events = rows.map(({ entry }) => entryIn(entry)).filter((event) => event !== null)
    for (const photograph of photographsOf(events)) spokenOf.add(photograph)
    units[unit] = {
      // As they are kept beside the entries, so that an end that was cut off is found when the file is read again.
      heads: Object.fromEntries(heads.map(({ device, seq }) => [device, seq])),
      entries: events.length,
      record: recordHash(events, sha256),
      state: stateHash(fold(unit, events), sha256),
    }
  }
  return { units, spokenOf }
}
