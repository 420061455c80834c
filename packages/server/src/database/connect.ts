/** The shop's database: the one that comes with Gripbook, or a server by its address; the same tables, queries and promises for both. */
import { Kysely, sql } from 'kysely'
import { embeddedServer } from '../embedded/embeddedServer.ts'
import { DatabaseError } from './faults.ts'
import { migrate } from './migrate.ts'
import { PlainDialect } from './plainDialect.ts'
import { poolOf, poolTo } from './pool.ts'
import type { Tables } from './tables.ts'

export type Database = {
  db: Kysely<Tables>
  /** For people: the folder, or the server without the password. */
  where: string
  close(): Promise<void>
}

const OLDEST_POSTGRESQL = 15

/**
 * Opens the database, made and brought up to date where needed. `env.GRIPBOOK_DATABASE_URL` names a server; without it the database lives in
 * `dataFolder`. Throws `DatabaseError`, whose `fault` a person can put right.
 */
export async function connect(env: { GRIPBOOK_DATABASE_URL?: string }, dataFolder: string): Promise<Database> {
  const url = env.GRIPBOOK_DATABASE_URL?.trim()
  return url ? connectTo(url) : connectEmbedded(dataFolder)
}

async function connectEmbedded(dataFolder: string): Promise<Database> {
  const server = await embeddedServer(dataFolder)
  await server.address()
  const db = new Kysely<Tables>({ dialect: new PlainDialect(poolOf(server)) })
  const close = async () => {
    await db.destroy()
    await server.leave()
  }
  return opened({ db, where: dataFolder, close })
}

async function connectTo(url: string): Promise<Database> {
  const where = withoutPassword(url)
  const db = new Kysely<Tables>({ dialect: new PlainDialect(poolTo(url)) })
  return opened({ db, where, close: () => db.destroy() })
}

async function opened(database: Database): Promise<Database> {
  try {
    await mustSuit(database)
    await migrate(database.db)
    return database
  } catch (error) {
    await database.close()
    throw error
  }
}

async function mustSuit({ db, where }: Database): Promise<void> {
  const { rows } = await sql<{ version: string; encoding: string; fsync: string | null }>`
    select version() as version, current_setting('server_encoding') as encoding, current_setting('fsync', true) as fsync`
    .execute(db)
    .catch((cause: Error) => {
      throw new DatabaseError({ code: 'no-answer', where, reason: cause.message || String(cause) }, cause)
    })
  const { version, encoding, fsync } = rows[0]!
  // Only PostgreSQL itself is held to a version: engines that speak its language ("PostgreSQL 11.2-XY-2.20") count in their own way.
  const [, major, suffix] = /^PostgreSQL (\d+)(\S*)/.exec(version) ?? []
  if (major !== undefined && !suffix?.includes('-') && Number(major) < OLDEST_POSTGRESQL)
    throw new DatabaseError({ code: 'server-too-old', found: major, atLeast: OLDEST_POSTGRESQL })
  if (encoding !== 'UTF8') throw new DatabaseError({ code: 'not-utf8', found: encoding })
  if (fsync === 'off') throw new DatabaseError({ code: 'not-flushed' })
}

function withoutPassword(url: string): string {
  try {
    const { protocol, username, host, pathname, searchParams } = new URL(url)
    if (!/^postgres(ql)?:$/.test(protocol)) throw new Error(`"${protocol}" is not postgres:`)
    const at = username === '' ? '' : `${username}@`
    return `${protocol}//${at}${host || (searchParams.get('host') ?? '')}${pathname}`
  } catch (cause) {
    throw new DatabaseError({ code: 'bad-address', reason: (cause as Error).message }, cause)
  }
}
