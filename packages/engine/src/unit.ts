/**
 * The unit as it stands in the unit file. One shape for the file, for the folded record and for the engine: nothing is translated.
 * What each field means, and its default, stands in docs/unit-file.md. Lengths in mm unless a quantity names another unit.
 */
import type { Quantity } from './quantity/quantity.ts'

export type History = 'never opened' | 'unknown' | 'opened before'

export type Material = string | { name: string; shearStrength?: number; limitPressure?: number }

export type Head = { form: string; acrossFlats?: Quantity }

export type Washer = Quantity | { thickness: Quantity; captive?: boolean }

/** One hole of a face: a threaded hole, blind or through, and the stack that is clamped on it. */
export type Hole = {
  id: string
  thread: string | string[]
  ending?: 'blind' | 'through'
  at?: [number, number]
  grip?: Quantity
  bracket?: Quantity
  gasket?: Quantity
  mouth?: Quantity
  threadDepth?: Quantity
  bottomDepth?: Quantity
  behind?: Quantity
  material?: Material
  needs?: string[]
  minimumEngagement?: Quantity
  asFound?: string
  torque?: Quantity
  visit?: number
  locates?: boolean
  boltStiffness?: number
  /** How often each kind sat in this hole in finished, signed units of the same model. */
  unitsBefore?: Record<string, number>
  note?: string
}

/** Bolts that are interchangeable: same thread, length, head and feature. */
export type Kind = {
  id: string
  thread: string | string[]
  length?: Quantity
  threadLength?: Quantity
  tip?: Quantity
  count?: number
  class?: string
  head?: Head
  features?: string[]
  washer?: Washer
  note?: string
}

export type RankQuantity = 'grip' | 'bottomDepth' | 'threadDepth' | 'length'

/** `less` is not greater than `more`: seen by hand, without a figure. */
export type Rank = { quantity: RankQuantity; less: string; more: string }

/** A bolt of a kind tried in a hole by hand. Just one of the three figures is given. `proud` and `stickOut` in mm. */
export type Trial = { hole: string; kind: string } & ({ turns: number } | { stickOut: Quantity } | { proud: Quantity })

export type Weigh = { habit?: boolean; asFound?: boolean }

/** A corner or a place on the face, mm: x to the right, y upwards. */
export type Point = [number, number]

/** The cover as a plate. Of regions that lie over each other the last one counts. */
export type Cover = {
  outline: Point[]
  openings?: Point[][]
  thickness: number
  regions?: { outline: Point[]; thickness: number }[]
  young?: number
  poisson?: number
  /** Where the cover must stay straight: a valve runs below, an edge seals. */
  lines?: { name: string; from: Point; to: Point }[]
}

/** What the cover lies on: stiffness per area in N/mm³, and hollows, where nothing lies under the cover. */
export type Bed = { stiffness: Quantity; hollows?: Point[][] }

/** What settles after tightening: roughness Rz of the surfaces in µm, and how many surfaces meet between the head and the thread; 1 unless stated. */
export type Embedment = { roughness: number; interfaces?: number }

/** One bolted joint of the unit: a cover or body on a seat, with its holes. */
export type Face = {
  id: string
  name?: string
  history?: History
  torque?: Quantity
  minimumEngagement?: Quantity
  gasket?: Quantity
  material?: Material
  holes: Hole[]
  kinds?: Kind[]
  ranks?: Rank[]
  trials?: Trial[]
  weigh?: Weigh
  cover?: Cover
  bed?: Bed
  embedment?: Embedment
  boltStiffness?: number
  snug?: boolean
  order?: { share: number; sequence: string[] }[]
  clamp?: number
  note?: string
}

export type Unit = {
  gripbook: 'unit/1'
  name?: string
  history?: History
  faces: Face[]
  /** A tray that the faces share. */
  kinds?: Kind[]
  note?: string
}
