import type { Event } from './events/event.ts'

/**
 * The order of a unit's entries, for `sort`: by tick, then device, number and id (texts by UTF-16 units). Any two entries stand in the same order
 * on every device, whichever others are there; an entry never stands before one that its device had seen, whatever the clocks say.
 */
export function inOrder(a: Event, b: Event): number {
  return a.tick - b.tick || byText(a.device, b.device) || a.seq - b.seq || byText(a.id, b.id)
}

function byText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}
