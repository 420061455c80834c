/** Photographs: those that are kept, and the pieces of those that are on their way. The bytes of the kept ones lie in a folder or a store. */
import { type Kysely, type Migration, sql } from 'kysely'

export const photographs0003: Migration = { up }

async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('photograph_kept')
    // Sorted by its letters on every server, so that page follows page everywhere.
    .addColumn('photograph', sql`text collate "C"`, (column) => column.primaryKey())
    .addColumn('sha256', 'text', (column) => column.notNull())
    .addColumn('bytes', 'bigint', (column) => column.notNull())
    .addColumn('width', 'integer', (column) => column.notNull())
    .addColumn('height', 'integer', (column) => column.notNull())
    .addColumn('small_1280', 'text', (column) => column.notNull())
    .addColumn('small_320', 'text', (column) => column.notNull())
    .addColumn('at', 'bigint', (column) => column.notNull())
    .execute()
  await db.schema
    .createTable('photograph_upload')
    .addColumn('photograph', 'text', (column) => column.notNull())
    .addColumn('device', 'uuid', (column) => column.notNull())
    .addColumn('total', 'bigint', (column) => column.notNull())
    .addColumn('received', 'bigint', (column) => column.notNull())
    .addColumn('last_at', 'bigint', (column) => column.notNull())
    .addPrimaryKeyConstraint('photograph_upload_once', ['photograph', 'device'])
    .execute()
  await db.schema
    .createTable('photograph_piece')
    .addColumn('photograph', 'text', (column) => column.notNull())
    .addColumn('device', 'uuid', (column) => column.notNull())
    .addColumn('from_byte', 'bigint', (column) => column.notNull())
    .addColumn('bytes', 'bytea', (column) => column.notNull())
    .addPrimaryKeyConstraint('photograph_piece_once', ['photograph', 'device', 'from_byte'])
    .execute()
}
