/**
 * Keeps several batches together, each of them whole or not at all.
 *
 * Positions are what "since" goes by, and a reader must never pass one that appears later. So whoever keeps entries moves the log's one row on from where
 * it was read, and holds that row until the commit: positions become visible in their own order, without gaps. A sequence does not do that: its
 * numbers are drawn before the commit, a later one can be seen first, and the earlier one is then missed for ever. Where an engine takes the row's
 * lock lightly, two that were given the same position meet at the table's key, and one of them is done again.
 */
import { type Appended, type Event, judgeBatch, type ReadEntry } from '@gripbook/record'
import { type Kysely, sql } from 'kysely'
import type { Tables } from '../database/tables.ts'
import { again, overtaken, UNIQUE_VIOLATION } from './again.ts'
import { givesLocksBack, waitsForDisk } from './durably.ts'
import { type Known, lookUp } from './lookUp.ts'

export function write(db: Kysely<Tables>, batches: readonly (readonly ReadEntry[])[]): Promise<Appended[]> {
  let everyId = false
  return again(async () => {
    try {
      const answers = (await attempt(db, batches, everyId)) ?? (await inTurn(db, batches, everyId))
      if (answers === null) throw overtaken()
      return answers
    } catch (error) {
      everyId ||= (error as { code?: string }).code === UNIQUE_VIOLATION
      throw error
    }
  })
}

/**
 * Reads, judges, keeps: two statements, and nothing is locked in between, so that a process that stops there (a suspended machine) holds up nobody.
 * Null, with nothing kept, when another process has kept something since the reading.
 */
async function attempt(
  db: Kysely<Tables>,
  batches: readonly (readonly ReadEntry[])[],
  everyId: boolean,
): Promise<Appended[] | null> {
  const events = batches.flat().flatMap((read) => (read.ok ? read.event : []))
  const known = await lookUp(db, events, everyId)
  const fresh: { event: Event; text: string }[] = []
  const answers = batches.map((batch): Appended => {
    const judged = judgeBatch(batch, known)
    if (!judged.ok) return judged
    known.add(judged.fresh.map(({ event }) => event))
    fresh.push(...judged.fresh)
    return { ok: true, added: judged.fresh.length, known: judged.known }
  })
  return fresh.length === 0 || (await keep(db, known, fresh)) ? answers : null
}

/** The same with the log's row locked first: whoever was overtaken waits for its turn, and is not overtaken again, unless the engine takes the lock lightly. */
function inTurn(
  db: Kysely<Tables>,
  batches: readonly (readonly ReadEntry[])[],
  everyId: boolean,
): Promise<Appended[] | null> {
  return db.transaction().execute(async (trx) => {
    await sql`
      select ${givesLocksBack} from record_log where id = 1 for update`.execute(trx)
    return attempt(trx, batches, everyId)
  })
}

/**
 * Values travel as one text for each column, a line for each row: none of them has a line break in it (JSON escapes those of an entry). As arrays each would be
 * looked through for quotes, which takes longer than keeping it.
 */
const lines = (values: readonly (string | number)[]): string => values.join('\n')
const BETWEEN = '\n'

/** False, with nothing kept, when the log is no longer where it was read. The commit waits for the disk, whatever the server's setting is. */
async function keep(
  db: Kysely<Tables>,
  known: Known,
  fresh: readonly { event: Event; text: string }[],
): Promise<boolean> {
  const { last } = known
  const heads = known.moved()
  const { rows } = await sql`
    with claimed as (
      update record_log set last = ${last + fresh.length} where id = 1 and last = ${last}
      returning ${waitsForDisk}
    ), entries as (
      insert into record_entry (position, id, unit, device, seq, hash, entry)
      select ${last}::bigint + entry.line, entry.id, entry.unit, entry.device, entry.seq, entry.hash, entry.entry from claimed, unnest(
        string_to_array(${lines(fresh.map(({ event }) => event.id))}::text, ${BETWEEN}::text)::uuid[],
        string_to_array(${lines(fresh.map(({ event }) => event.unit))}::text, ${BETWEEN}::text)::uuid[],
        string_to_array(${lines(fresh.map(({ event }) => event.device))}::text, ${BETWEEN}::text)::uuid[],
        string_to_array(${lines(fresh.map(({ event }) => event.seq))}::text, ${BETWEEN}::text)::bigint[],
        string_to_array(${lines(fresh.map(({ event }) => event.hash))}::text, ${BETWEEN}::text),
        string_to_array(${lines(fresh.map(({ text }) => text))}::text, ${BETWEEN}::text)
      ) with ordinality as entry (id, unit, device, seq, hash, entry, line)
    ), heads as (
      insert into record_head (unit, device, seq, hash, position)
      select head.*, ${last + fresh.length}::bigint from claimed, unnest(
        ${heads.map(({ unit }) => unit)}::uuid[],
        ${heads.map(({ device }) => device)}::uuid[],
        ${heads.map(({ seq }) => seq)}::bigint[],
        ${heads.map(({ hash }) => hash)}::text[]
      ) as head (unit, device, seq, hash)
      on conflict (unit, device) do update
        set seq = excluded.seq, hash = excluded.hash, position = excluded.position
    )
    select * from claimed`.execute(db)
  return rows.length === 1
}
