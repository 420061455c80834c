import { type Kysely, sql, type Transaction } from 'kysely'
import type { Tables } from '../database/tables.ts'
import { again } from '../store/again.ts'

/** A transaction whose commit waits for the disk, whatever the server's setting is; a process that stops in between gives its locks back after 30 s. */
export function durably<T>(db: Kysely<Tables>, work: (trx: Transaction<Tables>) => Promise<T>): Promise<T> {
  return again(() =>
    db.transaction().execute(async (trx) => {
      await sql`
        select set_config('idle_in_transaction_session_timeout', '30000', true),
          case when current_setting('synchronous_commit', true) in ('off', 'local') then set_config('synchronous_commit', 'on', true) end`.execute(
        trx,
      )
      return work(trx)
    }),
  )
}
