/** What came out and went in: parts, plugs, selective parts, bolts that left or joined the tray, and the clocks that ran. */
import type { Quantity } from '@gripbook/engine'
import type { Json } from '../events/json.ts'
import type { Standing } from '../unit.ts'
import type { BuildRecord, BuiltClock, BuiltPart } from './buildRecord.ts'
import { given, type Telling } from './telling.ts'

const MINUTE = 60_000

export function builtParts(telling: Telling): BuiltPart[] {
  const { things } = telling.folded
  const written = new Map(telling.of('part-written-off').map((told) => [told.event.id, told.body]))
  const replaced = new Map(telling.of('part-replaced').map((told) => [told.event.id, told.body]))
  const wentIn = new Map(telling.of('part-went-in').map((told) => [told.event.id, told.body]))
  return Object.entries(things.part).map(([id, fields]): BuiltPart => {
    const fate = fields.fate
    const is = (fate?.value ?? 'out') as BuiltPart['fate']
    const fateBy = fate === undefined || is === 'out' ? undefined : telling.doneBy(fate)
    const event = fate?.event ?? ''
    const { wayRound } = wentIn.get(event) ?? {}
    return {
      id,
      what: textOf(fields.what) ?? 'other',
      ...given({
        name: textOf(fields.name),
        count: fields.count?.value as number | undefined,
        face: textOf(fields.face),
        hole: textOf(fields.hole),
        place: textOf(fields.place),
        wayRound: textOf(fields.wayRound),
        condition: textOf(fields.condition),
      }),
      fate: is,
      ...(is === 'in' && fateBy !== undefined ? { wentIn: { ...fateBy, ...given({ wayRound }) } } : {}),
      ...given({
        by: replaced.get(event)?.by,
        reason: replaced.get(event)?.reason ?? written.get(event)?.reason,
        fateBy,
      }),
    }
  })
}

export function builtPlugs({ folded }: Telling): BuildRecord['plugs'] {
  return Object.entries(folded.things.plug).map(([id, { socket, placed, tag, colours }]) => ({
    id,
    ...given({
      found: textOf(socket),
      placed: textOf(placed),
      tag: textOf(tag),
      colours: colours?.value as string[] | undefined,
    }),
  }))
}

/** The part that was chosen last for each place. */
export function builtFits(telling: Telling): BuildRecord['fits'] {
  const chosen = new Map(telling.of('part-chosen').map((told) => [told.body.place, told]))
  return [...chosen.values()].map(({ event, body: { place, part, thickness, reason } }) => ({
    ...telling.done(event),
    place,
    part,
    ...given({ thickness: thickness as Quantity | undefined, reason }),
  }))
}

export function builtBolts(telling: Telling): BuildRecord['bolts'] {
  return [
    ...telling.of('bolts-written-off').map(({ event, body: { face, kind, count, reason } }) => ({
      ...telling.done(event),
      what: 'written off' as const,
      kind,
      count,
      ...given({ face, reason }),
    })),
    ...telling.of('bolts-added').map(({ event, body: { face, kind, count, from } }) => ({
      ...telling.done(event),
      what: 'added' as const,
      kind,
      count,
      ...given({ face, reason: from }),
    })),
  ]
}

/** Each with the first stop of it that comes later in the record. */
export function builtClocks(telling: Telling): BuiltClock[] {
  const stopped = telling.of('clock-stopped')
  return telling.of('clock-started').map(({ event, body: { clock, what, minutes, face } }) => {
    const stop = stopped.find(({ event: later, body }) => body.clock === clock && telling.isLater(later, event))
    // another device may have stopped it, and that one's clock may lag
    const ran = stop && Math.max(0, (Date.parse(stop.event.at) - Date.parse(event.at)) / MINUTE)
    return {
      id: clock,
      what,
      minutes,
      ...given({ face, stopped: stop && telling.done(stop.event), ran }),
      started: telling.done(event),
      ...(ran !== undefined && ran > minutes ? { over: ran - minutes } : {}),
    }
  })
}

function textOf(standing: Standing<Json> | undefined): string | undefined {
  return standing?.value as string | undefined
}
