/** Ids under which a person wrote on a device before it was paired: each a person of its own, by whom it is meant. */
import type { Kysely, Migration } from 'kysely'

export const before0005: Migration = { up }

async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema.alterTable('entrance_person').addColumn('stands_for', 'uuid').execute()
}
