/** An entrance on a database, with clocks that a test sets, and as many processes as it asks for. */
import { randomBytes, randomUUID } from 'node:crypto'
import type { Kysely } from 'kysely'
import type { Tables } from '../database/tables.ts'
import type { Asking, Entrance, Role, Session } from '../entrance/entrance.ts'
import { makeEntrance } from '../entrance/makeEntrance.ts'
import { sha256 } from '../sha256.ts'

export type TestEntrance = {
  entrance: Entrance
  /** The same shop in another process. */
  another(): Entrance
  pass(milliseconds: number): void
  owner: { token: string; session: Session; asking: Asking }
  /** Someone of this role, paired on a new device or on the one that is given. */
  enter(role: Role, asking?: Asking): Promise<{ token: string; session: Session; asking: Asking }>
}

export const newDevice = (name = 'Bench tablet'): Asking => {
  const id = randomUUID()
  return { id, name, secret: sha256(id) }
}

/** Everything that lets anyone in is taken away first: each test begins with a shop that nobody owns. */
export async function testEntrance(db: Kysely<Tables>): Promise<TestEntrance> {
  for (const table of ['session', 'pairing', 'device', 'person', 'code'] as const)
    await db.deleteFrom(`entrance_${table}`).execute()
  let now = Date.parse('2026-03-02T08:00:00.000Z')
  const another = () => makeEntrance({ db, clock: () => now, random: randomBytes, elapsed: () => now })
  const entrance = another()
  const asking = newDevice('Office computer')
  const paired = await entrance.pair((await entrance.ownerCode())!, asking, { name: 'Owner' })
  const owner = { ...paired, asking }
  return {
    entrance,
    another,
    owner,
    pass(milliseconds) {
      now += milliseconds
    },
    async enter(role, device = newDevice()) {
      const { code } = await entrance.makeCode(owner.session, { name: `A ${role}`, role })
      return { ...(await entrance.pair(code, device)), asking: device }
    },
  }
}
