/** A code and a device become a session. */
import type { Kysely, Selectable, Transaction } from 'kysely'
import { Refused } from '../app/faults.ts'
import type { Tables } from '../database/tables.ts'
import { freeIds, keepBefore } from './before.ts'
import { type Code, useUp } from './codes.ts'
import type { Asking, Session } from './entrance.ts'
import { inTurn } from './inTurn.ts'
import { hashed, newId, sameHash } from './secrets.ts'
import { deleteEnded, sessionFrom } from './sessions.ts'

type Random = (bytes: number) => Buffer
type PersonRow = Omit<Selectable<Tables['entrance_person']>, 'stands_for'>

const TOKEN_BYTES = 32

export async function pair(
  db: Kysely<Tables>,
  random: Random,
  now: number,
  code: string,
  asking: Asking,
  { name, replaces, before = [] }: { name?: string; replaces?: string; before?: readonly string[] },
): Promise<{ token: string; session: Session }> {
  const paired = await inTurn(db, async (trx) => {
    const used = await useUp(trx, code, now)
    if (used === null) return null
    // From here on a refusal undoes the whole: the code is still there for whoever holds it.
    await keepDevice(trx, asking, now)
    const free = used.role === 'viewer' ? [] : await freeIds(trx, before, asking.id)
    const person = await personFor(trx, used, name, free[0] ?? newId(random), now)
    await trx
      .insertInto('entrance_pairing')
      .values({ device: asking.id, person: person.id, since: now })
      .onConflict((conflict) => conflict.doNothing())
      .execute()
    await keepBefore(trx, free, person, asking.id, now)
    await deleteEnded(trx, now)
    await deleteReplaced(trx, asking.id, replaces)
    return openSession(trx, random, person, asking, now)
  })
  // A wrong try is written down, so it is refused only after the transaction.
  if (paired === null) throw new Refused('code-not-valid')
  return paired
}

/** A device is known again by its secret: nobody else goes on with its entries. */
async function keepDevice(trx: Transaction<Tables>, { id, secret, name }: Asking, now: number): Promise<void> {
  const secret_hash = hashed(secret)
  const known = await trx.selectFrom('entrance_device').select('secret_hash').where('id', '=', id).executeTakeFirst()
  if (known === undefined) {
    await trx.insertInto('entrance_device').values({ id, name, secret_hash, since: now }).execute()
    return
  }
  if (!sameHash(known.secret_hash, secret_hash)) throw new Refused('wrong-secret')
  await trx.updateTable('entrance_device').set({ name }).where('id', '=', id).execute()
}

async function personFor(
  trx: Transaction<Tables>,
  used: Code,
  givenName: string | undefined,
  id: string,
  now: number,
): Promise<PersonRow> {
  if (used.person !== null)
    return trx.selectFrom('entrance_person').selectAll().where('id', '=', used.person).executeTakeFirstOrThrow()
  const name = used.name ?? givenName
  if (name === undefined) throw new Refused('wrong-request', { at: 'body/name', why: 'The owner needs a name.' })
  const person: PersonRow = { id, name, role: used.role ?? 'owner', since: now, left_at: null }
  await trx.insertInto('entrance_person').values(person).execute()
  return person
}

/** A device has one cookie, so one session: those before it, whoever's they were, end; so does the one whose cookie is overwritten. */
async function deleteReplaced(trx: Transaction<Tables>, device: string, replaces: string | undefined): Promise<void> {
  await trx
    .deleteFrom('entrance_session')
    .where((where) =>
      where.or([where('device', '=', device), ...(replaces === undefined ? [] : [where('id', '=', replaces)])]),
    )
    .execute()
}

async function openSession(
  trx: Transaction<Tables>,
  random: Random,
  person: PersonRow,
  device: Asking,
  now: number,
): Promise<{ token: string; session: Session }> {
  const token = random(TOKEN_BYTES).toString('base64url')
  const row = { id: newId(random), person: person.id, device: device.id, since: now, last_used: now }
  await trx
    .insertInto('entrance_session')
    .values({ ...row, token_hash: hashed(token) })
    .execute()
  const { name: person_name, role, since: person_since, left_at } = person
  return { token, session: sessionFrom({ ...row, device_name: device.name, person_name, role, person_since, left_at }) }
}
