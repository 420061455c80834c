/** The release of a unit: made from the record as it lies on the disk, and only when nothing is open. */
import {
  type FoldedUnit,
  type Happening,
  recordHash,
  type Stop,
  sha256OfText,
  stopsFor,
  unitReleased,
  upTo,
} from '@gripbook/record'

export type Release = { ok: true; happening: Happening } | { ok: false; stops: Stop[] }

/** `folded`: what the device has on its disk, since the release names the last entry of each device. */
export function releaseOf(folded: FoldedUnit, onlyPerson: boolean): Release {
  const { heads } = folded
  const happening = unitReleased({
    heads,
    record: recordHash(upTo(heads, folded.entries), sha256OfText),
    ...(onlyPerson ? { onlyPerson } : {}),
  })
  const stops = stopsFor(folded, happening)
  return stops.length === 0 ? { ok: true, happening } : { ok: false, stops }
}
