import type { Face } from '@gripbook/engine'
import type { FoldedUnit } from '@gripbook/record'
import type { Picture } from '../face/marks.ts'

/** The face and its picture, as every screen of the tightening is given them. */
export type Seen = {
  folded: FoldedUnit
  face: Face
  picture: Picture
  /** Address of the photograph; null where there is none here. */
  url: string | null
  /** There is one, and it is neither on this device nor to be had. */
  away: boolean
}
