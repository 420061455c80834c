/** Whether the record is whole, looked at row by row: every fault is named with its unit, device, number and entry. */
import { chainFaults, type Event, entryText, photographsOf } from '@gripbook/record'
import type { Kysely } from 'kysely'
import type { Shop } from '../app/shop.ts'
import type { Tables } from '../database/tables.ts'
import { Damaged } from '../photographs/photographs.ts'
import { sha256 } from '../sha256.ts'
import { entryIn } from './entryIn.ts'
import { chainFaultOf, entryFault, type Fault } from './fault.ts'
import { atOneMoment } from './oneMoment.ts'

/** Who entered something and was never paired here: it came in with an archive of another shop. `first`: the id of their first entry. */
export type Stranger = { who: string; device: string; entries: number; first: string }

export type Checked = {
  units: number
  entries: number
  photographs: number
  faults: Fault[]
  strangers: Stranger[]
  /** Photographs that entries speak of and that have not arrived: they may still wait on a device. */
  absent: string[]
}

type Row = Tables['record_entry']
type HeadRow = Tables['record_head']

/** Reads everything, as it is at one moment, whatever is entered meanwhile; changes nothing. One unit is in memory at a time. */
export async function checkRecord({ db, photographs }: Pick<Shop, 'db' | 'photographs'>): Promise<Checked> {
  const spokenOf = new Set<string>()
  const strangers = new Map<string, Stranger>()
  const ofEntries = await atOneMoment(db, async (trx) => {
    const { count, faults } = await logFaults(trx)
    const paired = await pairings(trx)
    const heads = new Map<string, HeadRow[]>()
    for (const head of await trx.selectFrom('record_head').selectAll().orderBy('unit').execute()) {
      const ofUnit = heads.get(head.unit)
      if (ofUnit === undefined) heads.set(head.unit, [head])
      else ofUnit.push(head)
    }
    const kept = await trx.selectFrom('record_entry').select('unit').distinct().orderBy('unit').execute()
    for (const unit of new Set([...kept.map((row) => row.unit), ...heads.keys()])) {
      const rows = await trx
        .selectFrom('record_entry')
        .selectAll()
        .where('unit', '=', unit)
        .orderBy('position')
        .execute()
      const read = rows.map((row) => ({ row, event: entryIn(row.entry) }))
      const events = read.flatMap(({ event }) => (event === null ? [] : [event]))
      for (const { row, event } of read) faults.push(...rowFaults(row, event))
      faults.push(...endFaults(unit, events, heads.get(unit) ?? []))
      for (const event of events) if (!paired.has(`${event.device} ${event.who}`)) meet(strangers, event)
      for (const photograph of photographsOf(events)) spokenOf.add(photograph)
    }
    return { units: kept.length, entries: count, faults }
  })
  const here = new Set<string>()
  const { faults } = ofEntries
  for await (const { photograph } of photographs.all()) {
    here.add(photograph)
    try {
      await photographs.read(photograph, 'full')
    } catch (error) {
      if (!(error instanceof Damaged)) throw error
      faults.push({ words: error.message, photograph })
    }
  }
  const absent = [...spokenOf].filter((photograph) => !here.has(photograph)).sort()
  return { ...ofEntries, photographs: here.size, strangers: [...strangers.values()], absent }
}

/** The log's end against the positions of the entries, and whether a restore was left half done. */
async function logFaults(db: Kysely<Tables>): Promise<{ count: number; faults: Fault[] }> {
  const faults: Fault[] = []
  const { last } = await db.selectFrom('record_log').select('last').executeTakeFirstOrThrow()
  const { count, least, most } = await db
    .selectFrom('record_entry')
    .select(({ fn }) => [
      fn.countAll<number>().as('count'),
      fn.min<number | null>('position').as('least'),
      fn.max<number | null>('position').as('most'),
    ])
    .executeTakeFirstOrThrow()
  if (count !== last || (count > 0 && (least !== 1 || most !== count))) {
    const where = count === 0 ? 'none is kept' : `${count} are kept, at ${least} to ${most}`
    faults.push({ words: `The log ends at entry ${last}; ${where}: some are missing or were added beside it.` })
  }
  if ((await db.selectFrom('shop_restore').select('id').executeTakeFirst()) !== undefined)
    faults.push({ words: 'A restore was begun here and not ended. Start it again with the same backup.' })
  return { count, faults }
}

/** Device and person of all that were ever paired. */
async function pairings(db: Kysely<Tables>): Promise<Set<string>> {
  const rows = await db.selectFrom('entrance_pairing').select(['device', 'person']).execute()
  return new Set(rows.map(({ device, person }) => `${device} ${person}`))
}

function rowFaults(row: Row, event: Event | null): Fault[] {
  const named = `Unit ${row.unit}: entry ${row.seq} of device ${row.device} (${row.id})`
  if (event === null) return [entryFault(`${named}, kept at position ${row.position}, is no entry.`, row)]
  const faults: Fault[] = []
  if (entryText(event).whole !== row.entry) faults.push(entryFault(`${named} is not kept letter by letter.`, row))
  const isOwn = (['id', 'unit', 'device', 'seq', 'hash'] as const).every((name) => event[name] === row[name])
  if (!isOwn) faults.push(entryFault(`${named} is kept under another name than its own.`, row))
  return faults
}

/** The chains, and whether each ends where it is said to end beside the entries. */
function endFaults(unit: string, events: readonly Event[], heads: readonly HeadRow[]): Fault[] {
  const last = new Map<string, Event>()
  for (const event of events) if ((last.get(event.device)?.seq ?? 0) < event.seq) last.set(event.device, event)
  const said = Object.fromEntries(heads.map(({ device, seq }) => [device, seq]))
  const faults = chainFaults(events, sha256, said).map((fault) => chainFaultOf(unit, fault))
  for (const { device, seq, hash } of heads) {
    const found = last.get(device)
    if (found !== undefined && (found.seq !== seq || found.hash !== hash))
      faults.push(
        entryFault(
          `Unit ${unit}: the last entry of device ${device} is ${found.seq} (${found.id}), its chain is said to end at ${seq}${found.seq === seq ? ' with another one' : ''}.`,
          found,
        ),
      )
  }
  for (const event of last.values()) {
    const { device, seq, id } = event
    if (!Object.hasOwn(said, device))
      faults.push(
        entryFault(
          `Unit ${unit}: that the chain of device ${device} ends at ${seq} (${id}) is said nowhere beside it.`,
          event,
        ),
      )
  }
  return faults
}

function meet(strangers: Map<string, Stranger>, { who, device, id }: Event): void {
  const known = strangers.get(`${who} ${device}`)
  if (known === undefined) strangers.set(`${who} ${device}`, { who, device, entries: 1, first: id })
  else known.entries++
}
