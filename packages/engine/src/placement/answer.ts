/** The answer of `place`, as `gripbook place --json` prints it. Lengths in mm, probabilities from 0 to 1. */
import type { RankQuantity } from '../unit.ts'

export type PairVerdict = 'fits' | 'may' | 'cannot'

/** The line of a fit that decides a pair. `together`: no single line fails, but not all of them can hold at once. */
export type Line =
  | 'thread' // no thread in common
  | 'feature' // the hole needs a feature that the kind has not
  | 'engagement' // too little thread engaged: the bolt is too short for the hole
  | 'bolt thread' // the bolt's own full thread is shorter than the engagement needed
  | 'hole thread' // the hole's own full thread is shorter than the engagement needed
  | 'bottom' // the tip meets the bottom before the head seats
  | 'run-out' // the bolt's full thread runs into the incomplete thread at the bottom of the hole
  | 'behind' // the tip stands too far out behind a through hole
  | 'shank' // the unthreaded shank reaches the hole's first full thread
  | 'hole' // the hole's own figures contradict each other
  | 'kind' // the kind's own figures contradict each other
  | 'together'

/**
 * One hole and one kind alone. `margin` is the mm by which the deciding line holds (*fits*, worst case, 0 or more) or fails (*cannot*, best
 * case, negative); for *may* the two ends of that line, worst and best. null where no length decides or the end is unknown.
 */
export type Pair = {
  hole: string
  kind: string
  verdict: PairVerdict
  line: Line
  why: string
  margin: number | null | [number | null, number | null]
  /** Worth saying although it fits: closeness kept apart from truth. */
  close?: ('tip near the bottom' | 'engagement near the least' | 'long stick-out')[]
  /** Turns to expect from the first thread until the head seats. */
  turns?: [number, number]
}

export type AsFound = { kind: string; verdict: 'must change' | 'may stay' | 'right'; why: string }

export type HoleAnswer = {
  verdict: 'settled' | 'open' | 'contradicted'
  may: string[]
  likely: Record<string, number>
  /** The kind in the most likely complete placement; null where that leaves the hole empty. */
  best: string | null
  /** Only on a settled hole: true when readings, not the mere contents of the tray, exclude the other standard lengths. */
  proven?: boolean
  why: string
  asFound?: AsFound
}

/** Something that was stated and could be wrong. */
export type Statement =
  | { what: 'reading'; quantity: string; of: string; place: 'hole' | 'kind' }
  | { what: 'count'; of: string }
  | { what: 'rank'; quantity: RankQuantity; less: string; more: string }
  | { what: 'trial'; hole: string; kind: string }

export type Doubt = {
  statements: Statement[]
  why: string
  /** How likely this is among the doubts listed; they add up to 1. */
  likely: number
}

export type Conflict = {
  /** These holes cannot all be filled; any of them left out, the rest can. */
  holes: string[]
  kinds: string[]
  short: number
  why: string
  /** The fewest statements that would have to be wrong, best first. */
  doubt: Doubt[]
}

export type Move = { hole: string; from: string; to: string }

export type Wanted = { hole: string; thread: string; lengths: number[]; why: string }

export type NextReading = {
  /** `kind`: the kind to turn in by hand, where the quantity is "turns". */
  reading: { quantity: string; of: string; place: 'hole' | 'kind'; kind?: string }
  bits: number
  settles: string[]
  minutes: number
  why: string
}

export type FaceAnswer = {
  face: string
  feasible: boolean
  holes: Record<string, HoleAnswer>
  pairs: Pair[]
  conflict: Conflict | null
  /** Further sets that cannot all be filled, when more than one hole stays empty. */
  furtherConflicts?: Conflict[]
  /** `count`: the fewest holes whose kind must differ from as found. `from` or `to` is "none" for an empty hole. */
  changes: { count: number; cycles: Move[][] }
  missing: number
  leftOver: Record<string, number>
  /** Faces of the unit with a hole that a left-over kind would fit. */
  leftOverFits?: Record<string, string[]>
  wanted: Wanted[]
  next: NextReading | null
  /** How `likely` was found. `standardError`: the greatest one, only where sampled. */
  likelihood: { method: 'exact' | 'sampled'; standardError?: number }
}

export type PlacementAnswer = { gripbook: 'placement/1'; faces: FaceAnswer[] }
