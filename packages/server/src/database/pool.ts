/** Connections, lent to one transaction at a time. */
import type { PostgresPool } from 'kysely'
import pg from 'pg'
import type { EmbeddedServer } from '../embedded/embeddedServer.ts'
import { pause } from '../embedded/postmaster.ts'

/** The embedded server takes 20 in all; two Gripbooks on one folder, and a backup, must fit. */
const MOST_CONNECTIONS = 6
const CONNECT_PATIENCE = 10_000
const RESTART_PATIENCE = 60_000

const EIGHT_BYTE_INTEGER = 20

/** Whole numbers of 8 bytes come as `number`, see `Tables`. */
const TYPES: NonNullable<pg.PoolConfig['types']> = {
  getTypeParser: ((type: number, format: never) =>
    type === EIGHT_BYTE_INTEGER ? Number : pg.types.getTypeParser(type, format)) as typeof pg.types.getTypeParser,
}

const COMMON: pg.PoolConfig = {
  max: MOST_CONNECTIONS,
  connectionTimeoutMillis: CONNECT_PATIENCE,
  keepAlive: true,
  application_name: 'gripbook',
  types: TYPES,
}

export function poolTo(url: string): PostgresPool {
  return quiet(new pg.Pool({ ...COMMON, connectionString: url }))
}

/** Connections to the embedded server, which is started again when it has died. */
export function poolOf(server: EmbeddedServer): PostgresPool {
  const pool = quiet(new pg.Pool({ ...COMMON, password: '', ssl: false }))
  return {
    async connect() {
      const until = performance.now() + RESTART_PATIENCE
      for (;;) {
        Object.assign(pool.options, await server.address())
        try {
          return await pool.connect()
        } catch (error) {
          if (!isDown(error) || performance.now() > until) throw error
          await pause(50)
        }
      }
    },
    end: () => pool.end(),
  }
}

/**
 * A connection that breaks while nobody waits on it tells so by an event, and an event that nobody listens to ends the process. Whoever uses the
 * connection next is told by its query.
 */
function quiet(pool: pg.Pool): pg.Pool {
  const unheard = () => {}
  pool.on('error', unheard)
  pool.on('connect', (client) => client.on('error', unheard))
  return pool
}

/** Nobody listens, or PostgreSQL says that it is starting, stopping or recovering. */
function isDown(error: unknown): boolean {
  const { code, message } = error as { code?: string; message?: string }
  return (
    ['ECONNREFUSED', 'ENOENT', 'ECONNRESET', 'EPIPE', '57P01', '57P02', '57P03'].includes(code ?? '') ||
    /Connection terminated/.test(message ?? '')
  )
}
