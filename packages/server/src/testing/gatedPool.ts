import type { PostgresPool } from 'kysely'
import pg from 'pg'
import { TYPES } from '../database/pool.ts'

/** Connections on which a test can look at, or hold up, each statement before it is sent. */
export function gatedPool(
  url: string,
  before: (statement: string, client: pg.PoolClient) => Promise<void>,
): PostgresPool {
  const pool = new pg.Pool({ connectionString: url, max: 2, types: TYPES })
  pool.on('error', () => {})
  return {
    async connect() {
      const client = await pool.connect()
      return {
        async query(statement: string, parameters: unknown[]) {
          await before(statement, client)
          return client.query(statement, parameters)
        },
        release: () => client.release(),
      } as unknown as Awaited<ReturnType<PostgresPool['connect']>>
    },
    end: () => pool.end(),
  }
}
