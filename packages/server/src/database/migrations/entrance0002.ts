/**
 * Who may come in: people, devices, who was ever paired on which, sessions, open codes. Times are milliseconds since 1970 by Gripbook's own clock.
 * People, devices and pairings are never deleted, so no foreign key has to hold them together, and a backup may be put back in any order.
 */
import type { Kysely, Migration } from 'kysely'

export const entrance0002: Migration = { up }

async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('entrance_shop')
    .addColumn('id', 'integer', (column) => column.primaryKey())
    .addColumn('turn', 'bigint', (column) => column.notNull())
    .execute()
  await db.schema
    .createTable('entrance_person')
    .addColumn('id', 'uuid', (column) => column.primaryKey())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('role', 'text', (column) => column.notNull())
    .addColumn('since', 'bigint', (column) => column.notNull())
    .addColumn('left_at', 'bigint')
    .execute()
  await db.schema
    .createTable('entrance_device')
    .addColumn('id', 'uuid', (column) => column.primaryKey())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('secret_hash', 'text', (column) => column.notNull())
    .addColumn('since', 'bigint', (column) => column.notNull())
    .execute()
  await db.schema
    .createTable('entrance_pairing')
    .addColumn('device', 'uuid', (column) => column.notNull())
    .addColumn('person', 'uuid', (column) => column.notNull())
    .addColumn('since', 'bigint', (column) => column.notNull())
    .addPrimaryKeyConstraint('entrance_pairing_once', ['device', 'person'])
    .execute()
  await db.schema
    .createTable('entrance_session')
    .addColumn('id', 'uuid', (column) => column.primaryKey())
    .addColumn('token_hash', 'text', (column) => column.notNull().unique())
    .addColumn('person', 'uuid', (column) => column.notNull())
    .addColumn('device', 'uuid', (column) => column.notNull())
    .addColumn('since', 'bigint', (column) => column.notNull())
    .addColumn('last_used', 'bigint', (column) => column.notNull())
    .execute()
  await db.schema
    .createTable('entrance_code')
    .addColumn('hash', 'text', (column) => column.primaryKey())
    .addColumn('expires', 'bigint')
    .addColumn('person', 'uuid')
    .addColumn('name', 'text')
    .addColumn('role', 'text')
    .addColumn('made_by', 'uuid')
    .addColumn('wrong_tries', 'integer', (column) => column.notNull())
    .execute()
  await (db as Kysely<{ entrance_shop: { id: number; turn: number } }>)
    .insertInto('entrance_shop')
    .values({ id: 1, turn: 0 })
    .execute()
}
