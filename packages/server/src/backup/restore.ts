/** A backup into an empty record: proven before the first write, and again from what was written. */
import type { Insertable, Kysely } from 'kysely'
import type { Shop } from '../app/shop.ts'
import { MOST_PHOTOGRAPH } from '../archives/unitArchive.ts'
import { openZip } from '../archives/zipIn.ts'
import type { Tables } from '../database/tables.ts'
import type { Fault } from './fault.ts'
import { BACKUP_LIMITS, type BackupManifest, backupPhotograph } from './manifest.ts'
import { differences } from './proveUnits.ts'
import { BadBackup, batchesOf, readBackup } from './readBackup.ts'

export type Restored = {
  entries: number
  units: number
  photographs: number
  absent: number
  /** The public key that it is signed with. A record that was restored has a key of its own, so that it is another one does not mean that another shop made it. */
  key: string | null
  /** The version of Gripbook that made it, and whether every unit folded to the very same state; by another version only its entries are compared. */
  version: string
  statesCompared: boolean
}

/** Why a record does not take a backup, in words. */
export class NotEmpty extends Error {}

const BATCH = 1_000

type Keeping = Pick<Shop, 'db' | 'store' | 'photographs'>

/**
 * Throws `BadBackup` or `BadZip` before anything was written, `NotEmpty` where there is a record already. A restore that was killed may be started again with the
 * same file; until it is done the record says so and is not served.
 */
export async function restore(keeping: Keeping, file: string, version: string): Promise<Restored> {
  const { db, store, photographs } = keeping
  // A record that takes no backup is told so at once; whether it still takes this one is decided when the backup is known.
  await mustTake(db, null)
  const zip = await openZip(file, BACKUP_LIMITS)
  try {
    const { manifest, people, signer, statesCompared } = await readBackup(zip, version)
    await begin(keeping, manifest.hash)
    await db.transaction().execute(async (trx) => {
      await insertMissing(trx, 'entrance_person', people.people)
      await insertMissing(trx, 'entrance_device', people.devices)
      await insertMissing(trx, 'entrance_pairing', people.pairings)
    })
    for (const kept of manifest.photographs)
      await photographs.takeIn(kept, await zip.read(backupPhotograph(kept.photograph), MOST_PHOTOGRAPH))
    for await (const batch of batchesOf(zip, BATCH)) {
      const answer = await store.append(batch)
      if (!answer.ok)
        throw new BadBackup(
          answer.refusals.map(({ id, code }) => ({
            words: `The entry ${id} does not fit those before it (${code}).`,
            entry: id,
          })),
        )
    }
    await prove(keeping, manifest.units, statesCompared)
    await db.deleteFrom('shop_restore').execute()
    return {
      entries: manifest.entries,
      units: Object.keys(manifest.units).length,
      photographs: manifest.photographs.length,
      absent: manifest.absent.length,
      key: signer === 'none' ? null : signer.key,
      version: manifest.version,
      statesCompared,
    }
  } finally {
    zip.close()
  }
}

/** Folds every unit from what is kept now, and compares with what the backup says it was. */
async function prove({ store }: Keeping, units: BackupManifest['units'], compareStates: boolean): Promise<void> {
  const faults: Fault[] = []
  const here = await store.units()
  if (here.join() !== Object.keys(units).sort().join())
    faults.push({ words: 'Other units are here than were backed up.' })
  for (const [unit, said] of Object.entries(units)) {
    faults.push(...differences(unit, await store.ofUnit(unit), said, compareStates))
  }
  if (faults.length > 0) throw new BadBackup(faults)
}

/** Marks the record as one that is being restored; only an empty one, or one that this same backup has begun to fill. */
async function begin({ db }: Keeping, manifest: string): Promise<void> {
  await db.transaction().execute(async (trx) => {
    await trx.selectFrom('record_log').select('last').forUpdate().executeTakeFirstOrThrow()
    const begun = await mustTake(trx, manifest)
    if (!begun) await trx.insertInto('shop_restore').values({ id: 1, manifest }).execute()
  })
}

/** Whether a restore was begun here, of this same backup (null: of whichever). Throws `NotEmpty` where there is a record, or another backup was begun. */
async function mustTake(db: Kysely<Tables>, manifest: string | null): Promise<boolean> {
  const begun = await db.selectFrom('shop_restore').select('manifest').executeTakeFirst()
  if (begun !== undefined) {
    if (manifest === null || begun.manifest === manifest) return true
    throw new NotEmpty(
      'A restore of another backup was begun here and not ended. Restore that one, or choose an empty data folder.',
    )
  }
  const { last } = await db.selectFrom('record_log').select('last').executeTakeFirstOrThrow()
  const person = await db.selectFrom('entrance_person').select('id').limit(1).executeTakeFirst()
  if (last > 0 || person !== undefined)
    throw new NotEmpty('There is a record here already: nothing was touched. Choose an empty data folder or database.')
  return false
}

/** Rows whose key is there already stay as they are. Many at once, but fewer than a statement may have parameters. */
async function insertMissing<T extends keyof Tables>(
  db: Kysely<Tables>,
  table: T,
  rows: readonly Insertable<Tables[T]>[],
): Promise<void> {
  for (let at = 0; at < rows.length; at += BATCH)
    await db
      .insertInto(table)
      .values(rows.slice(at, at + BATCH))
      .onConflict((row) => row.doNothing())
      .execute()
}
