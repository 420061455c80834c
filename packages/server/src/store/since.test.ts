/** A reader that goes on from its position misses nothing, however writers overlap; on PostgreSQL's every isolation level. */
import { Kysely, sql } from 'kysely'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { connect, type Database } from '../database/connect.ts'
import { DatabaseError } from '../database/faults.ts'
import { PlainDialect } from '../database/plainDialect.ts'
import { poolTo } from '../database/pool.ts'
import { type DebianServer, debianServer, hasDebianServer, skipWithoutDebianServer } from '../testing/debianServer.ts'
import { entriesOf, UNIT, uuid } from '../testing/entries.ts'
import { sqlStore } from './sqlStore.ts'

let server: DebianServer
const opened: { close: () => Promise<void> }[] = []
beforeEach(skipWithoutDebianServer)
beforeAll(async () => {
  if (!hasDebianServer()) return
  server = await debianServer()
  await server.start()
})
afterAll(async () => {
  await Promise.all(opened.map((each) => each.close()))
  await server?.remove()
})

async function open(url: string): Promise<Database> {
  const database = await connect({ GRIPBOOK_DATABASE_URL: url }, 'unused')
  opened.push(database)
  return database
}

test('[RE6] an append that commits late is never passed: the one that began after it waits, and both are read in order', async () => {
  const url = await server.freshDatabase()
  const reader = sqlStore((await open(url)).db)
  const other = sqlStore((await open(url)).db)
  let letCommit = () => {}
  const mayCommit = new Promise<void>((done) => {
    letCommit = done
  })
  let reached = () => {}
  const atCommit = new Promise<void>((done) => {
    reached = done
  })
  const late = (await open(url)).db.transaction().execute(async (trx) => {
    const answer = await sqlStore(trx).append(entriesOf(1, 2))
    reached()
    await mayCommit
    return answer
  })
  await atCommit
  let acknowledged = false
  const second = other.append(entriesOf(2, 2)).then((answer) => {
    acknowledged = true
    return answer
  })
  await new Promise((done) => setTimeout(done, 300))
  const early = await reader.since(null, 10)
  expect([early.events, early.position, acknowledged]).toEqual([[], null, false])

  letCommit()
  expect([await late, await second]).toEqual([
    { ok: true, added: 2, known: 0 },
    { ok: true, added: 2, known: 0 },
  ])
  const page = await reader.since(early.position, 10)
  expect(page.events).toEqual([...entriesOf(1, 2), ...entriesOf(2, 2)])
})

for (const level of ['read committed', 'repeatable read', 'serializable'])
  test(`[RE6] readers meet every entry once while four processes append at once: ${level}`, async () => {
    const url = await server.freshDatabase()
    const { db } = await open(url)
    const { rows } = await sql<{ name: string }>`select current_database() as name`.execute(db)
    await sql`alter database ${sql.ref(rows[0]!.name)} set default_transaction_isolation = ${sql.lit(level)}`.execute(
      db,
    )
    const stores = await Promise.all([1, 2, 3, 4].map(async () => sqlStore((await open(url)).db)))
    const reader = sqlStore((await open(url)).db)
    let writing = true
    const writers = stores.flatMap((store, i) =>
      [1, 2, 3].map(async (n) => {
        const events = entriesOf(10 * (i + 1) + n, 40)
        for (let at = 0; at < events.length; at += 4) await store.append(events.slice(at, at + 4))
      }),
    )
    const read = (async () => {
      const events: { device: string; seq: number; id: string }[] = []
      let position: string | null = null
      let pages = 0
      for (;;) {
        const last = !writing
        const page = await reader.since(position, 7)
        events.push(...page.events)
        position = page.position
        if (page.events.length > 0) pages++
        else if (last) return { events, pages }
      }
    })()
    await Promise.all(writers)
    writing = false
    const { events, pages } = await read
    expect(new Set(events.map(({ id }) => id)).size).toBe(480)
    expect(events.length).toBe(480)
    expect(pages).toBeGreaterThan(60)
    const heads = new Map<string, number>()
    for (const { device, seq } of events) {
      expect(seq).toBe((heads.get(device) ?? 0) + 1)
      heads.set(device, seq)
    }
  })

test('the same batch sent to two processes at once is kept once', async () => {
  const url = await server.freshDatabase()
  const stores = await Promise.all([1, 2, 3].map(async () => sqlStore((await open(url)).db)))
  const batch = entriesOf(1, 30)
  const answers = await Promise.all(stores.map((store) => store.append(batch)))
  expect(answers.map((answer) => (answer.ok ? answer.added : -1)).sort((a, b) => a - b)).toEqual([0, 0, 30])
  expect(await stores[0]!.ofUnit(UNIT)).toEqual(batch)
})

test('a position of another record, of a record before it was restored, or of nobody is refused in words', async () => {
  const one = sqlStore((await open(await server.freshDatabase())).db)
  const { db } = await open(await server.freshDatabase())
  const two = sqlStore(db)
  await one.append(entriesOf(1, 3))
  await two.append(entriesOf(1, 3))
  const foreign = (await one.since(null, 2)).position!
  const own = (await two.since(null, 3)).position!
  const beyond = own.replace(/\.\d+$/, '.4')
  for (const position of [foreign, beyond, 'x', '', `${own} or 1=1`, `${uuid(1)}.1`])
    await expect(two.since(position, 1)).rejects.toThrow(DatabaseError)
  expect((await two.since(own, 1)).events).toEqual([])
})

test('a commit waits for the disk even where the server would not', async () => {
  const url = await server.freshDatabase()
  const { db } = await open(url)
  const { rows } = await sql<{ name: string }>`select current_database() as name`.execute(db)
  await sql`alter database ${sql.ref(rows[0]!.name)} set synchronous_commit = off`.execute(db)
  const again = (await open(url)).db
  const settings: string[] = []
  await again.transaction().execute(async (trx) => {
    const look = async () => {
      const { rows } = await sql<{ synchronous_commit: string }>`show synchronous_commit`.execute(trx)
      settings.push(rows[0]!.synchronous_commit)
    }
    await look()
    await sqlStore(trx).append(entriesOf(1, 1))
    await look()
  })
  expect(settings).toEqual(['off', 'on'])
})

test('what one server alone offers is not needed: no advisory lock, no notification, no sequence', async () => {
  const url = await server.freshDatabase()
  const admin = await open(await server.freshDatabase())
  const name = new URL(url).pathname.slice(1)
  await sql`create role plain login password 'secret'`.execute(admin.db)
  await sql`alter database ${sql.ref(name)} owner to plain`.execute(admin.db)
  const inside = new Kysely({ dialect: new PlainDialect(poolTo(url)) })
  opened.push({ close: () => inside.destroy() })
  const { rows } = await sql<{ call: string }>`
    select oid::regprocedure::text as call from pg_proc
    where proname like '%advisory%' or proname in ('pg_notify', 'nextval', 'setval', 'currval', 'lastval', 'pg_current_snapshot', 'txid_current')`.execute(
    inside,
  )
  expect(rows.length).toBeGreaterThan(20)
  for (const { call } of rows) await sql`revoke execute on function ${sql.raw(call)} from public`.execute(inside)
  const plain = await open(url.replace('shop:secret', 'plain:secret'))
  await expect(sql`select pg_advisory_lock(1)`.execute(plain.db)).rejects.toThrow('permission denied')
  const store = sqlStore(plain.db)
  expect(await store.append(entriesOf(1, 3))).toEqual({ ok: true, added: 3, known: 0 })
  expect((await store.since(null, 5)).events).toEqual(entriesOf(1, 3))
})
