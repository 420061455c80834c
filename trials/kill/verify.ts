/** After a restart: what was acknowledged is there, nothing is there twice, nothing that was never made, everything is as it was made, chains are whole. */
import { canonical, chainFaults, type Event, type Position } from '@gripbook/record'
import { sha256, type Truth } from './phones.ts'
import type { Worker } from './worker.ts'

/** How far the store has been read, entry by entry, and what was found, in order. */
export type Seen = { position: Position | null; ids: Set<string>; hashes: string[] }

export const nothingSeen = (): Seen => ({ position: null, ids: new Set(), hashes: [] })

/**
 * Reads what is new since `seen` and holds it against the truth; what was read before is held against a digest over all hashes in order, so that an entry that
 * vanished or changed later is found too. Throws with words.
 */
export async function verify(worker: Worker, truth: Truth, seen: Seen): Promise<void> {
  for (;;) {
    const { page } = await worker.ask({ what: 'since', position: seen.position, limit: 2_000 })
    for (const event of page!.events) see(event, truth, seen)
    seen.position = page!.position
    if (!page!.more) break
  }
  for (const id of truth.acknowledged) if (!seen.ids.has(id)) throw new Error(`acknowledged and lost: ${id}`)
  const { digest, count } = await worker.ask({ what: 'digest' })
  if (count !== seen.hashes.length) throw new Error(`${count} entries are kept, ${seen.hashes.length} were read`)
  if (digest !== sha256(seen.hashes.join('')))
    throw new Error('an entry that was read before has changed, vanished or moved')
}

/** Reads everything from the beginning and verifies every chain. */
export async function verifyAll(worker: Worker, truth: Truth): Promise<void> {
  const seen = nothingSeen()
  await verify(worker, truth, seen)
  const kept = [...seen.ids].map((id) => truth.made.get(id)!)
  for (const unit of truth.units) {
    const { heads } = await worker.ask({ what: 'heads', unit })
    const ends = Object.fromEntries(heads!.map(({ device, seq }) => [device, seq]))
    const ofUnit = kept.filter((event) => event.unit === unit)
    const faults = chainFaults(ofUnit, sha256, ends)
    if (faults.length > 0) throw new Error(`the chain does not verify: ${JSON.stringify(faults[0])}`)
    const devices = new Set(ofUnit.map(({ device }) => device))
    if (devices.size !== heads!.length) throw new Error('a chain without an end, or an end without a chain')
  }
}

function see(event: Event, truth: Truth, seen: Seen): void {
  const made = truth.made.get(event.id)
  if (made === undefined) throw new Error(`nobody made ${event.id}`)
  if (canonical(made) !== canonical(event)) throw new Error(`${event.id} was kept otherwise than it was made`)
  if (seen.ids.has(event.id)) throw new Error(`${event.id} is there twice`)
  seen.ids.add(event.id)
  seen.hashes.push(event.hash)
}
