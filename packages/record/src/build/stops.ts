/** Stops that were passed, resistance that was felt, and signatures. */
import type { BodyOf } from '../events/catalogue.ts'
import { openSignature } from '../gates/signatures.ts'
import { standingOf } from '../gates/standing.ts'
import type { Passed } from '../gates/stop.ts'
import { sayEntry } from '../say.ts'
import type { BuiltResistance, BuiltSignature, BuiltStop } from './buildRecord.ts'
import { byTime, given, type Telling } from './telling.ts'

/**
 * Stops by the entry that passed them, with the person who answered for it. An override after which nothing passed that stop is listed too: a
 * person has said that he goes on, and whoever reads the record is to see it.
 */
export function builtStops(telling: Telling, passed: readonly Passed[]): BuiltStop[] {
  const byKey = new Map<string, Passed[]>()
  for (const one of passed) {
    const key = `${one.event} ${one.stop.gate}`
    byKey.set(key, [...(byKey.get(key) ?? []), one])
  }
  const used = new Set(passed.flatMap(({ override }) => (override === undefined ? [] : [override.event])))
  const found = [...byKey.values()].map((all): BuiltStop => {
    const [{ event: id, stop, override }] = all as [Passed, ...Passed[]]
    const event = telling.byId(id)!
    const by = override && telling.byId(override.event)
    return {
      ...telling.done(event),
      says: sayEntry(event),
      gate: stop.gate,
      stops: all.map((one) => one.stop),
      ...(by === undefined || override === undefined
        ? {}
        : { override: { ...telling.done(by), reason: override.reason } }),
    }
  })
  const alone = telling
    .of('gate-overridden')
    .filter(({ event }) => !used.has(event.id))
    .map(
      ({ event, body: { gate, reason } }): BuiltStop => ({
        ...telling.done(event),
        says: sayEntry(event),
        gate,
        stops: [],
        override: { ...telling.done(event), reason },
      }),
    )
  return [...found, ...alone].toSorted(byTime)
}

/** Each with the first clearing of its hole after it, in the order of the record. */
export function builtResistances(telling: Telling): BuiltResistance[] {
  const cleared = telling.of('resistance-cleared')
  return telling.of('resistance-felt').map(({ event, body }) => {
    const { face, hole, feel, turns }: BodyOf<'resistance-felt'> = body
    const after = cleared.find(
      (other) => other.body.face === face && other.body.hole === hole && telling.isLater(other.event, event),
    )
    return {
      ...telling.done(event),
      face,
      hole,
      feel,
      ...given({ turns, cleared: after && { ...telling.done(after.event), found: after.body.found } }),
    }
  })
}

export function builtSignatures(telling: Telling): BuiltSignature[] {
  const standing = standingOf(telling.folded)
  return telling.of('step-signed').map(({ event, body: { as, step, face } }) => ({
    ...telling.done(event),
    as,
    step,
    ...given({ face }),
    before:
      as === 'checker' &&
      openSignature(
        standing.filter((other) => other.event.type !== 'step-signed' || other.event.id === event.id),
        face,
      )?.why.code === 'signed-before',
  }))
}
