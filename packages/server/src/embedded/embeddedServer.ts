/**
 * The shop's own PostgreSQL: made at the first start, started when it does not run, shared by every Gripbook on the data folder, stopped by the last
 * one that leaves. It outlives a Gripbook that was killed; the next one finds it and joins.
 *
 * Who is here is kept by the server itself: each Gripbook holds a shared lock on one connection as long as it lives, and whoever gets that lock
 * for itself alone is the last. A lock in a file would outlive a killed process; this one cannot.
 */
import { realpath, rmdir } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import pg from 'pg'
import { DatabaseError } from '../database/faults.ts'
import { accountFor } from './account.ts'
import { packagedBinaries } from './binaries.ts'
import { databaseFolder, makeDatabase, makeDataFolder, SUPERUSER } from './makeDatabase.ts'
import {
  makeSocketFolder,
  metAnother,
  PORT,
  pause,
  postmasterOf,
  removeStaleLock,
  startPostmaster,
  stopPostmaster,
} from './postmaster.ts'

/** How to connect, for `pg`. */
export type Address = { host: string; port: number; user: string; database: string }

export type EmbeddedServer = {
  /** Where it listens; starts it when it does not run. Throws `DatabaseError`. */
  address(): Promise<Address>
  /** Stops the server unless another Gripbook works with it. */
  leave(): Promise<void>
}

/** Recovery after a crash replays at most a few checkpoints' worth of changes: seconds; a slow disk may take minutes. */
const START_PATIENCE = 180_000
const STOP_PATIENCE = 30_000
const ATTACH_PATIENCE = 5_000

/** "gripbook" in ASCII, cut to the 4 bytes of a lock's number. */
const PRESENCE = 0x67726970

/** Each is PostgreSQL's default, said aloud: nothing is acknowledged before it is on the disk, a page torn by a power cut is mended. */
const DURABLE = { fsync: 'on', synchronous_commit: 'on', full_page_writes: 'on' }
const SMALL = { shared_buffers: '32MB', max_connections: '20', log_checkpoints: 'off' }

/** Here on a server: the connection that holds our presence. */
type Presence = { client: pg.Client; address: Address; gone: boolean }

export async function embeddedServer(givenFolder: string): Promise<EmbeddedServer> {
  const dataFolder = resolve(givenFolder)
  const likely = await accountFor(dataFolder)
  await makeDataFolder(dataFolder, likely)
  const binaries = await packagedBinaries(dataFolder, likely)
  const folder = databaseFolder(dataFolder, binaries.major)
  const account = await accountFor(folder, dataFolder)
  await makeDatabase(dataFolder, binaries, account)
  const log = join(dataFolder, 'postgres.log')
  let presence: Presence | null = null
  let coming: Promise<Address> | null = null

  async function come(): Promise<Address> {
    const until = performance.now() + START_PATIENCE
    let reason = 'it gave no answer in time.'
    let wait = 50
    while (performance.now() < until) {
      presence = await attach()
      if (presence !== null) return presence.address
      const socketFolder = await makeSocketFolder(folder, account)
      const settings = { ...SMALL, ...DURABLE }
      const server = await startPostmaster({ programs: binaries.folder, folder, socketFolder, log, account, settings })
      for (let said: string | null = null; performance.now() < until && said === null; said = await server.ended()) {
        presence = await attach()
        if (presence !== null) return presence.address
        await pause(20)
      }
      reason = (await server.ended()) ?? reason
      if (!metAnother(reason)) {
        await rmdir(socketFolder).catch(() => {})
        break
      }
      await pause(wait)
      wait = Math.min(2 * wait, 1_000)
      presence = await attach()
      if (presence !== null) return presence.address
      await removeStaleLock(folder)
    }
    throw new DatabaseError({ code: 'did-not-start', log, reason })
  }

  /** Null when no server answers there, or when it is about to be stopped. */
  async function attach(): Promise<Presence | null> {
    const server = await postmasterOf(folder)
    if (server === null) return null
    const address = { host: server.socketFolder, port: PORT, user: SUPERUSER, database: 'postgres' }
    const client = new pg.Client({ ...address, password: '', ssl: false, connectionTimeoutMillis: ATTACH_PATIENCE })
    const here: Presence = { client, address, gone: false }
    client.on('error', () => {
      here.gone = true
    })
    client.on('end', () => {
      here.gone = true
    })
    try {
      await client.connect()
      const { rows } = await client.query(
        `select current_setting('data_directory') as folder, pg_try_advisory_lock_shared(${PRESENCE}) as here`,
      )
      if (rows[0].here && (await realpath(rows[0].folder)) === (await realpath(folder))) return here
    } catch {
      here.gone = true
    }
    await client.end().catch(() => {})
    return null
  }

  return {
    async address() {
      if (presence !== null && !presence.gone) return presence.address
      coming ??= come().finally(() => {
        coming = null
      })
      return coming
    },
    async leave() {
      await coming?.catch(() => {})
      if (presence === null || presence.gone) return
      const { client } = presence
      await client.query(`select pg_advisory_unlock_shared(${PRESENCE})`)
      const { rows } = await client.query(`select pg_try_advisory_lock(${PRESENCE}) as last`)
      const server = await postmasterOf(folder)
      presence = null
      if (rows[0].last && server !== null) {
        if (!(await stopPostmaster(folder, server.pid, STOP_PATIENCE)))
          throw new DatabaseError({ code: 'did-not-stop', pid: server.pid })
        await rmdir(server.socketFolder).catch(() => {})
      }
      await client.end().catch(() => {})
    },
  }
}
