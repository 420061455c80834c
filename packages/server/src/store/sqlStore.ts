/** The record in PostgreSQL, or in what speaks its language: plain tables and row locks, no notification, sequence or lock of one server's own. */
import { setImmediate as aTurn } from 'node:timers/promises'
import { must } from '@gripbook/engine'
import {
  type Appended,
  type Event,
  inOrder,
  isUuid,
  type Page,
  type Position,
  type ReadEntry,
  readBatch,
  type Store,
} from '@gripbook/record'
import { type Kysely, sql } from 'kysely'
import { DatabaseError } from '../database/faults.ts'
import type { Tables } from '../database/tables.ts'
import { sha256 } from '../sha256.ts'
import { again } from './again.ts'
import { gathering } from './gather.ts'
import { write } from './write.ts'

/** How many entries share one transaction at most, unless one batch alone has more. */
const MOST_TOGETHER = 400

export type SqlStore = Store & {
  /** `append` for whoever has read the batch already, with `sha256`: shape, text and hash of an entry are most of the work. */
  appendRead(batch: readonly ReadEntry[]): Promise<Appended>
}

export function sqlStore(db: Kysely<Tables>): SqlStore {
  const appendTogether = gathering(
    (batches: readonly (readonly ReadEntry[])[]) => write(db, batches),
    (batch) => batch.length,
    MOST_TOGETHER,
  )

  const appendRead: SqlStore['appendRead'] = async (batch) =>
    batch.length === 0 ? { ok: true, added: 0, known: 0 } : appendTogether(batch)

  let turn: Promise<void> = Promise.resolve()

  return {
    appendRead,

    async append(batch) {
      // Read as it comes, while the batches before it are on their way to the disk; one to a turn, so that the database is heard between two.
      turn = turn.then(() => aTurn())
      await turn
      return appendRead(readBatch(batch, sha256))
    },

    async since(position, limit) {
      must(Number.isInteger(limit) && limit >= 1, 'since: a page holds at least one entry', limit)
      const from = position === null ? null : readPosition(position)
      // One statement, so that entries, end and lineage are of the same moment; one row more than asked for tells whether there are more.
      const page = sql<{ lineage: string; last: number; position: number | null; entry: string }>`
        select log.lineage, log.last, found.position, found.entry
        from record_log as log
        left join (
          select position, entry from record_entry where position > ${from?.number ?? 0} order by position limit ${limit + 1}
        ) as found on true
        where log.id = 1
        order by found.position`
      const { rows } = await again(() => page.execute(db))
      const { lineage, last } = rows[0]!
      if (from !== null && (from.lineage !== lineage || from.number > last))
        throw new DatabaseError({ code: 'unknown-position', position: position! })
      return pageOf(rows.filter((row) => row.position !== null).slice(0, limit), rows.length > limit, lineage, position)
    },

    async end() {
      const log = db.selectFrom('record_log').select(['lineage', 'last']).where('id', '=', 1)
      const { lineage, last } = await again(() => log.executeTakeFirstOrThrow())
      return last === 0 ? null : positionAt(lineage, last)
    },

    async ofUnit(unit) {
      if (!isUuid(unit)) return []
      const entries = db.selectFrom('record_entry').select('entry').where('unit', '=', unit)
      const rows = await again(() => entries.execute())
      return rows.map(({ entry }) => JSON.parse(entry) as Event).sort(inOrder)
    },

    async beyond(unit, have, limit) {
      must(Number.isInteger(limit) && limit >= 1, 'beyond: a page holds at least one entry', limit)
      if (!isUuid(unit)) return { events: [], more: false }
      const known = Object.entries(have).filter(([device]) => isUuid(device))
      const page = sql<{ entry: string }>`
        select found.entry
        from record_entry as found
        left join unnest(
          ${known.map(([device]) => device)}::uuid[], ${known.map(([, seq]) => seq)}::bigint[]
        ) as have (device, seq) on have.device = found.device
        where found.unit = ${unit} and (have.seq is null or found.seq > have.seq)
        order by found.position limit ${limit + 1}`
      const { rows } = await again(() => page.execute(db))
      return { events: rows.slice(0, limit).map(({ entry }) => JSON.parse(entry) as Event), more: rows.length > limit }
    },

    async heads(unit) {
      if (!isUuid(unit)) return []
      const heads = db.selectFrom('record_head').select(['device', 'seq', 'hash']).where('unit', '=', unit)
      return again(() => heads.orderBy('device').execute())
    },

    async units() {
      const units = db.selectFrom('record_head').select('unit').distinct().orderBy('unit')
      const rows = await again(() => units.execute())
      return rows.map(({ unit }) => unit)
    },
  }
}

function pageOf(
  rows: readonly { position: number | null; entry: string }[],
  more: boolean,
  lineage: string,
  asked: Position | null,
): Page {
  const events = rows.map(({ entry }) => JSON.parse(entry) as Event)
  const reached = rows.at(-1)?.position
  return { events, position: reached == null ? asked : positionAt(lineage, reached), more }
}

function positionAt(lineage: string, number: number): Position {
  return `${lineage}.${number}`
}

/** A position is the record's lineage, which a restore renews, and the number of the last entry that was read. */
function readPosition(position: Position): { lineage: string; number: number } {
  const [, lineage, number] = /^([0-9a-f-]{36})\.(\d{1,15})$/.exec(position) ?? []
  if (lineage === undefined || number === undefined) throw new DatabaseError({ code: 'unknown-position', position })
  return { lineage, number: Number(number) }
}
