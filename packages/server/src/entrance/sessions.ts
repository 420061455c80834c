/**
 * Sessions: found by the hash of their token, listed, ended.
 *
 * What was read is kept for 3 s, so that the requests of a busy device do not each ask the database. Whoever ends a session or changes a person forgets
 * all that this process keeps, at once; another process reads anew after those 3 s at the latest, counted from before its last reading.
 */
import type { Kysely, Selectable } from 'kysely'
import { Refused } from '../app/faults.ts'
import type { Tables } from '../database/tables.ts'
import type { Person, Session } from './entrance.ts'
import { hashed } from './secrets.ts'

const HOUR = 3_600_000
const DAY = 24 * HOUR
export const IDLE_DAYS = 30
export const MOST_DAYS = 180
const KEPT_FOR = 3_000
const MOST_KEPT = 1_000
const TOKEN = /^[A-Za-z0-9_-]{43}$/

/** `clock`: ms since 1970, can be set; `elapsed`: ms since any moment, only ever goes on. */
export type Clocks = { clock: () => number; elapsed: () => number }

export type Sessions = {
  of(token: string): Promise<Session | null>
  list(person: string | null): Promise<Session[]>
  end(session: string, of: string | null): Promise<void>
  /** To be called after a change has been written, and when it is not known whether it has. */
  forget(): void
}

export function sessionsIn(db: Kysely<Tables>, { clock, elapsed }: Clocks): Sessions {
  const kept = new Map<string, { row: SessionRow; read: number }>()
  let forgotten = 0

  async function read(hash: string): Promise<SessionRow | undefined> {
    const before = forgotten
    const started = elapsed()
    const row = await sessionRows(db).where('session.token_hash', '=', hash).executeTakeFirst()
    // What was read while something changed may be from before the change.
    if (row !== undefined && forgotten === before) {
      if (kept.size >= MOST_KEPT) kept.clear()
      kept.set(hash, { row, read: started })
    }
    return row
  }

  /** Written once an hour at most: a device asks many times a minute. */
  async function used(row: SessionRow): Promise<void> {
    const now = clock()
    if (now - row.last_used < HOUR) return
    row.last_used = now
    await db
      .updateTable('entrance_session')
      .set({ last_used: now })
      .where('id', '=', row.id)
      .where('last_used', '<=', now - HOUR)
      .execute()
  }

  function forget(): void {
    forgotten++
    kept.clear()
  }

  return {
    forget,
    async of(token) {
      if (!TOKEN.test(token)) return null
      const hash = hashed(token)
      const known = kept.get(hash)
      const row = known !== undefined && elapsed() - known.read < KEPT_FOR ? known.row : await read(hash)
      if (row === undefined || row.left_at !== null || endOf(row) <= clock()) return null
      await used(row)
      return sessionFrom(row)
    },
    async list(person) {
      const rows = sessionRows(db).orderBy('session.last_used', 'desc').orderBy('session.id')
      const found = await (person === null ? rows : rows.where('session.person', '=', person)).execute()
      return found.filter((row) => row.left_at === null && endOf(row) > clock()).map(sessionFrom)
    },
    async end(session, of) {
      const one = db.deleteFrom('entrance_session').where('id', '=', session)
      try {
        const { numDeletedRows } = await (of === null ? one : one.where('person', '=', of)).executeTakeFirstOrThrow()
        if (numDeletedRows === 0n) throw new Refused('not-found')
      } finally {
        forget()
      }
    },
  }
}

/** Deletes sessions that have ended by themselves. */
export async function deleteEnded(db: Kysely<Tables>, now: number): Promise<void> {
  await db
    .deleteFrom('entrance_session')
    .where((where) =>
      where.or([where('since', '<=', now - MOST_DAYS * DAY), where('last_used', '<=', now - IDLE_DAYS * DAY)]),
    )
    .execute()
}

function endOf({ since, last_used }: { since: number; last_used: number }): number {
  return Math.min(since + MOST_DAYS * DAY, last_used + IDLE_DAYS * DAY)
}

type SessionRow = {
  id: string
  since: number
  last_used: number
  device: string
  device_name: string
  person: string
  person_name: string
  role: Person['role']
  person_since: number
  left_at: number | null
}

function sessionRows(db: Kysely<Tables>) {
  return db
    .selectFrom('entrance_session as session')
    .innerJoin('entrance_person as person', 'person.id', 'session.person')
    .innerJoin('entrance_device as device', 'device.id', 'session.device')
    .select(['session.id', 'session.since', 'session.last_used', 'session.device', 'session.person'])
    .select(['device.name as device_name', 'person.name as person_name', 'person.role'])
    .select(['person.since as person_since', 'person.left_at'])
}

export function sessionFrom(row: SessionRow): Session {
  return {
    id: row.id,
    person: personFrom({ ...row, id: row.person, name: row.person_name, since: row.person_since }),
    device: { id: row.device, name: row.device_name },
    since: iso(row.since),
    lastUsed: iso(row.last_used),
    expires: iso(endOf(row)),
  }
}

export function personFrom({
  id,
  name,
  role,
  since,
  left_at,
}: Omit<Selectable<Tables['entrance_person']>, 'stands_for'>): Person {
  return { id, name, role, since: iso(since), left: left_at === null ? null : iso(left_at) }
}

export function iso(milliseconds: number): string {
  return new Date(milliseconds).toISOString()
}
