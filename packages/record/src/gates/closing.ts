/** What a closing step would bury that is unfinished, unread or unsigned. */
import type { Job } from '@gripbook/engine'
import { canonical } from '../canonical.ts'
import type { BodyOf } from '../events/catalogue.ts'
import type { Json } from '../events/json.ts'
import type { FoldedUnit } from '../unit.ts'
import { openFigure, openReading } from './figures.ts'
import { figuresAt, isOut, jobsNotDone, openAtFace, partsAt, partsBehind } from './open.ts'
import { own } from './own.ts'
import type { Done } from './standing.ts'
import type { Open } from './stop.ts'

/**
 * What a face would be closed over: bolts of it that are not tight, resistance that stands, what lies behind it, and what the plan says that its cover
 * buries or that its closing needs.
 */
export function openToClose(folded: FoldedUnit, standing: readonly Done[], face: string): Open[] {
  const bolts = openAtFace(folded, face).filter(
    ({ why }) => why.code === 'hole-not-final' || why.code === 'resistance-stands',
  )
  const planned = ['place', 'close'].flatMap((step) => {
    const job = `${face}/${step}`
    return [...openBuried(folded, standing, job), ...openNeeds(folded.things, standing, job)]
  })
  return eachOnce([...bolts, ...openBehind(folded, standing, face), ...planned])
}

/** What a job that buries something would bury, jobs that come before it, and what it needs. One that buries nothing can be done again: nothing stops it. */
export function openUnder(folded: FoldedUnit, standing: readonly Done[], job: string): Open[] {
  const { buries, after } = own(folded.things.job, job) ?? {}
  if (((buries?.value ?? []) as string[]).length === 0) return []
  return eachOnce([
    ...jobsNotDone(folded, standing, (after?.value ?? []) as string[]),
    ...openBuried(folded, standing, job),
    ...openNeeds(folded.things, standing, job),
  ])
}

/**
 * What lies behind a face and is not finished: parts that came out there, figures with a limit that were read there, and faces whose covers this one
 * hides, with what lies behind those.
 */
function openBehind(folded: FoldedUnit, standing: readonly Done[], face: string): Open[] {
  return [face, ...facesBehind(folded, face)].flatMap((at): Open[] => [
    ...(at === face ? [] : openAtFace(folded, at)),
    ...(at === face ? partsBehind : partsAt)(folded, at).map(
      (part): Open => ({ face: at, why: { code: 'part-out', part } }),
    ),
    ...figuresAt(folded, standing, at)
      .flatMap((reading) => openFigure(standing, folded.things, reading) ?? [])
      .map((open) => ({ ...open, face: at })),
  ])
}

/** Faces that are hidden once this one is closed, nearest first; a ring of faces that hide each other ends. */
function facesBehind({ unit }: FoldedUnit, face: string): string[] {
  const found = [face]
  for (const outer of found)
    for (const { id, inside } of unit.faces) if (inside === outer && !found.includes(id)) found.push(id)
  return found.slice(1)
}

/** Jobs, parts and faces that the plan says a job buries, as far as they are not finished. */
function openBuried(folded: FoldedUnit, standing: readonly Done[], job: string): Open[] {
  const { things, faces } = folded
  const buried = (own(things.job, job)?.buries?.value ?? []) as string[]
  return [
    ...jobsNotDone(folded, standing, buried),
    ...buried
      .filter((name) => Object.hasOwn(things.part, name) && isOut(things, name))
      .map((part): Open => ({ why: { code: 'part-out', part } })),
    ...buried
      .filter((name) => Object.hasOwn(faces, name))
      .flatMap((face) => [...openAtFace(folded, face), ...openBehind(folded, standing, face)]),
  ]
}

/** Readings and signatures that a job needs. Parts and tools that must be at hand are no stop: nothing is buried without them. */
function openNeeds(things: FoldedUnit['things'], standing: readonly Done[], job: string): Open[] {
  const needs = (own(things.job, job)?.needs?.value ?? []) as NonNullable<Job['needs']>
  return needs.flatMap((need) => openNeed(things, standing, need))
}

/** Two ways to the same thing tell it once. */
function eachOnce(open: readonly Open[]): Open[] {
  return [...new Map(open.map((one) => [canonical(one.why as unknown as Json), one])).values()]
}

function openNeed(
  things: FoldedUnit['things'],
  standing: readonly Done[],
  need: NonNullable<Job['needs']>[number],
): Open[] {
  const { name, what } = typeof need === 'string' ? { name: need, what: undefined } : need
  if (what === 'signature') {
    const signed = standing.some(
      ({ event, body }) => event.type === 'step-signed' && (body as BodyOf<'step-signed'>).step === name,
    )
    return signed ? [] : [{ why: { code: 'not-signed', step: name } }]
  }
  return [(what === 'reading' ? openReading : openFigure)(standing, things, name) ?? []].flat()
}
