/** Codes: made, used up once, void after too many wrong tries. */
import type { Kysely, Selectable, Transaction } from 'kysely'
import { Refused } from '../app/faults.ts'
import type { Tables } from '../database/tables.ts'
import { newCode, readCode } from './code.ts'
import type { ForWhom } from './entrance.ts'
import { inTurn } from './inTurn.ts'
import { hasOwner, mustBeOwner } from './people.ts'
import { hashed } from './secrets.ts'

export const CODE_LIFE = 10 * 60_000
/** Wrong tries of the whole shop that a code lives through: as a code lives ten minutes, a hundred within ten minutes leave none. */
export const MOST_WRONG_TRIES = 100

type Random = (bytes: number) => Buffer

export type Code = Selectable<Tables['entrance_code']>

export function makeOwnerCode(db: Kysely<Tables>, random: Random, another: boolean): Promise<string | null> {
  return inTurn(db, async (trx) => {
    // One that nobody used must not lie open for ever, so each start takes it away.
    await trx.deleteFrom('entrance_code').where('expires', 'is', null).execute()
    if (!another && (await hasOwner(trx))) return null
    return keep(trx, random, { expires: null, person: null, name: null, role: null, made_by: null })
  })
}

/** `by`: the id of the person who makes it, looked at anew: someone who is no owner any more must not leave a door behind. */
export function makeCode(
  db: Kysely<Tables>,
  random: Random,
  by: string,
  whom: ForWhom,
  now: number,
): Promise<{ code: string; expires: number }> {
  return inTurn(db, async (trx) => {
    await mustBeOwner(trx, by)
    const given = 'person' in whom ? { ...whom, name: null, role: null } : { ...whom, person: null }
    if (given.person !== null) {
      const person = trx.selectFrom('entrance_person').select('id').where('id', '=', given.person)
      if ((await person.where('left_at', 'is', null).executeTakeFirst()) === undefined) throw new Refused('not-found')
    }
    await trx.deleteFrom('entrance_code').where('expires', '<=', now).execute()
    const expires = now + CODE_LIFE
    return { code: await keep(trx, random, { ...given, expires, made_by: by }), expires }
  })
}

async function keep(
  trx: Transaction<Tables>,
  random: Random,
  given: Omit<Code, 'hash' | 'wrong_tries'>,
): Promise<string> {
  const code = newCode(random)
  await trx
    .insertInto('entrance_code')
    .values({ ...given, hash: hashed(code), wrong_tries: 0 })
    .execute()
  return code
}

/**
 * Takes a code away, so that nobody else has it; null, and one wrong try more, when there is none such. It is looked for by its hash: how long that takes
 * may tell something of the hashes that are kept, of which nobody can make a code.
 */
export async function useUp(trx: Transaction<Tables>, typed: string, now: number): Promise<Code | null> {
  const code = readCode(typed)
  if (code !== null) {
    const found = trx.deleteFrom('entrance_code').where('hash', '=', hashed(code)).returningAll()
    const used = await found.executeTakeFirst()
    if (used !== undefined && (used.expires === null || used.expires > now)) return used
  }
  await trx
    .updateTable('entrance_code')
    .set(({ eb }) => ({ wrong_tries: eb('wrong_tries', '+', 1) }))
    .where('expires', 'is not', null)
    .execute()
  await trx
    .deleteFrom('entrance_code')
    .where('expires', 'is not', null)
    .where('wrong_tries', '>=', MOST_WRONG_TRIES)
    .execute()
  return null
}
