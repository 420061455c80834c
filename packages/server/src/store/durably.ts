import { type Kysely, sql, type Transaction } from 'kysely'
import type { Tables } from '../database/tables.ts'
import { again } from './again.ts'

/** Where a server would say "kept" before it is: the commit of this transaction waits for the disk all the same. Part of a select list. */
export const waitsForDisk = sql`case when current_setting('synchronous_commit', true) in ('off', 'local') then set_config('synchronous_commit', 'on', true) end`

/** A process that stops in the middle of a transaction gives its locks back after 30 s. Part of a select list. */
export const givesLocksBack = sql`set_config('idle_in_transaction_session_timeout', '30000', true)`

/** A transaction whose commit waits for the disk, whatever the server's setting is; a process that stops in between gives its locks back after 30 s. */
export function durably<T>(db: Kysely<Tables>, work: (trx: Transaction<Tables>) => Promise<T>): Promise<T> {
  return again(() =>
    db.transaction().execute(async (trx) => {
      await sql`select ${givesLocksBack}, ${waitsForDisk}`.execute(trx)
      return work(trx)
    }),
  )
}
