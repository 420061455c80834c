/**
 * `npm run fixture`: writes the tables of a small shop, as this version keeps them, to packages/server/fixtures. Run once for each released version and never
 * again: later versions must open what this one has written.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { fold, photographed, recordHash, unitFileOf, writeUnitFile } from '@gripbook/record'
import { sql } from 'kysely'
import sharp from 'sharp'
import { SAMPLES } from '../packages/record/src/testing/samples.ts'
import { seeded } from '../packages/record/src/unitFile/testing/random.ts'
import { MIGRATIONS } from '../packages/server/src/database/migrate.ts'
import { chainOf, sha256 } from '../packages/server/src/testing/chains.ts'
import { type Fixture, ownTables } from '../packages/server/src/testing/fixture.ts'
import { type SignedIn, testShop } from '../packages/server/src/testing/testShop.ts'

const ENTRIES_EACH = 60

const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string }
const path = `packages/server/fixtures/${version}.json`
if (existsSync(path)) {
  process.stderr.write(`${path} is there: what a released version has written is never written again.\n`)
  process.exit(2)
}

const shop = await testShop()
const people = [shop.owner, await shop.signIn('builder'), await shop.signIn('checker')]
const picture = await sharp({ create: { width: 90, height: 60, channels: 3, background: '#975' } })
  .jpeg()
  .toBuffer()
const photograph = sha256(picture)
await send(people[1]!, picture)
const random = seeded(2026)
for (let n = 0; n < 2; n++) {
  const first = chainOf(people[0]!)
  await append(people[0]!, [first.next(photographed({ photograph, width: 90, height: 60 }))])
  for (const person of people) {
    const chain = person === people[0] ? first : chainOf(person, first.unit)
    const types = Object.keys(SAMPLES) as (keyof typeof SAMPLES)[]
    const may = types.filter((type) => !['undone', 'clash-settled'].includes(type) && mayMake(person, type))
    const entries = Array.from({ length: ENTRIES_EACH }, (_, i) => {
      const type = may[(i + Math.floor(random() * 3)) % may.length]!
      return chain.next({ type, version: 1, body: SAMPLES[type](random) as never })
    })
    await append(person, entries)
  }
}

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

async function append(person: SignedIn, entries: object[]): Promise<void> {
  const answer = await person.ask('POST', '/api/entries', { entries })
  if (answer.statusCode !== 200) throw new Error(answer.body)
}

async function send(person: SignedIn, bytes: Buffer): Promise<void> {
  const answer = await shop.app.inject({
    method: 'PATCH',
    url: `/api/photographs/${sha256(bytes)}/upload`,
    headers: {
      host: 'localhost',
      cookie: person.cookie,
      'content-type': 'application/octet-stream',
      'upload-offset': '0',
      'upload-length': String(bytes.length),
      'upload-complete': '?1',
    },
    payload: bytes,
  })
  if (answer.statusCode !== 200) throw new Error(answer.body)
}

/** The builder of the shop vouches for nothing. */
function mayMake(person: SignedIn, type: string): boolean {
  return person !== people[1] || !['unit-released', 'face-released', 'step-signed'].includes(type)
}
