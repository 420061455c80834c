/**
 * PostgreSQL for Kysely, with one change: who migrates is settled by a row lock instead of an advisory lock, which engines that
 * only speak PostgreSQL's language do not all have. One way for all, so there is no second one that is never tried.
 */
import {
  type DialectAdapter,
  type Kysely,
  type MigrationLockOptions,
  PostgresAdapter,
  PostgresDialect,
  type PostgresPool,
  sql,
} from 'kysely'

export class RowLockDialect extends PostgresDialect {
  constructor(pool: PostgresPool) {
    super({ pool })
  }
  override createAdapter(): DialectAdapter {
    return new RowLockAdapter()
  }
}

class RowLockAdapter extends PostgresAdapter {
  override async acquireMigrationLock(db: Kysely<unknown>, options: MigrationLockOptions): Promise<void> {
    await sql`select id from ${sql.table(options.lockTable)} where id = ${options.lockRowId} for update`.execute(db)
  }
  /** The lock ends with the transaction. */
  override async releaseMigrationLock(): Promise<void> {}
}
