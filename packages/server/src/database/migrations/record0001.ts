/** The record itself: what was kept, in which order, and the end of each device's chain. */
import { randomUUID } from 'node:crypto'
import type { Kysely, Migration } from 'kysely'

export const record0001: Migration = { up }

async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('record_log')
    .addColumn('id', 'integer', (column) => column.primaryKey())
    .addColumn('lineage', 'uuid', (column) => column.notNull())
    .addColumn('last', 'bigint', (column) => column.notNull())
    .execute()
  await db.schema
    .createTable('record_entry')
    .addColumn('position', 'bigint', (column) => column.primaryKey())
    .addColumn('id', 'uuid', (column) => column.notNull().unique())
    .addColumn('unit', 'uuid', (column) => column.notNull())
    .addColumn('device', 'uuid', (column) => column.notNull())
    .addColumn('seq', 'bigint', (column) => column.notNull())
    .addColumn('hash', 'text', (column) => column.notNull())
    .addColumn('entry', 'text', (column) => column.notNull())
    .addUniqueConstraint('record_entry_in_chain', ['unit', 'device', 'seq'])
    .execute()
  await db.schema
    .createTable('record_head')
    .addColumn('unit', 'uuid', (column) => column.notNull())
    .addColumn('device', 'uuid', (column) => column.notNull())
    .addColumn('seq', 'bigint', (column) => column.notNull())
    .addColumn('hash', 'text', (column) => column.notNull())
    .addColumn('position', 'bigint', (column) => column.notNull())
    .addPrimaryKeyConstraint('record_head_of_chain', ['unit', 'device'])
    .execute()
  await (db as Kysely<{ record_log: { id: number; lineage: string; last: number } }>)
    .insertInto('record_log')
    .values({ id: 1, lineage: randomUUID(), last: 0 })
    .execute()
}
