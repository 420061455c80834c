/**
 * Faces that were opened again after the unit came back, and what proves nothing any more since: figures that were taken at the end, and jobs that
 * were ticked off by hand. What belongs to a face is as old as the last time that this one was opened; what belongs to none, as that of any face.
 */
import { canonical } from '../canonical.ts'
import { knew } from '../clash.ts'
import type { BodyOf } from '../events/catalogue.ts'
import type { Event } from '../events/event.ts'
import type { Json } from '../events/json.ts'
import type { FoldedUnit } from '../unit.ts'
import { asksForAnswer } from './comeBacks.ts'
import { own } from './own.ts'
import { type Done, standingOf } from './standing.ts'

/** A face that was opened again, by which entry. */
export type Opening = { event: Event; face: string }
type Things = FoldedUnit['things']

/**
 * In the order of the record. Only come-backs that ask for an answer begin such a round: records from before there was an answer are judged as they
 * were. What a come-back did not know of counts as after it: nobody released the unit over it.
 */
function openedAgain(standing: readonly Done[]): Opening[] {
  const backs = standing.filter(asksForAnswer)
  if (backs.length === 0) return []
  return standing.flatMap(({ event, body }) =>
    event.type === 'face-opened' && backs.some((back) => !knew(back.event, event))
      ? [{ event, face: (body as BodyOf<'face-opened'>).face }]
      : [],
  )
}

/** The last opening that an entry did not know of, at its face; an entry of no face is of the whole unit. */
function openedSince(openings: readonly Opening[], entry: Event, face: string | undefined): Opening | undefined {
  return openings.findLast((opening) => (face === undefined || opening.face === face) && !knew(entry, opening.event))
}

/** A figure that holds, the entry that took it, and the opening since which it counts no more. */
export type Read = { value: Json; taken?: Done; before?: Opening }
type When = BodyOf<'figure-taken'>['when']

/**
 * Undefined where none holds. Of several entries that took the same figure, one that knew every opening is enough. A figure about which devices
 * contradicted each other is as old as the reading that was settled on.
 */
function readingThatHolds(standing: readonly Done[], things: Things, reading: string, when: When): Read | undefined {
  const holds = own(things.reading, reading)?.[when]
  if (holds === undefined) return undefined
  const value = canonical(holds.value)
  const openings = openedAgain(standing)
  const since = taken(standing, reading, when)
    .filter(({ writes }) => writes.some((write) => 'field' in write && canonical(write.value) === value))
    .map((done) => ({ taken: done, before: openedSince(openings, done.event, faceOf(done)) }))
  const counts = since.findLast(({ before }) => before === undefined) ?? since.at(-1)
  return {
    value: holds.value,
    ...(counts === undefined ? {} : { taken: counts.taken }),
    ...(counts?.before === undefined ? {} : { before: counts.before }),
  }
}

/** The figure as it was read at the end. */
export function endReading(standing: readonly Done[], things: Things, reading: string): Read | undefined {
  return readingThatHolds(standing, things, reading, 'after')
}

/** Readings at the end that count no more, in the order of the record. */
export function endReadingsBefore(standing: readonly Done[], reading: string): Done[] {
  const openings = openedAgain(standing)
  return taken(standing, reading, 'after').filter(
    (done) => openedSince(openings, done.event, faceOf(done)) !== undefined,
  )
}

/**
 * The figure as it was read last since teardown. What was read while it was open stands in for one at the end that counts no more only where it was
 * read since; of itself it stays true: opening a face changes no part.
 */
export function lastReading(standing: readonly Done[], things: Things, reading: string): Read | undefined {
  const after = endReading(standing, things, reading)
  const during = readingThatHolds(standing, things, reading, 'during')
  if (after === undefined) return during && { value: during.value }
  return after.before !== undefined && during !== undefined && during.before === undefined ? during : after
}

/** The opening since which a job counts as not done; undefined where somebody did it who knew of every one. `face`: that of the job. */
export function doneBefore(standing: readonly Done[], job: string, face: string | undefined): Opening | undefined {
  const openings = openedAgain(standing)
  if (openings.length === 0) return undefined
  const since = standing
    .filter(({ event, body }) => event.type === 'job-done' && (body as BodyOf<'job-done'>).job === job)
    .map(({ event }) => openedSince(openings, event, face))
  return since.includes(undefined) ? undefined : since.at(-1)
}

/** For whoever shows a figure: the face that was opened again since it was read at the end; undefined where the figure counts. */
export function readBeforeOpening(unit: FoldedUnit, reading: string): string | undefined {
  return endReading(standingOf(unit), unit.things, reading)?.before?.face
}

/** For whoever shows a job: the face that was opened again since it was done; undefined where it counts. */
export function doneBeforeOpening(unit: FoldedUnit, job: string, face?: string): string | undefined {
  return doneBefore(standingOf(unit), job, face)?.face
}

function taken(standing: readonly Done[], reading: string, when: When): Done[] {
  return standing.filter(({ event, body }) => {
    const figure = body as BodyOf<'figure-taken'>
    return event.type === 'figure-taken' && figure.reading === reading && figure.when === when
  })
}

function faceOf({ body }: Pick<Done, 'body'>): string | undefined {
  return (body as { face?: string }).face
}
