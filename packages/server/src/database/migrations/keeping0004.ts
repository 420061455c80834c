/** The key that the shop signs archives and backups with, and whether a restore is under way. */
import { generateKeyPairSync } from 'node:crypto'
import type { Kysely, Migration } from 'kysely'

export const keeping0004: Migration = { up }

async function up(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('shop_key')
    .addColumn('id', 'integer', (column) => column.primaryKey())
    .addColumn('public_key', 'text', (column) => column.notNull())
    .addColumn('private_key', 'text', (column) => column.notNull())
    .execute()
  await db.schema
    .createTable('shop_restore')
    .addColumn('id', 'integer', (column) => column.primaryKey())
    .addColumn('manifest', 'text', (column) => column.notNull())
    .execute()
  const { publicKey, privateKey } = generateKeyPairSync('ed25519')
  await (db as Kysely<{ shop_key: { id: number; public_key: string; private_key: string } }>)
    .insertInto('shop_key')
    .values({
      id: 1,
      public_key: publicKey.export({ type: 'spki', format: 'der' }).subarray(-32).toString('hex'),
      private_key: privateKey.export({ type: 'pkcs8', format: 'pem' }).toString(),
    })
    .execute()
}
