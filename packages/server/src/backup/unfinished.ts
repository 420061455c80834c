import type { Kysely } from 'kysely'
import { DatabaseError } from '../database/faults.ts'
import type { Tables } from '../database/tables.ts'

/** A record that is half put back is neither added to nor handed out. Throws `DatabaseError`. */
export async function mustNotBeRestoring(db: Kysely<Tables>): Promise<void> {
  if ((await db.selectFrom('shop_restore').select('id').executeTakeFirst()) !== undefined)
    throw new DatabaseError({ code: 'restore-unfinished' })
}
