/**
 * The placement problem of one tray: the holes of all faces that draw on it, the kinds in it, and what ties them together.
 * Here every quantity of the unit file becomes a span, once, with its default.
 */
import { engagementRange, TURN_COUNT_DOUBT } from '../joints/index.ts'
import { must } from '../must.ts'
import { intervalOf } from '../quantity/interval.ts'
import type { Quantity } from '../quantity/quantity.ts'
import { readThread, type Thread } from '../threads/index.ts'
import type { Face, History, Hole, Kind, RankQuantity, Trial, Unit } from '../unit.ts'
import { type Span, spanOf, sum } from './span.ts'

export const FOUND_EMPTY = -1
export const FOUND_UNKNOWN = -2

export type HoleSpans = {
  face: Face
  source: Hole
  threads: Thread[]
  needs: readonly string[]
  blind: boolean
  grip: Span
  bracket: Span
  gasket: Span
  /** The gasket is the face's one sheet: the same thickness in all holes that share it. */
  sharesGasket: boolean
  mouth: Span
  threadDepth: Span
  bottomDepth: Span
  /** null: unknown, so nothing limits how far the tip stands out behind. */
  behind: Span | null
  engagement: Span
  /** Number of the kind found in the hole, FOUND_EMPTY or FOUND_UNKNOWN. */
  asFound: number
  history: History
}

export type KindSpans = {
  /** The face whose holes alone it may go in; null for a tray that the faces share. */
  face: Face | null
  source: Kind
  threads: Thread[]
  features: readonly string[]
  length: Span
  tip: Span
  /** null: threaded to the head less `runOut`. */
  threadLength: Span | null
  runOut: Span
  washer: Span
  count: number
}

export type RankLine = { quantity: RankQuantity; less: number; more: number; face: Face }
export type TrialLine = { hole: number; kind: number; source: Trial; face: Face; spans: TrialSpans }

/** What a trial says: the stick-out lies in `stickOut`; or the stick-out past the mouth, less anything from 0 to the tip, lies in `pastMouth`. */
export type TrialSpans = { stickOut: Span } | { pastMouth: Span }

export type Problem = { holes: HoleSpans[]; kinds: KindSpans[]; ranks: RankLine[]; trials: TrialLine[] }

/** One problem for each tray: all faces together where kinds stand at unit level, else a problem for each face. */
export function problemsOf(unit: Unit): Problem[] {
  const shared = unit.kinds ?? []
  const groups = shared.length > 0 ? [unit.faces] : unit.faces.map((face) => [face])
  return groups.map((faces) => problemOf(unit, faces, shared))
}

function problemOf(unit: Unit, faces: Face[], shared: Kind[]): Problem {
  const kinds = [
    ...faces.flatMap((face) => (face.kinds ?? []).map((kind) => kindSpans(kind, face))),
    ...shared.map((kind) => kindSpans(kind, null)),
  ]
  const kindNumber = (face: Face, id: string) =>
    kinds.findIndex((kind) => kind.source.id === id && (kind.face === null || kind.face === face))
  const holes = faces.flatMap((face) => face.holes.map((hole) => holeSpans(hole, face, unit, kindNumber)))
  const holeNumber = (face: Face, id: string) => holes.findIndex((hole) => hole.source.id === id && hole.face === face)
  const ranks = faces.flatMap((face) =>
    (face.ranks ?? []).map(({ quantity, less, more }) => {
      const number = quantity === 'length' ? kindNumber : holeNumber
      return { quantity, less: found(number(face, less)), more: found(number(face, more)), face }
    }),
  )
  const trials = faces.flatMap((face) =>
    (face.trials ?? []).map((source) => {
      const hole = found(holeNumber(face, source.hole))
      const kind = found(kindNumber(face, source.kind))
      return { hole, kind, source, face, spans: trialSpans(source, kinds[kind]!) }
    }),
  )
  return { holes, kinds, ranks, trials }
}

function found(number: number): number {
  must(number >= 0, 'problemOf: a name that the file check should have refused')
  return number
}

