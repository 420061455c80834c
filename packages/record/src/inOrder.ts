import { must } from '@gripbook/engine'
import { EVENT_LIMITS, type Event } from './events/event.ts'

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

/**
 * The tick of an entry made at `at` by a device whose highest tick of the unit is `highest` (0 for none). An entry with the highest tick that there
 * can be, which no honest clock makes, does not stop the work: ticks then stay there, and only the listing suffers.
 */
export function tickAfter(at: string, highest: number): number {
  const clock = Date.parse(at)
  must(!Number.isNaN(clock), 'tickAfter: this is no time', at)
  return Math.min(Math.max(clock, highest + 1, 1), EVENT_LIMITS.tick)
}
