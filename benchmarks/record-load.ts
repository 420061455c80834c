/**
 * How fast entries become durable, beside the plainest way to put the same rows into the same database: one multi-row INSERT for each batch and
 * nothing else (no check, no hash, no chain, no order), into a table with the same columns and keys. On the embedded PostgreSQL and, where it is installed, Debian's.
 */

import { connect, type Database, sqlStore, type Tables } from '@gripbook/server'
import { type Kysely, sql } from 'kysely'
import { debianServer, hasDebianServer } from '../packages/server/src/testing/debianServer.ts'
import { temporaryFolder } from '../packages/server/src/testing/folders.ts'
import { canonical, type Event, entriesFrom } from './recordEntries.ts'
import { median, short, table } from './table.ts'

const DEVICES = 8
const BATCH = 100
const BATCHES_EACH = 25
const ROUNDS = 5

export async function recordLoad(print: (line: string) => void): Promise<void> {
  const { folder, remove } = await temporaryFolder()
  const embedded = await connect({}, folder)
  await measure('embedded PostgreSQL', embedded, print)
  await embedded.close()
  await remove()
  if (!hasDebianServer())
    return print('PostgreSQL from Debian is not installed: not measured (apt-get install postgresql).')
  const server = await debianServer()
  await server.start()
  const served = await connect({ GRIPBOOK_DATABASE_URL: await server.freshDatabase() }, folder)
  await measure('PostgreSQL by its address', served, print)
  await served.close()
  await server.remove()
}

async function measure(name: string, { db }: Database, print: (line: string) => void): Promise<void> {
  await sql`create table plain_row (like record_entry including all)`.execute(db)
  const store = sqlStore(db)
  const rates: { kept: number[]; plain: number[] } = { kept: [], plain: [] }
  for (let round = 0; round < ROUNDS; round++) {
    const chains = Array.from({ length: DEVICES }, (_, device) =>
      entriesFrom(round * DEVICES + device, BATCH * BATCHES_EACH),
    )
    // Turn and turn about, so that whatever slows the machine slows both.
    const both = [
      async () => rates.kept.push(await rate(chains, (batch) => store.append(batch))),
      async () => rates.plain.push(await rate(chains, plainInsert(db, chains))),
    ]
    for (const one of round % 2 === 0 ? both : both.reverse()) await one()
  }
  const ratio = rates.kept.map((kept, round) => kept / rates.plain[round]!)
  const row = (what: string, values: readonly number[]) => [
    what,
    short(median(values)),
    short(Math.min(...values)),
    short(Math.max(...values)),
  ]
  print(`${name}, ${DEVICES} devices at once, batches of ${BATCH}, each acknowledged when durable:`)
  print('')
  print(
    table(
      ['entries per second', 'median', 'least', 'most'],
      [row('appended to the record', rates.kept), row('plain multi-row INSERT', rates.plain), row('ratio', ratio)],
    ),
  )
  print('')
}

async function rate(
  chains: readonly (readonly Event[])[],
  keep: (batch: readonly Event[]) => Promise<unknown>,
): Promise<number> {
  const from = performance.now()
  await Promise.all(
    chains.map(async (chain) => {
      for (let at = 0; at < chain.length; at += BATCH) await keep(chain.slice(at, at + BATCH))
    }),
  )
  const count = chains.reduce((sum, chain) => sum + chain.length, 0)
  return count / ((performance.now() - from) / 1_000)
}

/** The rows are ready: what is timed is their way into a table with the same columns and keys. */
function plainInsert(
  db: Kysely<Tables>,
  chains: readonly (readonly Event[])[],
): (batch: readonly Event[]) => Promise<unknown> {
  const texts = new Map(chains.flat().map((event) => [event, canonical(event)]))
  let position = Date.now() * 1_000
  return (batch) =>
    (db as unknown as Kysely<{ plain_row: Tables['record_entry'] }>)
      .insertInto('plain_row')
      .values(
        batch.map((event) => {
          const { id, unit, device, seq, hash } = event
          return { position: position++, id, unit, device, seq, hash, entry: texts.get(event)! }
        }),
      )
      .execute()
}
