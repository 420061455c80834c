/** What is not finished of a unit, of one of its faces, and behind a face. */
import { defaultJobs } from '@gripbook/engine'
import type { BodyOf } from '../events/catalogue.ts'
import type { Place } from '../events/places.ts'
import type { FoldedUnit } from '../unit.ts'
import { benchFace, isFinal } from './benchFace.ts'
import { openComeBacks } from './comeBacks.ts'
import { limited, openFigure } from './figures.ts'
import { own } from './own.ts'
import { doneBefore } from './reopened.ts'
import { openSignature } from './signatures.ts'
import type { Done } from './standing.ts'
import type { Open, Passed } from './stop.ts'

/** What the judge of a release has before him. */
export type Before = {
  folded: FoldedUnit
  /** Entries that stand. */
  standing: readonly Done[]
  /** Stops that entries passed without an override. */
  silent: readonly Passed[]
  onlyPerson: boolean
}

/** Everything that is open of the unit, the faces first. */
export function openOfUnit({ folded, standing, silent, onlyPerson }: Before): Open[] {
  const { things, clashes, missing, notUnderstood } = folded
  const signature = onlyPerson ? undefined : openSignature(standing)
  return [
    ...Object.keys(folded.faces).flatMap((face) => openAtFace(folded, face)),
    ...Object.keys(things.part)
      .filter((part) => isOut(things, part))
      .map((part): Open => ({ why: { code: 'part-out', part } })),
    ...Object.entries(things.plug).flatMap(([plug, { placed }]): Open[] =>
      placed === undefined ? [{ why: { code: 'plug-not-placed', plug } }] : [],
    ),
    ...limited(things).flatMap((reading) => openFigure(standing, things, reading) ?? []),
    ...jobsNotDone(folded, standing, Object.keys(things.job)),
    ...runningClocks(folded).map((clock): Open => ({ why: { code: 'clock-runs', clock } })),
    ...openComeBacks(standing),
    ...clashes.map(openClash),
    ...openPassed(silent),
    ...missing.map((gap): Open => ({ why: { code: 'entries-missing', ...gap } })),
    ...notUnderstood.map(({ event }): Open => ({ why: { code: 'entry-not-understood', event } })),
    ...(signature === undefined ? [] : [signature]),
  ]
}

/** Everything that is open of one face: its bolts, what lies behind it, its clocks, its clashes, its stops, its signature. */
export function openOfFace({ folded, standing, silent, onlyPerson }: Before, face: string): Open[] {
  const signature = onlyPerson ? undefined : openSignature(standing, face)
  const at = { face }
  return [
    ...openAtFace(folded, face),
    ...partsAt(folded, face).map((part): Open => ({ ...at, why: { code: 'part-out', part } })),
    ...figuresAt(folded, standing, face)
      .flatMap((reading) => openFigure(standing, folded.things, reading) ?? [])
      .map((open) => ({ ...open, ...at })),
    ...runningClocks(folded, face).map((clock): Open => ({ ...at, why: { code: 'clock-runs', clock } })),
    ...folded.clashes.filter(({ place }) => place[0] === 'face' && place[1] === face).map(openClash),
    ...openPassed(silent.filter(({ stop }) => stop.face === face)),
    ...(signature === undefined ? [] : [signature]),
  ]
}

/** Bolts, resistance, and whether the cover is on. */
export function openAtFace(folded: FoldedUnit, face: string): Open[] {
  const work = own(folded.faces, face)
  const bench = benchFace(folded, face)
  if (work === undefined || bench === undefined) return []
  const holes = bench.holes.flatMap((hole): Open[] => {
    const at = { face, hole: hole.id }
    return [
      ...(work.holes[hole.id]!.placed === undefined
        ? [{ ...at, why: { code: 'hole-not-placed', ...at } } as const]
        : []),
      ...(isFinal(hole) ? [] : [{ ...at, why: { code: 'hole-not-final', ...at } } as const]),
      ...(hole.resistance === undefined
        ? []
        : [{ ...at, why: { code: 'resistance-stands', ...at, feel: hole.resistance } } as const]),
    ]
  })
  return work.closed?.value === true ? holes : [...holes, { face, why: { code: 'face-not-closed', face } }]
}

