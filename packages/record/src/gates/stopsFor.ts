/** Which stops an entry would pass over, before it is written. */
import type { FoldedUnit } from '../unit.ts'
import { judged, knownFrom } from './judge.ts'
import { passedStops } from './passedStops.ts'
import type { Facts, Stop } from './stop.ts'

/** The stops that an entry made now would pass over; none: it may be written as it is. Everything in N·m, days as ISO days. */
export function stopsFor(unit: FoldedUnit, happening: { type: string; body: unknown }, facts: Facts = {}): Stop[] {
  const silent = () => passedStops(unit, facts).filter(({ override }) => override === undefined)
  return judged(knownFrom(unit, silent), happening, facts)
}
