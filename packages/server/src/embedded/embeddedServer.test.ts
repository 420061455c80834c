import { fork, spawn } from 'node:child_process'
import { chmod, chown, lstat, mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { sql } from 'kysely'
import { afterEach, expect, test } from 'vitest'
import { connect, type Database } from '../database/connect.ts'
import { DatabaseError } from '../database/faults.ts'
import { sqlStore } from '../store/sqlStore.ts'
import { entriesOf, UNIT } from '../testing/entries.ts'
import { temporaryFolder } from '../testing/folders.ts'
import { isRunning, killHard, killTree } from '../testing/killTree.ts'
import { makeSocketFolder, postmasterOf } from './postmaster.ts'

const cleanUp: (() => Promise<unknown>)[] = []
afterEach(async () => {
  for (const clean of cleanUp.splice(0).reverse()) await clean()
})

/** A data folder that is not there yet. */
async function newFolder(name = 'shop'): Promise<string> {
  const { folder, remove } = await temporaryFolder()
  cleanUp.push(remove)
  return join(folder, name)
}

async function open(folder: string): Promise<Database> {
  const database = await connect({}, folder)
  cleanUp.push(() => database.close().catch(() => {}))
  return database
}

async function faultOf(folder: string) {
  const error = await open(folder).then(
    () => null,
    (error: unknown) => error,
  )
  if (!(error instanceof DatabaseError)) throw new Error(`expected a fault, not ${error}`)
  return error.fault
}

const serverOf = async (folder: string) => (await postmasterOf(join(folder, 'postgres-17')))?.pid ?? null

test('a first start makes the database; nothing listens on a port, and nobody else may enter', async () => {
  const folder = await newFolder()
  const { db } = await open(folder)
  const { rows } = await sql<{ name: string; setting: string }>`
    select name, setting from pg_settings
    where name in ('listen_addresses', 'fsync', 'synchronous_commit', 'full_page_writes', 'data_checksums', 'server_encoding')
    order by name`.execute(db)
  expect(Object.fromEntries(rows.map(({ name, setting }) => [name, setting]))).toEqual({
    data_checksums: 'on',
    fsync: 'on',
    full_page_writes: 'on',
    listen_addresses: '',
    server_encoding: 'UTF8',
    synchronous_commit: 'on',
  })
  const { socketFolder } = (await postmasterOf(join(folder, 'postgres-17')))!
  for (const closed of [socketFolder, join(folder, 'postgres-17')])
    expect((await stat(closed)).mode & 0o777, closed).toBe(0o700)
})

test('two that open an empty folder at once share one server, and the last that leaves stops it', async () => {
  const folder = await newFolder()
  const [one, two] = await Promise.all([open(folder), open(folder)])
  const pid = (await serverOf(folder))!
  await sqlStore(one!.db).append(entriesOf(1, 3))
  await one!.close()
  expect(isRunning(pid)).toBe(true)
  expect(await sqlStore(two!.db).ofUnit(UNIT)).toEqual(entriesOf(1, 3))
  await two!.close()
  expect(await serverOf(folder)).toBe(null)
  expect((await readdir(folder)).sort()).toEqual(['postgres-17', 'postgres.log'])
})

test('root hands the database to the owner of the data folder', async () => {
  const folder = await newFolder()
  await mkdir(folder, { mode: 0o711 })
  const [uid, gid] = process.getuid?.() === 0 ? [33, 33] : [process.getuid!(), process.getgid!()]
  await chown(folder, uid, gid)
  const database = await open(folder)
  const owner = await stat(join(folder, 'postgres-17'))
  expect([owner.uid, owner.gid]).toEqual([uid, gid])
  await database.close()
  expect(await serverOf(folder)).toBe(null)
})

test('a folder that the database’s user cannot pass through is named, with the place', async () => {
  const folder = await newFolder()
  await mkdir(folder, { mode: 0o700 })
  if (process.getuid?.() === 0)
    expect(await faultOf(join(folder, 'deep', 'shop'))).toMatchObject({
      code: 'folder-out-of-reach',
      blockedAt: folder,
    })
  else {
    await chmod(folder, 0o500)
    expect(await faultOf(join(folder, 'deep', 'shop'))).toMatchObject({ code: 'folder-not-writable' })
  }
})

test('two that leave at once leave no server behind', async () => {
  const folder = await newFolder()
  const both = await Promise.all([open(folder), open(folder)])
  await Promise.all(both.map((database) => database.close()))
  expect(await serverOf(folder)).toBe(null)
})

test('a server that outlived a killed Gripbook is joined, not fought', async () => {
  const folder = await newFolder()
  const holder = fork(fileURLToPath(new URL('../testing/holder.ts', import.meta.url)), [folder], {
    execArgv: ['--conditions=development', '--import', 'tsx'],
  })
  await new Promise((done, failed) => {
    holder.once('message', done)
    holder.once('exit', () => failed(new Error('the holder ended')))
  })
  const pid = (await serverOf(folder))!
  holder.kill('SIGKILL')
  await new Promise((done) => holder.once('close', done))
  const database = await open(folder)
  expect(await serverOf(folder)).toBe(pid)
  await database.close()
  expect(await serverOf(folder)).toBe(null)
})

for (const [what, kill] of [
  ['killed whole', killTree],
  ['whose first process is killed', killHard],
] as const)
  test(`a server ${what} is started again at the next call`, async () => {
    const folder = await newFolder()
    const { db } = await open(folder)
    const store = sqlStore(db)
    await store.append(entriesOf(1, 2))
    const pid = (await serverOf(folder))!
    kill(pid)
    const until = performance.now() + 20_000
    let found: unknown
    // Its helpers may answer for another moment before they notice that the first process is gone.
    while (performance.now() < until && (found === undefined || (await serverOf(folder)) === pid))
      found = await store.ofUnit(UNIT).catch(() => undefined)
    expect(found).toEqual(entriesOf(1, 2))
    expect(await serverOf(folder)).not.toBe(pid)
    expect(await store.append(entriesOf(1, 3))).toEqual({ ok: true, added: 1, known: 2 })
  })

test('a lock file left by a crash whose number another program has now does not keep the server from starting', async () => {
  const folder = await newFolder()
  const database = await open(folder)
  const lock = join(folder, 'postgres-17', 'postmaster.pid')
  const text = await readFile(lock, 'utf8')
  const owner = await stat(join(folder, 'postgres-17'))
  await database.close()
  const other = spawn('sleep', ['600'], { uid: owner.uid, gid: owner.gid, cwd: '/' })
  cleanUp.push(async () => other.kill())
  await writeFile(lock, text.replace(/^\d+/, String(other.pid)), { mode: 0o600 })
  await chown(lock, owner.uid, owner.gid)
  const again = await open(folder)
  expect(await sqlStore(again.db).units()).toEqual([])
  expect(isRunning(other.pid!)).toBe(true)
})

test('a data folder whose path is longer than a socket may be, with spaces and marks in it', async () => {
  const folder = await newFolder(join('the shop’s own data '.repeat(6).trim(), "o'k; $HOME", 'd'.repeat(60)))
  await mkdir(join(folder, '..'), { recursive: true, mode: 0o711 })
  const { db } = await open(folder)
  expect(await sqlStore(db).append(entriesOf(1, 1))).toEqual({ ok: true, added: 1, known: 0 })
})

test('what lies where the database should be and is none is left alone', async () => {
  const folder = await newFolder()
  await mkdir(join(folder, 'postgres-17'), { recursive: true })
  await chmod(folder, 0o711)
  await writeFile(join(folder, 'postgres-17', 'letter.txt'), 'dear shop')
  expect((await faultOf(folder)).code).toBe('not-a-database')
  expect(await readdir(join(folder, 'postgres-17'))).toEqual(['letter.txt'])
})

test('beside a database of another version no empty one is begun', async () => {
  const folder = await newFolder()
  await (await open(folder)).close()
  await rename(join(folder, 'postgres-17'), join(folder, 'postgres-16'))
  expect(await faultOf(folder)).toMatchObject({ code: 'other-version', found: '16', expected: '17' })
})

test('a database that does not start says so in PostgreSQL’s words', async () => {
  const folder = await newFolder()
  await (await open(folder)).close()
  await writeFile(join(folder, 'postgres-17', 'postgresql.conf'), 'shared_buffers = plenty\nno_such_thing = 1\n')
  const fault = await faultOf(folder)
  expect(fault).toMatchObject({ code: 'did-not-start', log: join(folder, 'postgres.log') })
  expect((fault as { reason: string }).reason).toMatch(/no_such_thing/)
})

test('a socket’s folder that another user has put there first is not used', async () => {
  const folder = await newFolder()
  await mkdir(folder, { mode: 0o711 })
  const account = process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : null
  const own = await makeSocketFolder(folder, account)
  cleanUp.push(() => rm(own, { recursive: true }))
  await chmod(own, 0o777)
  const other = await makeSocketFolder(folder, account)
  cleanUp.push(() => rm(other, { recursive: true }))
  expect(other).not.toBe(own)
  expect((await lstat(other)).mode & 0o777).toBe(0o700)
})
