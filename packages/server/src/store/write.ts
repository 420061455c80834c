/**
 * One transaction that keeps several batches, each of them whole or not at all.
 *
 * Positions are what "since" goes by, and a reader must never pass one that appears later. So they are given under a lock on the log's one row, held until
 * the transaction has ended: whoever has the row finds everything before it committed, positions become visible in their own order, without gaps. A
 * sequence does not do that: its numbers are drawn before the commit, a later one can be seen first, and the earlier one is then missed for ever.
 * Where an engine takes the lock lightly, two transactions that are given the same position meet at the table's key, and one of them is done again.
 */
import { must } from '@gripbook/engine'
import { type Appended, canonical, type Event, type Hash, judgeBatch } from '@gripbook/record'
import { type Kysely, sql, type Transaction } from 'kysely'
import type { Tables } from '../database/tables.ts'
import { again } from './again.ts'
import { lookUp } from './lookUp.ts'

export function write(db: Kysely<Tables>, batches: readonly (readonly Event[])[], hash: Hash): Promise<Appended[]> {
  return again(() => db.transaction().execute((trx) => writeIn(trx, batches, hash)))
}

async function writeIn(
  trx: Transaction<Tables>,
  batches: readonly (readonly Event[])[],
  hash: Hash,
): Promise<Appended[]> {
  const last = await lockLog(trx)
  const known = await lookUp(trx, batches.flat())
  const fresh: Event[] = []
  const answers = batches.map((batch): Appended => {
    const judged = judgeBatch(batch, known, hash)
    if (!judged.ok) return judged
    known.add(judged.fresh)
    fresh.push(...judged.fresh)
    return { ok: true, added: judged.fresh.length, known: judged.known }
  })
  if (fresh.length > 0) await keep(trx, last, fresh, known.moved())
  return answers
}

/**
 * The last position, and the lock that makes the next one ours. In the same breath, for this transaction only: its commit waits for the disk whatever the
 * server's setting is, and a process that stops in the middle (a suspended machine) gives the lock back after half a minute.
 */
async function lockLog(trx: Transaction<Tables>): Promise<number> {
  const { rows } = await sql<{ last: number }>`
    select last,
      case when current_setting('synchronous_commit', true) in ('off', 'local') then set_config('synchronous_commit', 'on', true) end as commits,
      set_config('idle_in_transaction_session_timeout', '30000', true) as patience
    from record_log where id = 1 for update`.execute(trx)
  const { last } = rows[0]!
  // PostgreSQL's 8-byte numbers come as text unless the connection says otherwise, and "0" + 1 is no position.
  must(Number.isSafeInteger(last), 'the log ends at a whole number', last)
  return last
}

async function keep(
  trx: Transaction<Tables>,
  last: number,
  fresh: readonly Event[],
  heads: readonly { unit: string; device: string; seq: number; hash: string }[],
): Promise<void> {
  await sql`
    insert into record_entry (position, id, unit, device, seq, hash, entry)
    select * from unnest(
      ${fresh.map((_, i) => last + 1 + i)}::bigint[],
      ${fresh.map(({ id }) => id)}::uuid[],
      ${fresh.map(({ unit }) => unit)}::uuid[],
      ${fresh.map(({ device }) => device)}::uuid[],
      ${fresh.map(({ seq }) => seq)}::bigint[],
      ${fresh.map(({ hash }) => hash)}::text[],
      ${fresh.map((event) => canonical(event))}::text[]
    )`.execute(trx)
  await sql`
    insert into record_head (unit, device, seq, hash)
    select * from unnest(
      ${heads.map(({ unit }) => unit)}::uuid[],
      ${heads.map(({ device }) => device)}::uuid[],
      ${heads.map(({ seq }) => seq)}::bigint[],
      ${heads.map(({ hash }) => hash)}::text[]
    )
    on conflict (unit, device) do update set seq = excluded.seq, hash = excluded.hash`.execute(trx)
  await sql`update record_log set last = ${last + fresh.length} where id = 1`.execute(trx)
}
