/** The entries that count, in the order of the record, each with what it writes. */
import type { BodyOf } from '../events/catalogue.ts'
import type { Write } from '../events/define.ts'
import type { Event } from '../events/event.ts'
import { keyOf } from '../events/places.ts'
import { bodyOf, settling } from '../fold.ts'
import type { FoldedUnit } from '../unit.ts'

/** An entry that stands and is understood. */
export type Done = { event: Event; body: unknown; writes: readonly Write[] }

/** Entries that were not undone and can be read. */
export function standingOf(unit: FoldedUnit): readonly Done[] {
  const known = read.get(unit)
  if (known !== undefined) return known
  const standing = readOf(unit)
  read.set(unit, standing)
  return standing
}

/** A folded unit is never changed, and gates and records ask several times for the same one. */
const read = new WeakMap<FoldedUnit, readonly Done[]>()

function readOf(unit: FoldedUnit): Done[] {
  const undone = new Set(unit.undone.map(({ event }) => event))
  const done = new Map<string, Done>()
  const spokenOf = new Set<string>()
  for (const event of unit.entries) {
    const understood = bodyOf(event)
    if (undone.has(event.id) || !understood.ok) continue
    const { definition, body } = understood
    const writes =
      definition.type === 'clash-settled'
        ? settling(event, body as BodyOf<'clash-settled'>, spokenOf, done)
        : definition.writes(body)
    for (const { at } of writes)
      for (let depth = 0; depth <= at.length; depth += 2) spokenOf.add(keyOf(at.slice(0, depth)))
    done.set(event.id, { event, body, writes })
  }
  return [...done.values()]
}