function holeSpans(hole: Hole, face: Face, unit: Unit, kindNumber: (face: Face, id: string) => number): HoleSpans {
  const threads = threadsOf(hole.thread)
  const material = hole.material ?? face.material
  const stated = hole.minimumEngagement ?? face.minimumEngagement
  const torque = hole.torque ?? face.torque
  const engagement =
    stated === undefined
      ? engagementRange(threads, material, torque === undefined ? undefined : intervalOf(torque, 'torque'))
      : intervalOf(stated)
  return {
    face,
    source: hole,
    threads,
    needs: hole.needs ?? [],
    blind: hole.ending !== 'through',
    grip: spanOf(intervalOf(hole.grip)),
    bracket: spanOr0(hole.bracket),
    gasket: spanOr0(hole.gasket ?? face.gasket),
    sharesGasket: hole.gasket === undefined && face.gasket !== undefined,
    mouth: spanOr0(hole.mouth),
    threadDepth: spanOf(intervalOf(hole.threadDepth)),
    bottomDepth: spanOf(intervalOf(hole.bottomDepth)),
    behind: hole.behind === undefined ? null : spanOf(intervalOf(hole.behind)),
    engagement: spanOf(engagement),
    asFound:
      hole.asFound === undefined
        ? FOUND_UNKNOWN
        : hole.asFound === 'none'
          ? FOUND_EMPTY
          : found(kindNumber(face, hole.asFound)),
    history: face.history ?? unit.history ?? 'unknown',
  }
}

function kindSpans(kind: Kind, face: Face | null): KindSpans {
  const threads = threadsOf(kind.thread)
  const pitch = pitchSpan(threads)
  const washer = kind.washer
  return {
    face,
    source: kind,
    threads,
    features: kind.features ?? [],
    length: spanOf(intervalOf(kind.length)),
    tip: kind.tip === undefined ? spanOf({ lo: pitch.lo, hi: 2 * pitch.hi }) : spanOf(intervalOf(kind.tip)),
    threadLength: kind.threadLength === undefined ? null : spanOf(intervalOf(kind.threadLength)),
    runOut: spanOf({ lo: 0, hi: 2.5 * pitch.hi }),
    washer: spanOr0(typeof washer === 'object' && 'thickness' in washer ? washer.thickness : washer),
    count: kind.count ?? Number.POSITIVE_INFINITY,
  }
}

function trialSpans(trial: Trial, kind: KindSpans): TrialSpans {
  if ('stickOut' in trial) return { stickOut: spanOf(intervalOf(trial.stickOut)) }
  if ('proud' in trial) return { pastMouth: spanOf(intervalOf(trial.proud)) }
  const pitch = pitchSpan(kind.threads)
  return {
    pastMouth: spanOf({
      lo: Math.max(0, trial.turns - TURN_COUNT_DOUBT) * pitch.lo,
      hi: (trial.turns + TURN_COUNT_DOUBT) * pitch.hi,
    }),
  }
}

function spanOr0(quantity: Quantity | undefined): Span {
  return quantity === undefined ? { lo: 0, hi: 0 } : spanOf(intervalOf(quantity))
}

/** Least and greatest pitch of the threads, mm. */
export function pitchSpan(threads: Thread[]): { lo: number; hi: number } {
  const pitches = threads.map((thread) => thread.pitch)
  return { lo: Math.min(...pitches), hi: Math.max(...pitches) }
}

function threadsOf(names: string | string[]): Thread[] {
  return [names].flat().map((name) => {
    const read = readThread(name)
    must(read.ok, 'threadsOf: a thread that the file check should have refused', name)
    return read.value
  })
}

/** Whether the kind may be thought of in the hole at all: same tray, a thread in common (by name) and every feature that the hole needs. */
export function compatible(hole: HoleSpans, kind: KindSpans): 'yes' | 'other face' | 'thread' | 'feature' {
  if (kind.face !== null && kind.face !== hole.face) return 'other face'
  if (!kind.threads.some((a) => hole.threads.some((b) => a.name === b.name))) return 'thread'
  return hole.needs.every((need) => kind.features.includes(need)) ? 'yes' : 'feature'
}

/** Grip, bracket and gasket together: how far under the head the joint face lies, without the washer. */
export function stackOf(hole: HoleSpans): Span {
  return sum(hole.grip, hole.bracket, hole.gasket)
}
