/** Whether a device may send these entries for these people. */
import { type Event, isUuid } from '@gripbook/record'
import type { Kysely } from 'kysely'
import { Refused } from '../app/faults.ts'
import type { Tables } from '../database/tables.ts'
import type { Role, Session } from './entrance.ts'

/** At most one query, however many entries there are, and none when all are the person's own who is signed in. */
export async function mustBeAllowed(db: Kysely<Tables>, session: Session, entries: readonly Event[]): Promise<void> {
  const { device, person } = session
  const elsewhere = entries.findIndex((entry) => entry.device !== device.id)
  if (elsewhere !== -1) throw new Refused('other-device', { index: elsewhere })
  const roles = new Map<string, Role>([[person.id, person.role]])
  const others = [...new Set(entries.map(({ who }) => who))].filter((who) => who !== person.id && isUuid(who))
  if (others.length > 0) {
    const rows = await db
      .selectFrom('entrance_pairing as pairing')
      .innerJoin('entrance_person as person', 'person.id', 'pairing.person')
      .leftJoin('entrance_person as meant', 'meant.id', 'person.stands_for')
      .select(['person.id', 'person.role', 'meant.role as meant'])
      .where('pairing.device', '=', device.id)
      .where('person.id', 'in', others)
      .execute()
    // An id from before the pairing is no way round what has become of its person since.
    for (const { id, role, meant } of rows) roles.set(id, meant === 'viewer' ? meant : role)
  }
  entries.forEach((entry, index) => {
    const role = roles.get(entry.who)
    if (role === undefined) throw new Refused('other-device', { index })
    if (!mayWrite(role, entry)) throw new Refused('not-allowed', { index })
  })
}

/** Whether a person of this role may make this entry. */
export function mayWrite(role: Role, { type, body }: Pick<Event, 'type' | 'body'>): boolean {
  if (role === 'viewer') return false
  const vouches =
    type === 'unit-released' || type === 'face-released' || (type === 'step-signed' && body.as === 'checker')
  return !vouches || role === 'checker' || role === 'owner'
}
