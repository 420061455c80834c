import type { Store } from '@gripbook/record'
import { storeSuite } from '@gripbook/record'
import { sql } from 'kysely'
import { afterAll, beforeAll, beforeEach, describe, test } from 'vitest'
import { connect, type Database } from '../database/connect.ts'
import { type DebianServer, debianServer, hasDebianServer, skipWithoutDebianServer } from '../testing/debianServer.ts'
import { temporaryFolder } from '../testing/folders.ts'
import { sqlStore } from './sqlStore.ts'

describe('embedded PostgreSQL', () => {
  const open: { database?: Database; folder?: string; remove?: () => Promise<void> } = {}
  beforeAll(async () => {
    Object.assign(open, await temporaryFolder())
    open.database = await connect({}, `${open.folder}/shop`)
  })
  afterAll(async () => {
    await open.database?.close()
    await open.remove?.()
  })
  const empty = async (): Promise<Store> => {
    const { db } = open.database!
    await sql`delete from record_entry`.execute(db)
    await sql`delete from record_head`.execute(db)
    await sql`update record_log set last = 0`.execute(db)
    return sqlStore(db)
  }
  const reopen = async (): Promise<Store> => {
    await open.database!.close()
    open.database = await connect({}, `${open.folder}/shop`)
    return sqlStore(open.database.db)
  }
  for (const { title, run } of storeSuite(empty, reopen)) test(title, run)
})

describe('a PostgreSQL server by its address', () => {
  beforeEach(skipWithoutDebianServer)
  const opened: Database[] = []
  let server: DebianServer
  let url = ''
  beforeAll(async () => {
    if (!hasDebianServer()) return
    server = await debianServer()
    await server.start()
  })
  afterAll(async () => {
    await Promise.all(opened.map((database) => database.close()))
    await server?.remove()
  })
  const openAt = async (address: string): Promise<Store> => {
    const database = await connect({ GRIPBOOK_DATABASE_URL: address }, 'unused')
    opened.push(database)
    return sqlStore(database.db)
  }
  const empty = async (): Promise<Store> => {
    url = await server.freshDatabase()
    return openAt(url)
  }
  for (const { title, run } of storeSuite(empty, () => openAt(url))) test(title, run)
})
