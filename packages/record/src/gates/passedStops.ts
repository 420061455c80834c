/** Which entries of a record passed over a stop, and which of them a person answered for. */
import { knew } from '../clash.ts'
import { readBody } from '../events/catalogue.ts'
import { fold } from '../fold.ts'
import type { FoldedUnit } from '../unit.ts'
import { judged, knownFrom, standingOf } from './judge.ts'
import type { Facts, Passed } from './stop.ts'

export function passedStops(unit: FoldedUnit, facts: Omit<Facts, 'today'> = {}): Passed[] {
  const standing = standingOf(unit)
  const passed: Passed[] = []
  const used = new Set<string>()
  const byId = new Map(standing.map((event) => [event.id, event]))
  for (const event of standing) {
    const read = readBody(event)
    if (!read.ok) continue
    const known = fold(
      unit.id,
      standing.filter((other) => knew(event, other)),
    )
    const stops = judged(
      knownFrom(known, () => passed.filter((one) => one.override === undefined && knew(event, byId.get(one.event)!))),
      { type: event.type, body: read.body },
      { ...facts, today: event.at.slice(0, 10) },
    )
    for (const gate of new Set(stops.map((stop) => stop.gate))) {
      const ofGate = stops.filter((stop) => stop.gate === gate)
      const { face, hole } = ofGate[0]!
      const overrides = standing.filter(
        ({ type, body, id, ...rest }) =>
          type === 'gate-overridden' &&
          !used.has(id) &&
          body.gate === gate &&
          body.face === face &&
          body.hole === hole &&
          knew(event, { type, body, id, ...rest }),
      )
      for (const { id } of overrides) used.add(id)
      const last = overrides.at(-1)
      const override = last && { event: last.id, who: last.who, reason: last.body.reason as string }
      for (const stop of ofGate) passed.push({ event: event.id, stop, ...(override === undefined ? {} : { override }) })
    }
  }
  return passed
}
