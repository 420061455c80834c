import { type Kysely, type Migration, type MigrationResult, Migrator, sql } from 'kysely'
import { DatabaseError } from './faults.ts'
import { before0005 } from './migrations/before0005.ts'
import { entrance0002 } from './migrations/entrance0002.ts'
import { keeping0004 } from './migrations/keeping0004.ts'
import { photographs0003 } from './migrations/photographs0003.ts'
import { record0001 } from './migrations/record0001.ts'

/** Every step, by name, in the order of the names; one that has been released is never changed, only followed by another. */
export const MIGRATIONS: Record<string, Migration> = {
  '0001-record': record0001,
  '0002-entrance': entrance0002,
  '0003-photographs': photographs0003,
  '0004-keeping': keeping0004,
  '0005-before': before0005,
}

const NO_PRIVILEGE = '42501'
const NO_SUCH_TABLE = '42P01'
/** What `create table if not exists` says when another process creates the same table at the same moment. */
const MADE_MEANWHILE = ['42P07', '42710', '23505', '40001']

/** Brings the tables up to what this version needs, each step whole or not at all; several processes may do so at once. Throws `DatabaseError`. */
export async function migrate<T>(db: Kysely<T>): Promise<readonly MigrationResult[]> {
  const migrator = migratorOf(db)
  try {
    return await alone(db, async () => {
      const { error, results } = await migrator.migrateToLatest()
      if (error !== undefined) throw error
      return results ?? []
    })
  } catch (error) {
    const { code, message } = error as { code?: string; message: string }
    if (code === NO_PRIVILEGE) throw new DatabaseError({ code: 'may-not-create', reason: message }, error)
    if (message.startsWith('corrupted migrations'))
      throw new DatabaseError({ code: 'made-by-newer', reason: message }, error)
    throw error
  }
}

/** Runs the steps, whoever sees to it that nobody else does so at the same time. */
export function migratorOf<T>(db: Kysely<T>): Migrator {
  return new Migrator({
    db,
    provider: { getMigrations: async () => MIGRATIONS },
    migrationTableName: 'gripbook_migration',
    migrationLockTableName: 'gripbook_migration_lock',
  })
}

/** One process at a time: the row is locked on one connection until the work, on another, is done. A process that dies gives it back. */
async function alone<T, R>(db: Kysely<T>, work: () => Promise<R>): Promise<R> {
  await makeLock(db)
  return db.transaction().execute(async (trx) => {
    await sql`select id from gripbook_lock where id = 1 for update`.execute(trx)
    return work()
  })
}

async function makeLock<T>(db: Kysely<T>): Promise<void> {
  const found = await sql`select id from gripbook_lock where id = 1`.execute(db).catch((error) => {
    if (error.code === NO_SUCH_TABLE) return null
    throw error
  })
  if (found?.rows.length === 1) return
  await sql`create table if not exists gripbook_lock (id integer primary key)`.execute(db).catch((error) => {
    if (!MADE_MEANWHILE.includes(error.code)) throw error
  })
  await sql`insert into gripbook_lock (id) values (1) on conflict do nothing`.execute(db)
}
