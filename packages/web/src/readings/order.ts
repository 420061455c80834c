/** In which order readings are taken. */
import type { NextReading } from '@gripbook/engine'
import { isReadQuantity, type ReadQuantity, type Spot, same } from './quantities.ts'

/** The next spot that lacks its reading: after the one that was read, then from the first; null when all have it. */
export function nextSpot(spots: readonly Spot[], has: (spot: Spot) => boolean, after: Spot | null): Spot | null {
  const from = spots.findIndex((spot) => same(spot, after)) + 1
  return [...spots.slice(from), ...spots.slice(0, from)].find((spot) => !has(spot) && !same(spot, after)) ?? null
}

/** Where the reading that settles most leads to: a field of the station, or a bolt to turn in by hand. */
export type Lead =
  | { to: 'reading'; quantity: ReadQuantity; place: 'hole' | 'kind'; id: string }
  | { to: 'try'; hole: string; kind: string }

export function leadOf(next: NextReading | null): Lead | null {
  if (next === null) return null
  const { quantity, of, place, kind } = next.reading
  if (quantity === 'turns') return kind === undefined ? null : { to: 'try', hole: of, kind }
  return isReadQuantity(quantity) ? { to: 'reading', quantity, place, id: of } : null
}

/** Where the station starts: at what the address names ("grip", "grip 4"), else at what settles most, else at the first hole without a grip. */
export function startOf(
  named: string | undefined,
  lead: Lead | null,
): { tab: Tab; quantity: ReadQuantity; id: string | null } {
  if (named === 'ranks' || named === 'tries') return { tab: named, quantity: 'grip', id: null }
  const [quantity = '', ...rest] = named?.split(' ') ?? []
  if (isReadQuantity(quantity)) {
    const here = lead?.to === 'reading' && lead.quantity === quantity
    return { tab: 'measure', quantity, id: rest.length > 0 ? rest.join(' ') : here ? lead.id : null }
  }
  if (lead?.to === 'reading') return { tab: 'measure', quantity: lead.quantity, id: lead.id }
  return { tab: 'measure', quantity: 'grip', id: null }
}

export const TABS = ['measure', 'ranks', 'tries'] as const
export type Tab = (typeof TABS)[number]
