/** What is kept already that bears on some entries, read in three queries at most, however many entries there are. */
import type { Event, Head, Kept } from '@gripbook/record'
import { sql, type Transaction } from 'kysely'
import type { Tables } from '../database/tables.ts'

/** What a batch is judged against, and what judging it adds: the batches of one transaction follow each other. */
export type Known = Kept & {
  add(events: readonly Event[]): void
  /** Heads that were moved by `add`. */
  moved(): (Head & { unit: string })[]
}

export async function lookUp(trx: Transaction<Tables>, wanted: readonly Event[]): Promise<Known> {
  const sound = wanted.filter(isAddressed)
  const hashes = new Map((await hashesOf(trx, sound)).map(({ id, hash }) => [id, hash]))
  const heads = new Map((await headsOf(trx, sound)).map((head) => [chainOf(head), head]))
  const taken = sound.filter((event) => !hashes.has(event.id) && event.seq <= (heads.get(chainOf(event))?.seq ?? 0))
  const numbered = new Map((await idsAt(trx, taken)).map((found) => [numberOf(found), found.id]))
  const moved = new Set<string>()
  return {
    hashOf: (id) => hashes.get(id),
    idOf: (unit, device, seq) => numbered.get(numberOf({ unit, device, seq })),
    head: (unit, device) => heads.get(chainOf({ unit, device })),
    add(events) {
      for (const { id, unit, device, seq, hash } of events) {
        const chain = chainOf({ unit, device })
        hashes.set(id, hash)
        numbered.set(numberOf({ unit, device, seq }), id)
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

/** Whether it can be asked for; what is no entry at all is found out, with the reason, when the batch is judged. */
function isAddressed(event: Event | null): boolean {
  return (
    typeof event === 'object' &&
    event !== null &&
    Number.isSafeInteger(event.seq) &&
    [event.id, event.unit, event.device].every(isUuid)
  )
}

async function hashesOf(trx: Transaction<Tables>, events: readonly Event[]): Promise<{ id: string; hash: string }[]> {
  if (events.length === 0) return []
  const ids = events.map(({ id }) => id)
  return (
    await sql<{ id: string; hash: string }>`select id, hash from record_entry where id = any(${ids}::uuid[])`.execute(
      trx,
    )
  ).rows
}

async function headsOf(trx: Transaction<Tables>, events: readonly Event[]): Promise<(Head & { unit: string })[]> {
  const chains = [...new Map(events.map((event) => [chainOf(event), event])).values()]
  if (chains.length === 0) return []
  const { rows } = await sql<Head & { unit: string }>`
    select head.unit, head.device, head.seq, head.hash
    from unnest(${chains.map(({ unit }) => unit)}::uuid[], ${chains.map(({ device }) => device)}::uuid[]) as wanted (unit, device)
    join record_head as head on head.unit = wanted.unit and head.device = wanted.device`.execute(trx)
  return rows
}

type Numbered = { id: string; unit: string; device: string; seq: number }

async function idsAt(trx: Transaction<Tables>, events: readonly Event[]): Promise<Numbered[]> {
  if (events.length === 0) return []
  const { rows } = await sql<Numbered>`
    select entry.id, entry.unit, entry.device, entry.seq
    from unnest(
      ${events.map(({ unit }) => unit)}::uuid[], ${events.map(({ device }) => device)}::uuid[], ${events.map(({ seq }) => seq)}::bigint[]
    ) as wanted (unit, device, seq)
    join record_entry as entry on entry.unit = wanted.unit and entry.device = wanted.device and entry.seq = wanted.seq`.execute(
    trx,
  )
  return rows
}

function chainOf({ unit, device }: { unit: string; device: string }): string {
  return `${unit} ${device}`
}

function numberOf({ unit, device, seq }: { unit: string; device: string; seq: number }): string {
  return `${unit} ${device} ${seq}`
}
