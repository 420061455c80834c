/** What stands in a build record, as data: every figure and every name that is printed, in the order of the unit, without a word of prose. */
import type { Kind, Quantity } from '@gripbook/engine'
import type { Place } from '../events/places.ts'
import type { Open, Stop, StopName } from '../gates/stop.ts'
import type { Clash } from '../unit.ts'
import type { Caution } from './cautions.ts'

/** Who did it, by name where the name is known, and when by that device’s clock (ISO 8601, UTC). */
export type Done = { event: string; who: string; at: string }
/** Something that was done, in one sentence. */
export type Line = Done & { says: string }

/**
 * `released`: by a release that fits the entries, after which nothing came, and with nothing open. `does not fit`: the release names another hash than
 * its entries have. `changed since`: there are entries that its signer did not have. `released open`: something was open, whoever answered for it.
 * `state only`: made from a unit file, which holds no story and no signature.
 */
export type RecordState =
  | 'released'
  | 'released open'
  | 'does not fit'
  | 'changed since'
  | 'came back'
  | 'not released'
  | 'state only'

export type Instrument = { name: string; number?: string; calibratedUntil?: string }

/** One bolt in one pass. `inCalibration`: on the day of the pass; left out where nobody has said until when. */
export type BuiltPass = Done & {
  pass: number
  final: boolean
  torque?: Quantity
  angle?: number
  wanted?: Quantity
  byFeel: boolean
  tool?: Instrument
  inCalibration?: boolean
  outOfBand: boolean
}

export type BuiltHole = {
  id: string
  thread: string | string[]
  /** Kind that sat in it when it came apart, "none" for an empty hole; left out where nobody has said. */
  found?: string
  condition?: string
  placed?: Done & { kind: string }
  /** Left out where one of the two is not known. */
  changed?: boolean
  /** What the sizes say: kinds that may sit here, and of the one that was found whether it could stay. */
  belongs?: {
    verdict: 'settled' | 'open' | 'contradicted'
    may: string[]
    asFound?: 'must change' | 'may stay' | 'right'
  }
  wanted?: Quantity
  handStarted?: Done
  turns?: Done & { turns: number; seated: boolean }
  witnessMark?: Done
  passes: BuiltPass[]
}

export type BuiltFace = {
  id: string
  name?: string
  photograph?: { photograph: string; width: number; height: number; marks: { hole: string; at: [number, number] }[] }
  torque?: Quantity
  /** `name` where it was chosen at the bench; without one it is the one that the face states. */
  order?: { name?: string; passes: { share: number; sequence: string[] }[] }
  /** Bolts that the holes speak of. */
  kinds: Kind[]
  holes: BuiltHole[]
  closed?: Done
  released?: Done
}

export type BuiltReading = Done & {
  at: string
  place: Place
  quantity: string
  value: Quantity
  instrument?: Instrument
  repeated?: number[]
  note?: string
  /** A later entry reads the same thing again. */
  replaced: boolean
}

export type TakenFigure = Done & {
  value: number
  unit: string
  plusMinus?: number
  instrument?: Instrument
  conditions?: string
}

export type BuiltFigure = {
  name: string
  face?: string
  limit?: { least?: number; most?: number; unit: string; source: string }
  before?: TakenFigure
  during?: TakenFigure
  after?: TakenFigure
  /** Readings at the end that count no more: the unit came back, and a face was opened again since. */
  earlier?: TakenFigure[]
  /** The reading before teardown lies outside the limit. */
  wasOutside: boolean
  verdict: 'no limit' | 'inside' | 'outside' | 'not taken' | 'before opening' | 'other unit' | 'waived'
  waived?: Done & { reason: string }
}

export type BuiltPart = {
  id: string
  what: string
  name?: string
  count?: number
  face?: string
  hole?: string
  place?: string
  wayRound?: string
  condition?: string
  fate: 'out' | 'in' | 'replaced' | 'written off'
  wentIn?: Done & { wayRound?: string }
  by?: string
  reason?: string
  fateBy?: Done
}

/** Stops of one entry at one gate, and the person who answered for it; without `override` nobody did. */
export type BuiltStop = Done & {
  says: string
  gate: StopName
  stops: Stop[]
  override?: Done & { reason: string }
}

export type BuiltResistance = Done & {
  face: string
  hole: string
  feel: string
  turns?: number
  /** Left out while it stands. */
  cleared?: Done & { found: string }
}

/** `over`: minutes beyond what it was set to. */
export type BuiltClock = {
  id: string
  what: string
  minutes: number
  face?: string
  started: Done
  stopped?: Done
  ran?: number
  over?: number
}

/** `before`: signed, and afterwards hands were on the unit again. */
export type BuiltSignature = Done & { as: 'builder' | 'checker'; step: string; face?: string; before: boolean }

/** How far it is proven, in numbers. Bolts are holes. */
export type Proof = {
  bolts: number
  final: number
  byFeel: number
  outOfBand: number
  outOfCalibration: number
  calibrationUnknown: number
  overridden: number
  silent: number
  figures: number
  inside: number
  waived: number
  checkedBy: string[]
}

export type BuildRecord = {
  gripbook: 'build-record/1'
  unit: { id: string; name?: string; model?: string; job?: string; history?: string; note?: string }
  takenIn?: Done
  complaint?: string
  /** Each time that it came back, and what was found to be behind it. */
  cameBack: (Done & { complaint: string; answers: (Done & { found: string; done?: string; face?: string })[] })[]
  state: RecordState
  /** Hash of all entries (`recordHash`), how many they are, and when the last of them was made. Of a unit file: hash of its text. */
  hash: string
  entries: number
  last?: string
  shop: { address?: string; key?: string }
  /** `holds`: the entries up to its heads have the hash that was signed. */
  release?: Done & { onlyPerson: boolean; heads: Record<string, number>; record: string; holds: boolean; key?: string }
  since: Line[]
  open: Open[]
  proof: Proof
  openedBefore: (Done & { face?: string; sign: string; photograph?: string })[]
  faces: BuiltFace[]
  photographs: {
    photograph: string
    width: number
    height: number
    caption?: string
    face?: string
    hole?: string
    part?: string
  }[]
  readings: BuiltReading[]
  figures: BuiltFigure[]
  parts: BuiltPart[]
  fits: (Done & { place: string; part: string; thickness?: Quantity; reason?: string })[]
  plugs: { id: string; found?: string; placed?: string; tag?: string; colours?: string[] }[]
  bolts: (Done & { what: 'written off' | 'added'; face?: string; kind: string; count: number; reason?: string })[]
  wrenches: (Instrument & { bolts: number; outOfCalibration: boolean })[]
  clocks: BuiltClock[]
  stops: BuiltStop[]
  resistances: BuiltResistance[]
  notes: (Done & { decided: boolean; text: string; reason?: string; face?: string; hole?: string })[]
  signatures: BuiltSignature[]
  cautions: Caution[]
  undone: (Line & { by: Done & { reason?: string } })[]
  clashes: Clash[]
  /** Entries that this Gripbook does not understand. */
  notUnderstood: string[]
}
