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
  reach?: Reach
  note?: string
}

/** Tools that reach the bolt of a hole, any one of them: names, or ids of the unit's `tools`. */
export type Reach = { runDown?: string[]; final?: string[] }

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

/** The cover as a plate, its thicknesses in mm. Of regions that lie over each other the last one counts. */
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

/** The cover as the unit states it: its thicknesses as they were measured, in any unit. */
export type StatedCover = Omit<Cover, 'thickness' | 'regions'> & {
  thickness: Quantity
  regions?: { outline: Point[]; thickness: Quantity }[]
}

/** What the cover lies on: stiffness per area in N/mm³, and hollows, where nothing lies under the cover. */
export type Bed = { stiffness: Quantity; hollows?: Point[][] }

/** What settles after tightening: roughness Rz of the surfaces in µm, and how many surfaces meet between the head and the thread; 1 unless stated. */
export type Embedment = { roughness: number; interfaces?: number }

/**
 * What goes between cover and seat wet, as its product sheet states it: minutes until the parts must be joined or the bolts torqued, and the least
 * minutes that it must stand before the parts are joined.
 */
export type Sealant = { name?: string; minutes?: number; least?: number; until?: 'joined' | 'torqued' }

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
  cover?: StatedCover
  bed?: Bed
  embedment?: Embedment
  boltStiffness?: number
  snug?: boolean
  order?: { share: number; sequence: string[] }[]
  clamp?: number
  /** The face whose cover hides this one once it is on. */
  inside?: string
  /** How the unit lies for work on this face: "pan up". */
  side?: string
  sealant?: Sealant
  note?: string
}

/** What turns a bolt, as far as its torque is concerned. */
export type ToolForm =
  | 'torque wrench'
  | 'straight extension'
  | 'swivel'
  | 'crow-foot'
  | 'ratchet wrench'
  | 'impact driver'
  | 'by hand'

/** A tool of the bench. `lever` and `reach` in mm as of `Extension`; `angle` in degrees: of the crow-foot to the wrench, or of the swivel. */
export type BenchTool = { id: string; name?: string; form: ToolForm; lever?: number; reach?: number; angle?: number }

export type PartSort =
  | 'bracket'
  | 'clip'
  | 'connector'
  | 'wire'
  | 'seal'
  | 'gasket'
  | 'check ball'
  | 'spring'
  | 'shim'
  | 'ring'
  | 'plate'
  | 'filter'
  | 'other'

/** Something other than a bolt that came out and goes back; `in` when it is in its place again. */
export type UnitPart = { id: string; what: PartSort; name?: string; face?: string; hole?: string; in?: true }

/** What must be there before a job is begun. Plain text: nobody has said yet whether it is. */
export type JobNeed = string | { name: string; what?: 'part' | 'tool' | 'reading' | 'signature'; ready?: boolean }

/** One stage of a job with a tool in the hand: any one of these does. */
export type JobTools = { stage?: 'running down' | 'final'; any: string[] }

/**
 * What runs from the end of the job that opens it: each job of `until` starts `least` minutes after it or later (soaking, drying) and ends within
 * `minutes` of it (sealant, a warmed part).
 */
export type JobWindow = { what?: string; minutes?: number; least?: number; until: string[] }

/** One job of the order of work. Minutes are of one pair of hands. */
export type Job = {
  id: string
  name?: string
  face?: string
  /** Jobs that must be done before. */
  after?: string[]
  /** Jobs, parts or faces that can no longer be reached once it is done. */
  buries?: string[]
  needs?: JobNeed[]
  tools?: JobTools[]
  side?: string
  minutes?: number
  /** Standard deviation of the minutes. */
  spread?: number
  /** Minutes that it took in units before. */
  minutesBefore?: number[]
  window?: JobWindow
  who?: string
  done?: true
  /** Left out of the order; what came after it comes after what it came after. */
  skip?: boolean
  note?: string
}

export type Unit = {
  gripbook: 'unit/1'
  name?: string
  history?: History
  faces: Face[]
  /** A tray that the faces share. */
  kinds?: Kind[]
  tools?: BenchTool[]
  parts?: UnitPart[]
  /** What the user says of the order of work: a job that Gripbook knows of itself is changed, another is added. */
  jobs?: Job[]
  note?: string
}
