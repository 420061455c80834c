/** The people of the shop. */
import type { Kysely, Transaction } from 'kysely'
import { Refused } from '../app/faults.ts'
import type { Tables } from '../database/tables.ts'
import type { Change, Person } from './entrance.ts'
import { inTurn } from './inTurn.ts'
import { personFrom } from './sessions.ts'

export async function everyone(db: Kysely<Tables>): Promise<Person[]> {
  const rows = await db.selectFrom('entrance_person').selectAll().orderBy('since').orderBy('id').execute()
  return rows.map(personFrom)
}

export function changePerson(
  db: Kysely<Tables>,
  by: string,
  person: string,
  { name, role, left }: Change,
  now: number,
): Promise<Person> {
  return inTurn(db, async (trx) => {
    await mustBeOwner(trx, by)
    const was = await trx.selectFrom('entrance_person').selectAll().where('id', '=', person).executeTakeFirst()
    if (was === undefined) throw new Refused('not-found')
    const left_at = left === undefined ? was.left_at : left ? (was.left_at ?? now) : null
    const is = { ...was, name: name ?? was.name, role: role ?? was.role, left_at }
    await trx.updateTable('entrance_person').set(is).where('id', '=', person).execute()
    if (isOwner(was) && !isOwner(is)) {
      if (!(await hasOwner(trx))) throw new Refused('last-owner')
      await trx.deleteFrom('entrance_code').where('made_by', '=', person).execute()
    }
    if (is.left_at !== null) {
      await trx.deleteFrom('entrance_session').where('person', '=', person).execute()
      await trx.deleteFrom('entrance_code').where('person', '=', person).execute()
    }
    return personFrom(is)
  })
}

export async function hasOwner(trx: Transaction<Tables>): Promise<boolean> {
  const owners = trx.selectFrom('entrance_person').select('id').where('role', '=', 'owner').where('left_at', 'is', null)
  return (await owners.limit(1).executeTakeFirst()) !== undefined
}

/** A session may be a moment old; what changes who may come in is decided by what is written now. */
export async function mustBeOwner(trx: Transaction<Tables>, person: string): Promise<void> {
  const row = await trx.selectFrom('entrance_person').selectAll().where('id', '=', person).executeTakeFirst()
  if (row === undefined || !isOwner(row)) throw new Refused('not-allowed')
}

function isOwner({ role, left_at }: { role: string; left_at: number | null }): boolean {
  return role === 'owner' && left_at === null
}
