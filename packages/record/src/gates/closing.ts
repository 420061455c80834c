/** What a closing step would bury that is unfinished, unread or unsigned. */
import type { Event } from '../events/event.ts'
import type { FoldedUnit } from '../unit.ts'
import { openFigure } from './figures.ts'
import { figuresAt, isDone, isOut, openAtFace, partsAt } from './open.ts'
import type { Open } from './stop.ts'

/** What lies behind a face and is not finished: parts that came out there (those at a hole go on with its bolt), and figures read there. */
export function openBehind(folded: FoldedUnit, standing: readonly Event[], face: string): Open[] {
  return [
    ...partsAt(folded, face, true).map((part): Open => ({ why: { code: 'part-out', part } })),
    ...figuresAt(folded, standing, face).flatMap((reading) => openFigure(folded.things, reading) ?? []),
    ...(face in folded.things.job ? openUnder(folded, face) : []),
  ].map((open) => ({ ...open, face }))
}

/** What a planned job would bury: jobs not done, parts that are out, faces not finished; and jobs that had to come before it. */
export function openUnder(folded: FoldedUnit, job: string): Open[] {
  const { things } = folded
  const { buries, after } = things.job[job] ?? {}
  const buried = (buries?.value ?? []) as string[]
  const before = ((after?.value ?? []) as string[]).filter((other) => other in things.job)
  if (buried.length === 0) return []
  return [...new Set([...before, ...buried.filter((name) => name in things.job)])]
    .filter((other) => !isDone(folded, other))
    .map((other): Open => ({ why: { code: 'job-not-done', job: other } }))
    .concat(
      buried.flatMap((name): Open[] => [
        ...(name in things.part && isOut(things, name) ? [{ why: { code: 'part-out', part: name } } as const] : []),
        ...(name in things.limit ? [openFigure(things, name) ?? []].flat() : []),
        ...(name in folded.faces ? openAtFace(folded, name) : []),
      ]),
    )
}
