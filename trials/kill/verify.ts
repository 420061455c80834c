/** After a restart: what was acknowledged is there, nothing is there twice, nothing that was never made, everything is as it was made, chains are whole. */
import { canonical, chainFaults, type Event, type Head, type Position } from '@gripbook/record'
import { sha256 } from '../../packages/server/src/sha256.ts'
import type { Truth } from './phones.ts'

/** The record as the trial asks for it: over HTTP, or planted by a test. */
export type Reader = {
  after(position: Position | null): Promise<{ entries: Event[]; position: Position | null; more: boolean }>
  heads(unit: string): Promise<Head[]>
  /** The kept file of a photograph. */
  photograph(name: string): Promise<Buffer | null>
}

/** How far the record has been read, entry by entry. */
export type Seen = { position: Position | null; ids: Set<string> }

export const nothingSeen = (): Seen => ({ position: null, ids: new Set() })

/** Reads what is new since `seen` and holds it against the truth. Throws with words. */
export async function verify(reader: Reader, truth: Truth, seen: Seen): Promise<void> {
  for (let more = true; more; ) {
    const page = await reader.after(seen.position)
    for (const event of page.entries) see(event, truth, seen)
    seen.position = page.position
    more = page.more
  }
  for (const id of truth.acknowledged) if (!seen.ids.has(id)) throw new Error(`acknowledged and lost: ${id}`)
}

/** Reads everything from the beginning, verifies every chain, and every photograph byte for byte. */
export async function verifyAll(reader: Reader, truth: Truth): Promise<void> {
  const seen = nothingSeen()
  await verify(reader, truth, seen)
  const kept = [...seen.ids].map((id) => truth.made.get(id)!)
  const heads = await reader.heads(truth.unit)
  const ends = Object.fromEntries(heads.map(({ device, seq }) => [device, seq]))
  const faults = chainFaults(kept, sha256, ends)
  if (faults.length > 0) throw new Error(`the chain does not verify: ${JSON.stringify(faults[0])}`)
  if (new Set(kept.map(({ device }) => device)).size !== heads.length)
    throw new Error('a chain without an end, or an end without a chain')
  for (const [name, hash] of truth.photographs) {
    const bytes = await reader.photograph(name)
    if (bytes === null) throw new Error(`a photograph that was acknowledged is lost: ${name}`)
    if (sha256(bytes) !== hash) throw new Error(`a photograph was kept otherwise than acknowledged: ${name}`)
  }
}

function see(event: Event, truth: Truth, seen: Seen): void {
  const made = truth.made.get(event.id)
  if (made === undefined) throw new Error(`nobody made ${event.id}`)
  if (canonical(made) !== canonical(event)) throw new Error(`${event.id} was kept otherwise than it was made`)
  if (seen.ids.has(event.id)) throw new Error(`${event.id} is there twice`)
  seen.ids.add(event.id)
}
