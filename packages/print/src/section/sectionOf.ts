import { type Face, type FaceAnswer, type Hole, intervalOf, readThread, type Thread, type Unit } from '@gripbook/engine'
import { sizeName, trayOf } from '../answer/boltName.ts'
import type { DrawnBolt, Look, SectionInput } from './input.ts'

export type SectionOf = {
  unit: Unit
  face: Face
  hole: Hole
  /** Absent while nothing was computed: then the hole is drawn empty. */
  answer?: FaceAnswer
  /** Kind to show; left out: the one that belongs here, else the one found. */
  kind?: string
  look: Look
  prefix?: string
}

/**
 * What `sectionDrawing` draws of a hole of a unit: with the bolt that belongs in it, or the likeliest, or the one found, and with the reason.
 * Lengths in mm. Errors: a thread that cannot be read stops as a bug; the file's checks have read it before.
 */
export function sectionOf({ unit, face, hole, answer, kind, look, prefix }: SectionOf): SectionInput {
  const shown = kind ?? shownIn(hole, answer)
  const bolt = shown === undefined ? undefined : drawnBolt(unit, face, hole, shown, roleOf(hole, shown, answer), answer)
  const least = hole.minimumEngagement ?? face.minimumEngagement
  return {
    hole,
    thread: bolt?.thread ?? threadOf(hole.thread),
    face: {
      ...(face.gasket === undefined ? {} : { gasket: face.gasket }),
      ...(least === undefined ? {} : { minimumEngagement: intervalOf(least) }),
    },
    ...(bolt ? { bolt } : {}),
    title: `${face.name ?? face.id}, hole ${hole.id}${bolt ? `: ${sizeName(bolt.kind)}` : ''}`,
    look,
    ...(prefix === undefined ? {} : { prefix }),
  }
}

function shownIn(hole: Hole, answer: FaceAnswer | undefined): string | undefined {
  return answer?.holes[hole.id]?.best ?? (hole.asFound === 'none' ? undefined : hole.asFound)
}

function roleOf(hole: Hole, kind: string, answer: FaceAnswer | undefined): string {
  const here = answer?.holes[hole.id]
  if (here?.best === kind) return here.verdict === 'settled' ? 'belongs here' : 'most likely'
  return hole.asFound === kind ? 'as found' : 'tried'
}

function drawnBolt(
  unit: Unit,
  face: Face,
  hole: Hole,
  id: string,
  role: string,
  answer: FaceAnswer | undefined,
): DrawnBolt | undefined {
  const kind = trayOf(unit, face).get(id)
  const pair = answer?.pairs.find((one) => one.hole === hole.id && one.kind === id)
  if (!kind || !pair) return undefined
  const { verdict, line, why, margin } = pair
  return { kind, thread: threadOf(kind.thread, hole.thread), role, verdict, line, why, margin }
}

/** The first of the threads, or the first that is also among the others. */
export function threadOf(threads: string | string[], others: string | string[] = threads): Thread {
  const all = read(threads)
  const shared = read(others).map(({ name }) => name)
  return all.find(({ name }) => shared.includes(name)) ?? all[0]!
}

function read(threads: string | string[]): Thread[] {
  return (typeof threads === 'string' ? [threads] : threads).flatMap((text) => {
    const thread = readThread(text)
    return thread.ok ? [thread.value] : []
  })
}
