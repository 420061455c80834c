/** Whether the record is whole, looked at row by row: every fault is named with its unit, device, number and entry. */
import { chainFaults, chainFaultText, type Event, entryText, photographsOf, readEvent } from '@gripbook/record'
import type { Shop } from '../app/shop.ts'
import { sha256 } from '../archives/unitArchive.ts'
import { Damaged } from '../photographs/photographs.ts'

export type Checked = {
  units: number
  entries: number
  photographs: number
  /** What is wrong, each in words. */
  faults: string[]
  /** Who entered something and was never paired here: entries that came in with an archive of another shop. */
  strangers: string[]
  /** Photographs that entries speak of and that have not arrived: they may still wait on a device. */
  absent: string[]
}

/** Reads everything; changes nothing. One unit is in memory at a time. */
export async function checkRecord({ db, photographs }: Pick<Shop, 'db' | 'photographs'>): Promise<Checked> {
  const faults: string[] = []
  const spokenOf = new Set<string>()
  const strangers = new Set<string>()
  const log = await db.selectFrom('record_log').select('last').executeTakeFirstOrThrow()
  const { count, least, most } = await db
    .selectFrom('record_entry')
    .select(({ fn }) => [
      fn.countAll<number>().as('count'),
      fn.min<number | null>('position').as('least'),
      fn.max<number | null>('position').as('most'),
    ])
    .executeTakeFirstOrThrow()
  if (count !== log.last || (count > 0 && (least !== 1 || most !== count)))
    faults.push(
      `The log ends at ${log.last}; ${count} entries are kept, at ${least} to ${most}: some are missing or were added beside it.`,
    )
  if ((await db.selectFrom('shop_restore').select('id').executeTakeFirst()) !== undefined)
    faults.push('A restore was begun here and not ended. Start it again with the same backup.')
  const pairings = new Set(
    (await db.selectFrom('entrance_pairing').select(['device', 'person']).execute()).map(
      ({ device, person }) => `${device} ${person}`,
    ),
  )
  const heads = await db.selectFrom('record_head').selectAll().execute()
  const units = (await db.selectFrom('record_entry').select('unit').distinct().orderBy('unit').execute()).map(
    ({ unit }) => unit,
  )
  for (const unit of new Set([...units, ...heads.map((head) => head.unit)])) {
    const rows = await db.selectFrom('record_entry').selectAll().where('unit', '=', unit).orderBy('position').execute()
    const events: Event[] = []
    for (const row of rows) {
      const event = parsed(row.entry)
      if (event === null) {
        faults.push(`Unit ${unit}: what is kept at position ${row.position} is no entry.`)
        continue
      }
      events.push(event)
      const named = `Unit ${unit}: entry ${row.seq} of device ${row.device} (${row.id})`
      if (entryText(event).whole !== row.entry) faults.push(`${named} is not kept letter by letter.`)
      if (
        event.id !== row.id ||
        event.unit !== row.unit ||
        event.device !== row.device ||
        event.seq !== row.seq ||
        event.hash !== row.hash
      )
        faults.push(`${named} is kept under another name than its own.`)
      if (!pairings.has(`${event.device} ${event.who}`)) strangers.add(`${event.who} on device ${event.device}`)
    }
    const ends = heads.filter((head) => head.unit === unit)
    for (const fault of chainFaults(events, sha256, Object.fromEntries(ends.map(({ device, seq }) => [device, seq]))))
      faults.push(`Unit ${unit}: ${chainFaultText(fault)}`)
    for (const { device, seq, hash } of ends) {
      const last = events
        .filter((event) => event.device === device)
        .reduce<Event | undefined>((a, b) => (a === undefined || b.seq > a.seq ? b : a), undefined)
      if (last !== undefined && (last.seq !== seq || last.hash !== hash))
        faults.push(
          `Unit ${unit}: the last entry of device ${device} is ${last.seq}, its chain is said to end at ${seq}.`,
        )
    }
    for (const photograph of photographsOf(events)) spokenOf.add(photograph)
  }
  const here = new Set<string>()
  for await (const { photograph } of photographs.all()) {
    here.add(photograph)
    try {
      await photographs.read(photograph, 'full')
    } catch (error) {
      if (!(error instanceof Damaged)) throw error
      faults.push(error.message)
    }
  }
  const absent = [...spokenOf].filter((photograph) => !here.has(photograph)).sort()
  return {
    units: units.length,
    entries: count,
    photographs: here.size,
    faults,
    strangers: [...strangers].sort(),
    absent,
  }
}

function parsed(text: string): Event | null {
  try {
    const read = readEvent(JSON.parse(text))
    return read.ok ? read.value : null
  } catch {
    return null
  }
}
