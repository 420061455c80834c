/**
 * PostgreSQL for Kysely, without the advisory lock that its migrations take: engines that only speak PostgreSQL's language do not all have one.
 * `migrate.ts` sees to it that one process migrates at a time, in one way for all, so there is no second one that is never tried.
 */
import { type DialectAdapter, PostgresAdapter, PostgresDialect, type PostgresPool } from 'kysely'

export class PlainDialect extends PostgresDialect {
  constructor(pool: PostgresPool) {
    super({ pool })
  }
  override createAdapter(): DialectAdapter {
    return new PlainAdapter()
  }
}

class PlainAdapter extends PostgresAdapter {
  override async acquireMigrationLock(): Promise<void> {}
  override async releaseMigrationLock(): Promise<void> {}
}
