/** What is kept already that bears on some entries, read in one query, or two where some seem to be kept already, however many entries there are. */
import { must } from '@gripbook/engine'
import type { Event, Head, Kept } from '@gripbook/record'
import { type Kysely, sql } from 'kysely'
import type { Tables } from '../database/tables.ts'

/** What a batch is judged against, and what judging it adds: the batches of one transaction follow each other. */
export type Known = Kept & {
  /** How far the log was written when this was read. */
  last: number
  add(events: readonly Event[]): void
  /** Heads that were moved by `add`. */
  moved(): (Head & { unit: string })[]
}

/**
 * Entries that go on from the end of their chain are not looked for by their ids: the table's key finds the rare one whose id is taken, nothing is kept,
 * and the next time `everyId` is asked for, so that it can be told. Looking for each would cost a quarter of an append.
 */
export async function lookUp(db: Kysely<Tables>, wanted: readonly Event[], everyId: boolean): Promise<Known> {
  const found = await endsAbout(db, wanted)
  const heads = new Map<string, Head & { unit: string }>()
  for (const { what, id, device, seq, hash } of found)
    if (what === 'head') heads.set(chainOf({ unit: id, device }), { unit: id, device, seq, hash })
  const taken = wanted.filter((event) => everyId || event.seq <= (heads.get(chainOf(event))?.seq ?? 0))
  const kept = await keptAt(db, taken)
  const hashes = new Map(kept.map(({ id, hash }) => [id, hash]))
  const numbered = new Map(kept.map((entry) => [numberOf(entry), entry.id]))
  const moved = new Set<string>()
  const added: Event[] = []
  const last = found.find(({ what }) => what === 'log')?.seq
  // PostgreSQL's 8-byte numbers come as text unless the connection says otherwise, and "0" + 1 is no position.
  must(Number.isSafeInteger(last), 'the log ends at a whole number', last)
  return {
    last: last!,
    hashOf: (id) => hashes.get(id),
    idOf(unit, device, seq) {
      const later = added.find((event) => event.seq === seq && event.unit === unit && event.device === device)
      return later?.id ?? numbered.get(numberOf({ unit, device, seq }))
    },
    head: (unit, device) => heads.get(chainOf({ unit, device })),
    add(events) {
      added.push(...events)
      for (const { id, unit, device, seq, hash } of events) {
        const chain = chainOf({ unit, device })
        hashes.set(id, hash)
        heads.set(chain, { unit, device, seq, hash })
        moved.add(chain)
      }
    },
    moved: () => [...moved].map((chain) => heads.get(chain)!),
  }
}

/** A row of one of two kinds: the log (`seq`: how far), or a head (`id`: its unit). */
type Found = { what: 'log' | 'head'; id: string; device: string; seq: number; hash: string }

/** In one statement, so that all of it is of the same moment as the log's end. */
async function endsAbout(db: Kysely<Tables>, events: readonly Event[]): Promise<Found[]> {
  const chains = [...new Map(events.map((event) => [chainOf(event), event])).values()]
  const { rows } = await sql<Found>`
    select 'log' as what, null::uuid as id, null::uuid as device, last as seq, null::text as hash from record_log where id = 1
    union all
    select 'head', head.unit, head.device, head.seq, head.hash
    from unnest(${chains.map(({ unit }) => unit)}::uuid[], ${chains.map(({ device }) => device)}::uuid[]) as wanted (unit, device)
    join record_head as head on head.unit = wanted.unit and head.device = wanted.device`.execute(db)
  return rows
}

type KeptEntry = { id: string; unit: string; device: string; seq: number; hash: string }

/** Entries that have the id or the number of one of these. What is kept is never changed, so it may be read a moment after the ends. */
async function keptAt(db: Kysely<Tables>, events: readonly Event[]): Promise<KeptEntry[]> {
  if (events.length === 0) return []
  const { rows } = await sql<KeptEntry>`
    select id, unit, device, seq, hash from record_entry where id = any(${events.map(({ id }) => id)}::uuid[])
    union
    select entry.id, entry.unit, entry.device, entry.seq, entry.hash
    from unnest(
      ${events.map(({ unit }) => unit)}::uuid[], ${events.map(({ device }) => device)}::uuid[], ${events.map(({ seq }) => seq)}::bigint[]
    ) as wanted (unit, device, seq)
    join record_entry as entry on entry.unit = wanted.unit and entry.device = wanted.device and entry.seq = wanted.seq`.execute(
    db,
  )
  return rows
}

function chainOf({ unit, device }: { unit: string; device: string }): string {
  return `${unit} ${device}`
}

function numberOf({ unit, device, seq }: { unit: string; device: string; seq: number }): string {
  return `${unit} ${device} ${seq}`
}
