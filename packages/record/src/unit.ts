/** A unit as its entries make it: what the page draws, what the engine computes on, what is printed and exported. Plain JSON. */
import type { Unit } from '@gripbook/engine'
import type { Event } from './events/event.ts'
import type { Json } from './events/json.ts'
import type { Place, ThingName } from './events/places.ts'

/** A value that holds, with the entry that says so. Of several entries that agree without knowing of each other it is the first in the order. */
export type Standing<T = Json> = { value: T; event: string; who: string; at: string }

/** What a bolt was tightened to in one pass; neither figure: by feel. `torque` is a quantity of the unit file. */
export type Torqued = { torque?: Json; angle?: number }

/** The stages of tightening that a bolt has reached and not lost by being backed out. */
export type Steps = {
  'hand-started'?: Standing<true>
  'run-down'?: Standing<true>
  snug?: Standing<true>
  turns?: Standing<{ turns: number; seated: boolean }>
  final?: Standing<Torqued>
  'witness mark'?: Standing<true>
  [pass: `pass ${number}`]: Standing<Torqued>
}

export type HoleWork = {
  /** On the photograph of the face, pixels. */
  mark?: Standing<[number, number]>
  /** How the bolt was found. */
  condition?: Standing<string>
  /** Kind that goes back. */
  placed?: Standing<string>
  /** Resistance that was felt and not cleared: the face stands still. */
  resistance?: Standing<string>
  steps: Steps
}

export type FaceWork = {
  photograph?: Standing<{ photograph: string; width: number; height: number; pixelsPerMillimetre?: number }>
  orderChosen?: Standing<{ name: string; passes: { share: number; sequence: string[] }[] }>
  closed?: Standing<boolean>
  released?: Standing<true>
  holes: Record<string, HoleWork>
}

export type UnitWork = {
  model?: Standing<string>
  complaint?: Standing<string>
  job?: Standing<string>
  cameBack?: Standing<string>
  released?: Standing<{ heads: Record<string, number>; record: string }>
}

/** Entries of two devices, neither of which knew of the other's, that say different things. Neither holds until a person settles it. */
export type Clash = {
  place: Place
  /** Field of the place; `there` when one took away what another worked on. */
  field: string
  /** In the order of the record. A value of null: made unknown, or backed out. */
  entries: { event: string; device: string; who: string; at: string; value: Json }[]
}

export type NotUnderstood = { event: string; type: string; version: number } & (
  | { why: 'unknown-type' | 'newer-version' }
  | { why: 'malformed'; path: string }
)

export type FoldedUnit = {
  id: string
  /**
   * Faces, holes and bolts in the shape of the unit file, which is also the engine's. Where figures clash, the interval that holds them all
   * stands; where threads clash, all candidates; anything else that clashes is left out: what clashes never narrows an answer.
   * A face may have no hole yet; `unitFileOf` gives what can be written and computed on.
   */
  unit: Unit
  work: UnitWork
  faces: Record<string, FaceWork>
  /** Parts, plugs, clocks … by what they are and their id; each field with the entry that says so. */
  things: Record<ThingName, Record<string, Record<string, Standing>>>
  /** Holes and kinds that are spoken of but whose thread nobody has stated (their marking was undone): not in `unit`. */
  withoutThread: Place[]
  clashes: Clash[]
  /** Every entry once, in the order of the record, as it came. */
  entries: Event[]
  /** Entries that no longer count, and the entry that undid them. */
  undone: { event: string; by: string }[]
  notUnderstood: NotUnderstood[]
  /** Highest number per device. */
  heads: Record<string, number>
  /** Entries that must exist and have not come yet. */
  missing: { device: string; from: number; to: number }[]
  /** Devices whose clock ran behind one that they had heard of, by how many ms at most: it is slow, or the other fast. A minute is passed over. */
  clocks: { device: string; behind: number }[]
  /** Entries that stand and were not yet there when the unit was released; empty while it is not released. */
  sinceRelease: string[]
}
