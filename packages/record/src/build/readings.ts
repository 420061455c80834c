/** Readings and figures of a build record, each with its uncertainty and its instrument. */
import type { Quantity } from '@gripbook/engine'
import type { BodyOf } from '../events/catalogue.ts'
import { keyOf, type Place } from '../events/places.ts'
import { heldAgainst, openFigure } from '../gates/figures.ts'
import { endReading, endReadingsBefore } from '../gates/reopened.ts'
import { standingOf } from '../gates/standing.ts'
import type { BuiltFigure, BuiltReading, TakenFigure } from './buildRecord.ts'
import { instrumentOf } from './faces.ts'
import { given, type Telling, type Told } from './telling.ts'

export function builtReadings(telling: Telling): BuiltReading[] {
  const taken = telling.of('reading-taken')
  const last = new Map(taken.map(({ event, body }) => [keyOf([...placeOf(body.of), body.of.quantity]), event.id]))
  return taken.map(({ event, body: { of, value, instrument, repeated, note } }) => ({
    ...telling.done(event),
    place: placeOf(of),
    quantity: of.quantity,
    value: value as Quantity,
    ...given({ instrument: instrument && instrumentOf(telling, instrument), repeated, note }),
    replaced: last.get(keyOf([...placeOf(of), of.quantity])) !== event.id,
  }))
}

function placeOf(of: { face?: string; hole?: string; kind?: string }): Place {
  return (['face', 'hole', 'kind'] as const).flatMap((what) => (of[what] === undefined ? [] : [what, of[what]]))
}

/** Every figure that was taken or has a limit, as it holds now. Figures that devices contradict each other about have no value until it is settled. */
export function builtFigures(telling: Telling): BuiltFigure[] {
  const { things } = telling.folded
  const standing = standingOf(telling.folded)
  const names = new Set([...Object.keys(things.limit), ...Object.keys(things.reading)])
  const taken = new Map(telling.of('figure-taken').map((told) => [told.event.id, told]))
  return [...names].map((name) => {
    const fields = things.reading[name] ?? {}
    const limit = things.limit[name]?.limit?.value as BuiltFigure['limit']
    const figure = (when: 'before' | 'during' | 'after'): TakenFigure | undefined => {
      const told = fields[when] === undefined ? undefined : taken.get(fields[when].event)
      return told && takenFigure(telling, told)
    }
    const [before, during] = [figure('before'), figure('during')]
    const atEnd = endReading(standing, things, name)
    const counts = atEnd?.before === undefined ? atEnd?.taken : undefined
    const after = counts && takenFigure(telling, counts as Told<'figure-taken'>)
    const earlier = endReadingsBefore(standing, name).map((done) => takenFigure(telling, done as Told<'figure-taken'>))
    const face = [...taken.values()].find(({ body }) => body.reading === name && body.face !== undefined)?.body.face
    const waived = fields.waived
    return {
      name,
      ...given({ face, limit, before, during, after }),
      ...(earlier.length === 0 ? {} : { earlier }),
      wasOutside: before !== undefined && limit !== undefined && heldAgainst(before, limit) === 'outside',
      verdict: waived !== undefined ? 'waived' : limit === undefined ? 'no limit' : verdictOf(telling, name),
      ...(waived === undefined ? {} : { waived: { ...telling.doneBy(waived), reason: waived.value as string } }),
    }
  })
}

function verdictOf({ folded }: Telling, name: string): BuiltFigure['verdict'] {
  switch (openFigure(standingOf(folded), folded.things, name)?.why.code) {
    case 'figure-outside':
      return 'outside'
    case 'figure-not-taken':
      return 'not taken'
    case 'figure-before-opening':
      return 'before opening'
    case 'figure-in-other-unit':
      return 'other unit'
    default:
      return 'inside'
  }
}

function takenFigure(telling: Telling, { event, body }: Told<'figure-taken'>): TakenFigure {
  const { value, unit, plusMinus, instrument, conditions }: BodyOf<'figure-taken'> = body
  return {
    ...telling.done(event),
    value,
    unit,
    ...given({ plusMinus, instrument: instrument && instrumentOf(telling, instrument), conditions }),
  }
}
