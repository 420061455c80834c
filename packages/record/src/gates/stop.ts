/** What the gates say, as data: the words are with whoever shows it. */
import type { Kind, Quantity } from '@gripbook/engine'
import type { BodyOf } from '../events/catalogue.ts'
import type { Place } from '../events/places.ts'

export type StopName = BodyOf<'gate-overridden'>['gate']

/** Ends in N·m. */
export type Band = { atLeast: number; atMost: number }

/** What keeps a face or a unit from being closed or released. */
export type OpenWhy =
  | { code: 'hole-not-placed'; face: string; hole: string }
  | { code: 'hole-not-final'; face: string; hole: string }
  | { code: 'resistance-stands'; face: string; hole: string; feel: string | null }
  | { code: 'face-not-closed'; face: string }
  | { code: 'part-out'; part: string }
  | { code: 'plug-not-placed'; plug: string }
  /** A figure that has a limit and was not taken since teardown; one whose unit is not the limit's cannot be held against it. */
  | { code: 'figure-not-taken' | 'figure-outside' | 'figure-in-other-unit'; reading: string }
  /** Taken at the end, and `face` was opened again since, after the unit came back. */
  | { code: 'figure-before-opening'; reading: string; face: string }
  | { code: 'job-not-done'; job: string }
  /** Done, and `face` was opened again since, after the unit came back. */
  | { code: 'job-before-opening'; job: string; face: string }
  | { code: 'not-signed'; step: string }
  | { code: 'clock-runs'; clock: string }
  /** A complaint that is to be answered and is not; `event`: the entry with which the unit came back. */
  | { code: 'come-back-not-answered'; event: string }
  | { code: 'clash'; place: Place; field: string }
  /** `signed-before`: the checker signed, and hands were on it afterwards, or it came back. */
  | { code: 'not-checked' | 'signed-before'; face?: string }
  | { code: 'stop-passed'; event: string; gate: StopName; face?: string; hole?: string }
  | { code: 'entries-missing'; device: string; from: number; to: number }
  | { code: 'entry-not-understood'; event: string }

/** Why a stop is one. `holes`: the holes that it waits for. */
export type Why =
  /** Dowel, reamed and shouldered places are started first. */
  | { code: 'locating-first'; holes: string[] }
  | { code: 'not-hand-started'; holes: string[] }
  | { code: 'not-run-down'; holes: string[] }
  | { code: 'not-snug'; holes: string[] }
  | { code: 'pass-not-complete'; pass: number; holes: string[] }
  | { code: 'visit-not-complete'; visit: number; holes: string[] }
  | { code: 'resistance'; holes: string[] }
  | { code: 'does-not-belong'; kind: string; may: string[] }
  | { code: 'out-of-band'; torque: Quantity; band: Band }
  | { code: 'out-of-range'; torque: Quantity; range: Partial<Band> }
  | { code: 'out-of-calibration'; until: string }
  /** The release names other heads than its device has. */
  | { code: 'heads'; heads: Record<string, number> }
  | OpenWhy

/** A rule that an entry passes over. Face and hole are the entry's own; an override names the same. */
export type Stop = { gate: StopName; face?: string; hole?: string; why: Why }

/** Something that is not finished, at its place. */
export type Open = { face?: string; hole?: string; why: OpenWhy }

/** What the record does not hold. Without `today` calibration, without `belongs` placement, is not judged. */
export type Facts = {
  /** ISO day: `2026-03-01`. */
  today?: string
  /** Kinds that the placement answer allows, by face and hole. */
  belongs?: Record<string, Record<string, Kind['id'][]>>
  /** Deviation of the wrench as a share of its reading, 0.04 for ±4 %, where the entry does not say; 0.06 unless stated. */
  deviation?: number
  /** N·m between which the wrench in hand reads, where the entry does not say. */
  range?: Partial<Band>
}

/** A stop that an entry of the record passed; without `override` silently. */
export type Passed = { event: string; stop: Stop; override?: { event: string; who: string; reason: string } }
