/** The entrance of a shop, on its database. */
import type { Kysely } from 'kysely'
import type { Tables } from '../database/tables.ts'
import { makeCode, makeOwnerCode } from './codes.ts'
import type { Entrance } from './entrance.ts'
import { mustBeAllowed } from './mayEnter.ts'
import { pair } from './pair.ts'
import { changePerson, everyone } from './people.ts'
import { iso, sessionsIn } from './sessions.ts'

export type EntranceOf = {
  db: Kysely<Tables>
  /** Milliseconds since 1970. */
  clock: () => number
  /** So many random bytes, fit for secrets. */
  random: (bytes: number) => Buffer
  /** Milliseconds since any moment, by a clock that nobody sets. */
  elapsed?: () => number
}

export function makeEntrance({ db, clock, random, elapsed = () => performance.now() }: EntranceOf): Entrance {
  const sessions = sessionsIn(db, { clock, elapsed })

  /** Does what may end sessions or change what they may do. */
  async function changing<T>(work: Promise<T>): Promise<T> {
    try {
      return await work
    } finally {
      sessions.forget()
    }
  }

  return {
    sessionOf: sessions.of,
    sessions: sessions.list,
    endSession: sessions.end,
    mustBeAllowed: (session, entries) => mustBeAllowed(db, session, entries),
    ownerCode: ({ another = false } = {}) => makeOwnerCode(db, random, another),
    async makeCode(by, whom) {
      const { code, expires } = await makeCode(db, random, by.person.id, whom, clock())
      return { code, expires: iso(expires) }
    },
    pair: (code, asking, more = {}) => changing(pair(db, random, clock(), code, asking, more)),
    people: () => everyone(db),
    changePerson: (by, person, change) => changing(changePerson(db, by.person.id, person, change, clock())),
  }
}
