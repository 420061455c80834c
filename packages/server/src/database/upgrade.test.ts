/** What every earlier version has written is opened by this one: tables brought up to date, units folded to what they were. */
import { readdirSync, readFileSync } from 'node:fs'
import { fold, recordHash, unitFileOf, withoutWork, writeUnitFile } from '@gripbook/record'
import { Kysely, type Migrator, sql } from 'kysely'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { embeddedServer } from '../embedded/embeddedServer.ts'
import { sha256 } from '../sha256.ts'
import { sqlStore } from '../store/sqlStore.ts'
import type { Fixture } from '../testing/fixture.ts'
import { temporaryFolder } from '../testing/folders.ts'
import { connect } from './connect.ts'
import { MIGRATIONS, migratorOf } from './migrate.ts'
import { PlainDialect } from './plainDialect.ts'
import { poolOf } from './pool.ts'
import type { Tables } from './tables.ts'

const FOLDER = new URL('../../fixtures/', import.meta.url)
const NAMES = readdirSync(FOLDER).filter((name) => name.endsWith('.json'))

let made: Awaited<ReturnType<typeof temporaryFolder>>
beforeAll(async () => {
  made = await temporaryFolder()
})
afterAll(() => made.remove())

test('there is a shop of every version since the first', () => {
  expect(NAMES).toContain('0.1.0.json')
})

for (const name of NAMES)
  test(`[RE9] a data folder as ${name.replace('.json', '')} wrote it opens, and its units are what they were`, async () => {
    const fixture = JSON.parse(readFileSync(new URL(name, FOLDER), 'utf8')) as Fixture
    const dataFolder = `${made.folder}/${fixture.version}`
    await writtenBy(fixture, dataFolder)
    const database = await connect({}, dataFolder)
    const { rows } = await sql<{ name: string }>`select name from gripbook_migration order by name`.execute(database.db)
    expect(rows.map((row) => row.name)).toEqual(Object.keys(MIGRATIONS))
    const store = sqlStore(database.db)
    expect(await store.units()).toEqual(Object.keys(fixture.units).sort())
    for (const [unit, { record, file, clashes }] of Object.entries(fixture.units)) {
      const folded = fold(unit, await store.ofUnit(unit))
      expect(recordHash(folded.entries, sha256)).toBe(record)
      const now = unitFileOf(folded).unit
      // what is said of the work stands in the file since; everything else is as it was
      expect(now === null ? [null] : [now, withoutWork(now)].map(writeUnitFile)).toContain(file)
      expect(folded.clashes.length).toBe(clashes)
      expect(folded.notUnderstood).toEqual([])
    }
    await database.close()
  })

/** Makes a data folder of that version: its steps of migration, and no later one, then its rows. */
async function writtenBy({ migrations, tables }: Fixture, dataFolder: string): Promise<void> {
  const server = await embeddedServer(dataFolder)
  await server.address()
  const db = new Kysely<Tables>({ dialect: new PlainDialect(poolOf(server)) })
  const migrator: Migrator = migratorOf(db)
  const { error } = await migrator.migrateTo(migrations.at(-1)!)
  if (error !== undefined) throw error
  for (const [table, rows] of Object.entries(tables)) {
    await sql`delete from ${sql.table(table)}`.execute(db)
    for (const row of rows) {
      const columns = Object.keys(row)
      await sql`insert into ${sql.table(table)} (${sql.join(columns.map((column) => sql.ref(column)))}) values (${sql.join(columns.map((column) => row[column]))})`.execute(
        db,
      )
    }
  }
  await db.destroy()
  await server.leave()
}
