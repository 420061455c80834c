/** What is kept already that bears on some entries, read in one query, or two where a number seems to be taken, however many entries there are. */
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

export async function lookUp(db: Kysely<Tables>, wanted: readonly Event[]): Promise<Known> {
  const found = await keptAbout(db, wanted)
  const hashes = new Map(found.filter(({ what }) => what === 'entry').map(({ id, hash }) => [id, hash]))
  const heads = new Map<string, Head & { unit: string }>()
  for (const { what, id, device, seq, hash } of found)
    if (what === 'head') heads.set(chainOf({ unit: id, device }), { unit: id, device, seq, hash })
  const taken = wanted.filter((event) => !hashes.has(event.id) && event.seq <= (heads.get(chainOf(event))?.seq ?? 0))
  const numbered = new Map((await idsAt(db, taken)).map((found) => [numberOf(found), found.id]))
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

const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/

export function isUuid(text: unknown): boolean {
  return typeof text === 'string' && UUID.test(text)
}

/** A row of one of three kinds: the log (`seq`: how far), an entry (`id`, `hash`), a head (`id`: its unit). */
type Found = { what: 'log' | 'entry' | 'head'; id: string; device: string; seq: number; hash: string }

/** In one statement, so that all of it is of the same moment as the log's end. */
async function keptAbout(db: Kysely<Tables>, events: readonly Event[]): Promise<Found[]> {
  const chains = [...new Map(events.map((event) => [chainOf(event), event])).values()]
  const { rows } = await sql<Found>`
    select 'log' as what, null::uuid as id, null::uuid as device, last as seq, null::text as hash from record_log where id = 1
    union all
    select 'entry', id, null, null, hash from record_entry where id = any(${events.map(({ id }) => id)}::uuid[])
    union all
    select 'head', head.unit, head.device, head.seq, head.hash
    from unnest(${chains.map(({ unit }) => unit)}::uuid[], ${chains.map(({ device }) => device)}::uuid[]) as wanted (unit, device)
    join record_head as head on head.unit = wanted.unit and head.device = wanted.device`.execute(db)
  return rows
}

type Numbered = { id: string; unit: string; device: string; seq: number }

async function idsAt(db: Kysely<Tables>, events: readonly Event[]): Promise<Numbered[]> {
  if (events.length === 0) return []
  const { rows } = await sql<Numbered>`
    select entry.id, entry.unit, entry.device, entry.seq
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
