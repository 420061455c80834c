/**
 * `npm run fixture`: writes the tables of a small shop, as this version keeps them, to packages/server/fixtures. Run once for each released version and never
 * again: later versions must open what this one has written.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { fold, type Happening, recordHash, unitFileOf, writeUnitFile } from '@gripbook/record'
import { sql } from 'kysely'
import { SAMPLES } from '../packages/record/src/testing/samples.ts'
import { MIGRATIONS } from '../packages/server/src/database/migrate.ts'
import { sha256 } from '../packages/server/src/sha256.ts'
import { type Fixture, ownTables } from '../packages/server/src/testing/fixture.ts'
import { fill, type Happens } from '../packages/server/src/testing/fullShop.ts'
import { testShop } from '../packages/server/src/testing/testShop.ts'

/** Photographs are spoken of by `fill`; what is undone or settled would have to be known. */
const NOT_AT_RANDOM = ['undone', 'clash-settled', 'photographed', 'face-photographed']
const VOUCHING = ['unit-released', 'face-released', 'step-signed']
const everyKind: Happens = (random, vouches) => {
  const types = Object.keys(SAMPLES) as (keyof typeof SAMPLES)[]
  const may = types.filter((type) => !NOT_AT_RANDOM.includes(type) && (vouches || !VOUCHING.includes(type)))
  const type = may[Math.floor(random() * may.length)]!
  return { type, version: 1, body: JSON.parse(JSON.stringify(SAMPLES[type](random))) } as Happening
}

const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string }
const path = `packages/server/fixtures/${version}.json`
if (existsSync(path)) {
  process.stderr.write(`${path} is there: what a released version has written is never written again.\n`)
  process.exit(2)
}

const shop = await testShop()
await fill(shop, 2, 60, everyKind)
const tables: Fixture['tables'] = {}
for (const table of await ownTables(shop.shop.db)) {
  const { rows } = await sql<Record<string, unknown>>`select * from ${sql.table(table)}`.execute(shop.shop.db)
  tables[table] = rows
}
const units: Fixture['units'] = {}
for (const unit of await shop.store.units()) {
  const folded = fold(unit, await shop.store.ofUnit(unit))
  const file = unitFileOf(folded).unit
  units[unit] = {
    record: recordHash(folded.entries, sha256),
    file: file === null ? null : writeUnitFile(file),
    clashes: folded.clashes.length,
  }
}
const fixture: Fixture = { version, migrations: Object.keys(MIGRATIONS), tables, units }
writeFileSync(path, `${JSON.stringify(fixture, null, 1)}\n`)
process.stdout.write(`${path}: ${tables.record_entry?.length} entries of ${Object.keys(units).length} units\n`)
await shop.close()
