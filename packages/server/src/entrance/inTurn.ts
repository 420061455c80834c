import { type Kysely, sql, type Transaction } from 'kysely'
import type { Tables } from '../database/tables.ts'
import { durably } from '../store/durably.ts'

/**
 * Changes of who may come in, one after the other over all processes: two devices with one code, two owners who leave at once. The turn is written, not
 * only locked, so that an engine that takes locks lightly finds out at the commit. A process that stops in between gives it back after 30 s.
 */
export function inTurn<T>(db: Kysely<Tables>, work: (trx: Transaction<Tables>) => Promise<T>): Promise<T> {
  return durably(db, async (trx) => {
    await sql`update entrance_shop set turn = turn + 1 where id = 1`.execute(trx)
    return work(trx)
  })
}
