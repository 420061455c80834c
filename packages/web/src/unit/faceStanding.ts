/** How a face stands, from what was entered alone: no verdict, which would need the engine. */
import type { FoldedUnit } from '@gripbook/record'

export type FaceStanding = {
  holes: number
  /** Holes without a place on the photograph, where there is one. */
  unmarked: number
  /** Bolt kinds in the tray of the face and in the one that the faces share. */
  kinds: number
  /** Holes whose grip is known. */
  grips: number
  /** Holes for which it was noted what sat in them. */
  asFound: number
  closed: boolean
  released: boolean
}

export function faceStanding({ unit, faces }: FoldedUnit, id: string): FaceStanding {
  const face = unit.faces.find((one) => one.id === id)
  const work = faces[id]
  const holes = face?.holes ?? []
  return {
    holes: holes.length,
    unmarked:
      work?.photograph === undefined ? 0 : holes.filter((hole) => work.holes[hole.id]?.mark === undefined).length,
    kinds: (face?.kinds?.length ?? 0) + (unit.kinds?.length ?? 0),
    grips: holes.filter(({ grip }) => grip !== undefined).length,
    asFound: holes.filter(({ asFound }) => asFound !== undefined).length,
    closed: work?.closed?.value === true,
    released: work?.released !== undefined,
  }
}
