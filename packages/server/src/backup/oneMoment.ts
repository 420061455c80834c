import { type Kysely, sql, type Transaction } from 'kysely'
import type { Tables } from '../database/tables.ts'

/** Reads as if everything else stood still; long reading, with pauses while a disk or a network is slow, is not taken for a connection that was forgotten. */
export function atOneMoment<T>(db: Kysely<Tables>, work: (trx: Transaction<Tables>) => Promise<T>): Promise<T> {
  return db
    .transaction()
    .setIsolationLevel('repeatable read')
    .setAccessMode('read only')
    .execute(async (trx) => {
      await sql`select set_config('idle_in_transaction_session_timeout', '0', true)`.execute(trx)
      return work(trx)
    })
}
