/** The units of the shop, the one that was worked on last first. */
import { type Kysely, sql } from 'kysely'
import type { Tables } from '../database/tables.ts'
import { again } from './again.ts'

/** `entries`: how many there are of it. */
export type RecentUnit = { unit: string; entries: number }

/** Up to `limit` units, those that come after the unit `after` in this order; `more` says whether there are others behind them. */
export async function recentUnits(
  db: Kysely<Tables>,
  after: string | null,
  limit: number,
): Promise<{ units: RecentUnit[]; more: boolean }> {
  const page = sql<RecentUnit>`
    with units as (
      select unit, max(position) as position, cast(sum(seq) as bigint) as entries from record_head group by unit
    )
    select units.unit, units.entries
    from units
    where ${after}::uuid is null
      or (units.position, units.unit) < (select passed.position, passed.unit from units as passed where passed.unit = ${after}::uuid)
    order by units.position desc, units.unit desc limit ${limit + 1}`
  const { rows } = await again(() => page.execute(db))
  return { units: rows.slice(0, limit), more: rows.length > limit }
}
