/** The quantities of one hole and its bolt as levels in mm, counted from the seat: down into the case is positive. */
import { add, type Hole, type Interval, intervalOf, type Kind } from '@gripbook/engine'
import type { DrawnThread, SectionInput } from './input.ts'

/** An interval with the place where it is drawn: its middle, or its known end when the other end is unknown. */
export type Seen = Interval & { at: number; known: boolean }

export type Measures = {
  bracket: Seen
  grip: Seen
  gasket: Seen
  washer: Seen
  mouth: Seen
  threadDepth: Seen
  /** Blind: the bottom's depth. Through: the depth of the wall, mouth and thread together. */
  bottom: Seen
  through: boolean
  behind: Seen
  need: Interval | null
  bolt: BoltMeasures | null
}

export type BoltMeasures = {
  length: Seen
  threadLength: Seen
  tip: Seen
  /** null where the length of the bolt or of what it clamps is unknown. */
  stickOut: Seen | null
  engagement: Interval | null
  /** The overlap of full threads as drawn, from the middles. null: none, or not known. */
  engaged: { from: number; to: number } | null
}

const NOTHING: Interval = { lo: 0, hi: 0 }

/** An interval as it is drawn. */
export function seen(interval: Interval): Seen {
  const known = Number.isFinite(interval.hi)
  return { ...interval, known, at: known ? (interval.lo + interval.hi) / 2 : interval.lo }
}

function orNone(quantity: Parameters<typeof intervalOf>[0]): Interval {
  return quantity === undefined ? NOTHING : intervalOf(quantity)
}

function washerOf(kind: Kind | undefined): Interval {
  const washer = kind?.washer
  if (washer === undefined) return NOTHING
  return intervalOf(typeof washer === 'object' && 'thickness' in washer ? washer.thickness : washer)
}

/**
 * Lead and full thread of a bolt in mm. Not stated: the lead is 1 to 2 pitches, the thread runs to the head less a run-out of 0 to 2.5 pitches
 * (the unit file's defaults).
 */
export function threadOf(kind: Kind, { pitch }: DrawnThread): { length: Seen; threadLength: Seen; tip: Seen } {
  const length = seen(intervalOf(kind.length))
  const tip = seen(kind.tip === undefined ? { lo: pitch, hi: 2 * pitch } : intervalOf(kind.tip))
  const stated =
    kind.threadLength === undefined
      ? { lo: Math.max(0, length.lo - 2.5 * pitch), hi: length.hi }
      : intervalOf(kind.threadLength)
  const threadLength = seen({ lo: Math.min(stated.lo, length.hi), hi: Math.min(stated.hi, length.hi) })
  if (kind.threadLength === undefined && length.known) threadLength.at = Math.max(0, length.at - 1.25 * pitch)
  return { length, threadLength, tip }
}

/**
 * Least and greatest overlap of full threads: min of (s − u − c), (b − u), T and (c + T − s + b). All but s − c pull one way; in s − c the
 * overlap rises and then falls, so its least is at an end and its greatest where the falling line meets the rising one.
 */
export function engagementOf(s: Interval, u: Interval, b: Interval, c: Interval, T: Interval): Interval {
  const overlap = (x: number, u: number, b: number, T: number) => Math.max(0, Math.min(x - u, b - u, T, T + b - x))
  const deep = { lo: s.lo - c.hi, hi: s.hi - c.lo }
  const peak = Number.isFinite(T.hi + b.hi) ? Math.min(deep.hi, Math.max(deep.lo, (T.hi + b.hi + u.lo) / 2)) : deep.hi
  return {
    lo: Math.min(overlap(deep.lo, u.hi, b.lo, T.lo), overlap(deep.hi, u.hi, b.lo, T.lo)),
    hi: overlap(peak, u.lo, b.hi, T.hi),
  }
}

function bottomOf(hole: Hole, mouth: Seen, threadDepth: Seen): Seen {
  const wall = add(mouth, threadDepth)
  if (hole.ending === 'through') return { ...seen(wall), at: mouth.at + threadDepth.at }
  const stated = intervalOf(hole.bottomDepth)
  const bottom = seen({ lo: Math.max(stated.lo, Math.min(wall.lo, stated.hi)), hi: stated.hi })
  return { ...bottom, at: Math.max(bottom.at, mouth.at + threadDepth.at) }
}

export function measure({ hole, face, bolt, thread }: SectionInput): Measures {
  const mouth = seen(orNone(hole.mouth))
  const threadDepth = seen(intervalOf(hole.threadDepth))
  const gasket = seen(orNone(hole.gasket ?? face?.gasket))
  const grip = seen(intervalOf(hole.grip))
  const bracket = seen(orNone(hole.bracket))
  const washer = seen(washerOf(bolt?.kind))
  const need =
    hole.minimumEngagement === undefined ? (face?.minimumEngagement ?? null) : intervalOf(hole.minimumEngagement)
  const measures: Measures = {
    bracket,
    grip,
    gasket,
    washer,
    mouth,
    threadDepth,
    bottom: bottomOf(hole, mouth, threadDepth),
    through: hole.ending === 'through',
    behind: seen(intervalOf(hole.behind)),
    need,
    bolt: null,
  }
  if (bolt === undefined) return measures
  const own = threadOf(bolt.kind, bolt.thread)
  const stack = [grip, bracket, gasket, washer].reduce<Interval>(add, NOTHING)
  const placed = own.length.known && Number.isFinite(stack.hi)
  const stickOut = placed
    ? {
        lo: own.length.lo - stack.hi,
        hi: own.length.hi - stack.lo,
        at: own.length.at - (grip.at + bracket.at + gasket.at + washer.at),
        known: true,
      }
    : null
  const fitsThread = bolt.line !== 'thread' && bolt.thread.diameter === thread.diameter
  let engagement: Interval | null = null
  let engaged: BoltMeasures['engaged'] = null
  if (stickOut && fitsThread) {
    engagement = engagementOf(stickOut, own.tip, own.threadLength, mouth, threadDepth)
    const from = Math.max(stickOut.at - own.threadLength.at, mouth.at)
    const to = Math.min(stickOut.at - own.tip.at, mouth.at + threadDepth.at)
    engaged = to > from ? { from, to } : null
  }
  return { ...measures, bolt: { ...own, stickOut, engagement, engaged } }
}
