import type { OrderAnswer, OrderKind } from '@gripbook/engine'

/** How an order came about, as a name. */
export const ORDER_NAMES: Record<OrderKind, string> = {
  stated: 'the manual’s order',
  cross: 'crosswise',
  spiral: 'from the middle outward',
  rails: 'long sides outward',
  corners: 'corners first',
  round: 'round the edge',
  found: 'found by search',
}

/** What to do, as the start of a sentence. */
const ORDER_DEEDS: Record<OrderKind, string> = {
  stated: 'Keep to the manual’s order',
  cross: 'Tighten crosswise',
  spiral: 'Tighten from the middle outward',
  rails: 'Tighten from the middle of the long sides outward',
  corners: 'Tighten the corners first, then what lies between',
  round: 'Tighten one after the other round the edge',
  found: 'Tighten in the order that was found by search',
}

/** "Tighten crosswise in 3 passes", "… in 2 visits of 3 passes". */
export function orderDeed(order: OrderAnswer): string {
  const [first = 0, ...later] = passCounts(order)
  const passes = first === 1 ? 'one pass' : `${first} passes`
  const visits = later.every((count) => count === first)
    ? `${later.length + 1} visits of ${passes}`
    : `${later.length + 1} visits`
  return `${ORDER_DEEDS[order.kind]} in ${later.length > 0 ? visits : passes}`
}

/** How many passes each visit has, in the order of the visits. */
export function passCounts({ passes }: OrderAnswer): number[] {
  const counts = new Map<number, number>()
  for (const { visit } of passes) counts.set(visit, (counts.get(visit) ?? 0) + 1)
  return [...counts.values()]
}
