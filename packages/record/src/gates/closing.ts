/** What a closing step would bury that is unfinished, unread or unsigned. */
import type { Job } from '@gripbook/engine'
import type { BodyOf } from '../events/catalogue.ts'
import type { FoldedUnit } from '../unit.ts'
import { isRead, openFigure } from './figures.ts'
import { figuresAt, isDone, isOut, openAtFace, partsAt } from './open.ts'
import { own } from './own.ts'
import type { Done } from './standing.ts'
import type { Open } from './stop.ts'

/**
 * What lies behind a face and is not finished: parts that came out there (those at a hole go on with its bolt), figures with a limit that were read
 * there, and faces whose covers this one hides, with what lies behind those.
 */
export function openBehind(folded: FoldedUnit, standing: readonly Done[], face: string): Open[] {
  const behind = facesBehind(folded, face)
  return [face, ...behind].flatMap((at): Open[] => [
    ...(at === face ? [] : openAtFace(folded, at)),
    ...partsAt(folded, at, at === face).map((part): Open => ({ face: at, why: { code: 'part-out', part } })),
    ...figuresAt(folded, standing, at)
      .flatMap((reading) => openFigure(folded.things, reading) ?? [])
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

/**
 * What a planned job that buries something would bury unfinished: jobs, parts and faces; jobs that come before it; readings and signatures that it
 * needs. A job that buries nothing can be done again, so nothing stops it.
 */
export function openUnder(folded: FoldedUnit, standing: readonly Done[], job: string): Open[] {
  const { things, faces } = folded
  const { buries, after, needs } = own(things.job, job) ?? {}
  const buried = (buries?.value ?? []) as string[]
  if (buried.length === 0) return []
  const jobs = new Set(
    [...((after?.value ?? []) as string[]), ...buried].filter((name) => Object.hasOwn(things.job, name)),
  )
  return [
    ...[...jobs]
      .filter((other) => !isDone(things, other))
      .map((other): Open => ({ why: { code: 'job-not-done', job: other } })),
    ...buried
      .filter((name) => Object.hasOwn(things.part, name) && isOut(things, name))
      .map((part): Open => ({ why: { code: 'part-out', part } })),
    ...buried
      .filter((name) => Object.hasOwn(faces, name))
      .flatMap((face) => [...openAtFace(folded, face), ...openBehind(folded, standing, face)]),
    ...((needs?.value ?? []) as NonNullable<Job['needs']>).flatMap((need) => openNeed(things, standing, need)),
  ]
}

/** A reading or a signature that a job needs and that is not there. Parts and tools that must be at hand are no stop: nothing is buried without them. */
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
  if (what === 'reading' && !isRead(things, name)) return [{ why: { code: 'figure-not-taken', reading: name } }]
  return [openFigure(things, name) ?? []].flat()
}
