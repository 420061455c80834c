/** Hashes by which a record and the unit folded from it are known again. */
import { canonical } from './canonical.ts'
import type { Hash } from './chain.ts'
import type { Event } from './events/event.ts'
import type { Json } from './events/json.ts'
import { inOrder } from './inOrder.ts'
import type { FoldedUnit } from './unit.ts'

/** Hash of a set of entries, whatever their order: of the list of their own hashes in the order of the record. What a release, a build record and a manifest carry. */
export function recordHash(events: readonly Event[], hash: Hash): string {
  return hash(canonical([...events].sort(inOrder).map((event) => event.hash)))
}

/** The entries up to these heads (device: number), as a release names them. */
export function upTo(heads: Record<string, number>, events: readonly Event[]): Event[] {
  return events.filter(({ device, seq }) => seq <= (heads[device] ?? 0))
}

/** Hash of the state: two places that fold the same entries with the same version of Gripbook get the same. */
export function stateHash(folded: FoldedUnit, hash: Hash): string {
  return hash(canonical(folded as unknown as Json))
}