/** Out, and neither in again, replaced nor written off; also where devices say different things of it. */
export function isOut(things: FoldedUnit['things'], part: string): boolean {
  const fate = own(things.part, part)?.fate?.value
  return fate !== 'in' && fate !== 'replaced' && fate !== 'written off'
}

/** Parts that are out and belong to the face. */
export function partsAt({ things }: FoldedUnit, face: string): string[] {
  return Object.keys(things.part).filter((part) => things.part[part]!.face?.value === face && isOut(things, part))
}

/** What is put on from outside. @source common practice, no source */
const OUTSIDE: readonly unknown[] = ['bracket', 'clip', 'connector', 'wire']

/** Of these the ones that its cover hides: not those at a hole, which go on with the bolt, nor what is put on from outside. */
export function partsBehind(folded: FoldedUnit, face: string): string[] {
  return partsAt(folded, face).filter((part) => {
    const { hole, what } = folded.things.part[part]!
    return hole === undefined && !OUTSIDE.includes(what?.value)
  })
}

/** Figures with a limit that were read at the face. */
export function figuresAt({ things }: FoldedUnit, standing: readonly Done[], face: string): string[] {
  const here = new Set(
    standing.flatMap(({ event, body }) => {
      const figure = body as BodyOf<'figure-taken'>
      return event.type === 'figure-taken' && figure.face === face ? [figure.reading] : []
    }),
  )
  return limited(things).filter((reading) => here.has(reading))
}

/**
 * Of these jobs the planned ones that are neither left out nor done, or were done before a face was opened again. Jobs that Gripbook plans itself are
 * not asked for: what they are about is, the bolts, faces, parts, plugs and figures.
 */
export function jobsNotDone({ unit, things }: FoldedUnit, standing: readonly Done[], jobs: readonly string[]): Open[] {
  const open = [...new Set(jobs)].flatMap((job): (Open & { why: { job: string } })[] => {
    const planned = own(things.job, job)
    if (planned === undefined || planned.skip?.value === true) return []
    if (planned.done?.value !== true) return [{ why: { code: 'job-not-done', job } }]
    const before = doneBefore(standing, job, planned.face?.value as string | undefined)
    return before === undefined ? [] : [{ why: { code: 'job-before-opening', job, face: before.face } }]
  })
  if (open.length === 0) return []
  const known = new Set(defaultJobs(unit, { plugs: Object.keys(things.plug) }).map(({ id }) => id))
  return open.filter(({ why }) => !known.has(why.job))
}

function runningClocks({ things }: FoldedUnit, face?: string): string[] {
  return Object.keys(things.clock).filter((clock) => {
    const { running, face: at } = things.clock[clock]!
    return running?.value === true && (face === undefined || at?.value === face)
  })
}

function openClash({ place, field }: { place: Place; field: string }): Open {
  const [, face, , hole] = place[0] === 'face' ? place : []
  return {
    ...(face === undefined ? {} : { face }),
    ...(hole === undefined ? {} : { hole }),
    why: { code: 'clash', place, field },
  }
}

/** An entry that passed several stops of one gate is told once: one override would have answered for it. */
function openPassed(silent: readonly Passed[]): Open[] {
  const byStop = new Map<string, Open>()
  for (const {
    event,
    stop: { gate, face, hole },
  } of silent) {
    const at = { ...(face === undefined ? {} : { face }), ...(hole === undefined ? {} : { hole }) }
    byStop.set(`${event} ${gate}`, { ...at, why: { code: 'stop-passed', event, gate, ...at } })
  }
  return [...byStop.values()]
}
