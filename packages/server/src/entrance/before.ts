/**
 * What a device wrote before it was paired carries an id that the device made for whoever holds it. At the pairing it names these ids, and they become the
 * new person's own, or stand for the person. Nobody may come by another's entries so: an id that anyone else has, or has written under, is passed over.
 */
import { sql, type Transaction } from 'kysely'
import type { Tables } from '../database/tables.ts'
import type { Role } from './entrance.ts'
import { MOST_OF_A_NAME } from './shapes.ts'

export const MOST_BEFORE = 20

const SUFFIX = ' (before pairing)'

/** Those of `ids` that no person has, and under which no other device has written: an archive of another shop may have brought such entries. */
export async function freeIds(trx: Transaction<Tables>, ids: readonly string[], device: string): Promise<string[]> {
  const asked = [...new Set(ids)]
  if (asked.length === 0) return []
  const rows = await trx.selectFrom('entrance_person').select('id').where('id', 'in', asked).execute()
  const taken = new Set(rows.map(({ id }) => id))
  const free: string[] = []
  for (const id of asked) if (!taken.has(id) && !(await isWrittenUnder(trx, id, device))) free.push(id)
  return free
}

/** All entries are looked through, by the text that was hashed: a second for a million of them, once for a device. */
async function isWrittenUnder(trx: Transaction<Tables>, id: string, device: string): Promise<boolean> {
  const found = await trx
    .selectFrom('record_entry')
    .select('id')
    .where('device', '!=', device)
    .where(sql<boolean>`entry like ${`%"who":"${id}"%`}`)
    .limit(1)
    .executeTakeFirst()
  return found !== undefined
}

/** They may write as a builder, as long as the person may write; nobody is signed in as one of them: they have left as they come. */
export async function keepBefore(
  trx: Transaction<Tables>,
  free: readonly string[],
  person: { id: string; name: string; role: Role },
  device: string,
  now: number,
): Promise<void> {
  const others = free.filter((id) => id !== person.id)
  if (others.length === 0 || person.role === 'viewer') return
  const name = `${[...person.name].slice(0, MOST_OF_A_NAME - SUFFIX.length).join('')}${SUFFIX}`
  const row = { name, role: 'builder' as const, since: now, left_at: now, stands_for: person.id }
  await trx
    .insertInto('entrance_person')
    .values(others.map((id) => ({ id, ...row })))
    .execute()
  await trx
    .insertInto('entrance_pairing')
    .values(others.map((id) => ({ device, person: id, since: now })))
    .execute()
}
