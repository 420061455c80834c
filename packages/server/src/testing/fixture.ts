/** The tables of a small shop as a released version has written them: later versions must open them and fold the same units. */
import { type Kysely, sql } from 'kysely'
import type { Tables } from '../database/tables.ts'

export type Fixture = {
  version: string
  /** Names of the steps that had made the tables. */
  migrations: string[]
  tables: Record<string, Record<string, unknown>[]>
  /** What the units were: the hash of their entries, their unit file, how many contradictions were shown. */
  units: Record<string, { record: string; file: string | null; clashes: number }>
}

/** Names of the tables that hold something of the shop, not of the migrating itself. */
export async function ownTables(db: Kysely<Tables>): Promise<string[]> {
  const { rows } = await sql<{ name: string }>`
    select table_name as name from information_schema.tables
    where table_schema = current_schema() and table_name not like 'gripbook%' order by table_name`.execute(db)
  return rows.map(({ name }) => name)
}
