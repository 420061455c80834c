import { type Kysely, type Migration, type MigrationResult, Migrator } from 'kysely'
import { DatabaseError } from './faults.ts'
import { record0001 } from './migrations/record0001.ts'

/** Every step, by name, in the order of the names; one that has been released is never changed, only followed by another. */
const MIGRATIONS: Record<string, Migration> = { 'record-0001': record0001 }

const NO_PRIVILEGE = '42501'

/** Brings the tables up to what this version needs, each step whole or not at all; several processes may do so at once. Throws `DatabaseError`. */
export async function migrate<T>(db: Kysely<T>): Promise<readonly MigrationResult[]> {
  const migrator = new Migrator({
    db,
    provider: { getMigrations: async () => MIGRATIONS },
    migrationTableName: 'gripbook_migration',
    migrationLockTableName: 'gripbook_migration_lock',
  })
  const { error, results } = await migrator.migrateToLatest()
  if (error === undefined) return results ?? []
  const reason = error instanceof Error ? error.message : String(error)
  if (reason.startsWith('corrupted migrations')) throw new DatabaseError({ code: 'made-by-newer', reason }, error)
  if ((error as { code?: string }).code === NO_PRIVILEGE)
    throw new DatabaseError({ code: 'may-not-create', reason }, error)
  throw error
}
