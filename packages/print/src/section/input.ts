import type { Hole, Interval, Kind, LengthUnit, Line, Pair, PairVerdict, Quantity } from '@gripbook/engine'
import type { Theme } from '../look/palette.ts'

/** What a drawing needs of a thread. Diameter and pitch in mm, `name` as it is written ("M6", "1/4-20 UNC"). */
export type DrawnThread = { diameter: number; pitch: number; name: string }

export type DrawnBolt = {
  kind: Kind
  thread: DrawnThread
  /** Why this bolt is shown: "belongs here", "as found", … */
  role?: string
  verdict: PairVerdict
  line: Line
  why: string
  margin: Pair['margin']
}

export type Look = { theme: Theme; unit?: LengthUnit }

export type SectionInput = {
  hole: Hole
  thread: DrawnThread
  /** What the face states for all its holes. `minimumEngagement`: the interval in mm that holds for this hole. */
  face?: { gasket?: Quantity; minimumEngagement?: Interval }
  /** Absent: the hole is drawn empty. */
  bolt?: DrawnBolt
  title: string
  look: Look
  /** Put before every id, so that several drawings can stand in one page. */
  prefix?: string
}
