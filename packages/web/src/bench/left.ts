/** Who did what last on a face: what "undo" takes back, where it was paused, who else is at it. */
import type { Event, FoldedUnit } from '@gripbook/record'
import { standingOf } from '../unit/standing.ts'

/** What hands do at the bench, and report of it. */
const DONE: ReadonlySet<string> = new Set([
  'bolt-placed',
  'hand-started',
  'run-down',
  'turns-counted',
  'snugged',
  'pass-torqued',
  'witness-marked',
  'face-closed',
  'face-opened',
  'resistance-felt',
  'resistance-cleared',
  'bolt-backed-out',
  'gate-overridden',
])
/** What one tap writes follows each other within this, ms: no hand is as quick. */
const ONE_TAP = 60

type Told = Pick<FoldedUnit, 'entries' | 'undone'>

/** The entries of the last tap of this device on this face that still hold, in the order of the record; none where there is nothing to undo. */
export function lastTap({ entries, undone }: Told, face: string, device: string): Event[] {
  const gone = new Set(undone.map(({ event }) => event))
  const own = entries.filter((event) => event.device === device)
  const at = own.findLastIndex(({ id, type, body }) => DONE.has(type) && body.face === face && !gone.has(id))
  const last = own[at]
  if (last === undefined) return []
  const tap = [last]
  for (let i = at - 1; i >= 0; i--) {
    const [before, after] = [own[i]!, tap[0]!]
    const quick = Date.parse(after.at) - Date.parse(before.at) <= ONE_TAP
    const together = quick && (before.type === 'part-went-in' || (DONE.has(before.type) && goesWith(tap, before)))
    if (!together || gone.has(before.id)) break
    tap.unshift(before)
  }
  return tap
}

/** One tap is about one hole, or does the same at many. */
function goesWith(tap: readonly Event[], { type, body }: Event): boolean {
  const atOne = tap.every((one) => one.type === 'part-went-in' || one.body.hole === body.hole)
  return atOne || tap.every((one) => one.type === type)
}

export type Left = { who: string; at: string; hole: string | null; step: string | null }

/** Where the work on a face was paused; null where somebody went on since, or nobody paused. */
export function leftAt(told: Told, face: string): Left | null {
  const last = standingOf(told).findLast(
    ({ type, body }) => (DONE.has(type) || type === 'work-paused') && body.face === face,
  )
  if (last?.type !== 'work-paused') return null
  const text = (value: unknown) => (typeof value === 'string' ? value : null)
  return { who: last.who, at: last.at, hole: text(last.body.hole), step: text(last.body.step) }
}

/** So long after the last entry somebody still counts as being at it, ms. */
const STILL_THERE = 180_000

/** Who else has just done something on this face, on another device; null where nobody has. */
export function otherAt({ entries }: Told, face: string, device: string, now: number): string | null {
  const last = entries.findLast((event) => event.device !== device && DONE.has(event.type) && event.body.face === face)
  return last !== undefined && Math.abs(now - Date.parse(last.at)) < STILL_THERE ? last.who : null
}
