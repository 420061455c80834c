/** What two devices say differently of: where, and which thing of it. */
import type { Clash, FoldedUnit } from '@gripbook/record'
import { words } from '../words/index.ts'
import { partNameIn } from './partName.ts'
import { calledIn } from './sayIn.ts'

export function sayClash({ place, field }: Pick<Clash, 'place' | 'field'>, folded: FoldedUnit): string {
  return words.unit.clashAt(sayPlace(place, folded), field)
}

/** In whose tray its kinds are looked up. */
export function kindIn({ place: [what, id] }: Pick<Clash, 'place'>, folded: FoldedUnit): (kind: string) => string {
  const { kind } = calledIn(folded)
  return (one) => kind(one, what === 'face' ? id : undefined)
}

function sayPlace(place: Clash['place'], folded: FoldedUnit): string {
  const [what, id, inner, innerId] = place
  if (what === undefined || id === undefined) return words.unit.theUnit
  const called = calledIn(folded)
  if (what === 'kind') return words.unit.clashKind(called.kind(id), null)
  if (what === 'part') return partNameIn(folded, id)
  if (what !== 'face') return words.unit.clashThing(what, id)
  const face = called.face(id)
  if (innerId === undefined) return words.unit.clashFace(face)
  return inner === 'hole' ? words.unit.clashHole(innerId, face) : words.unit.clashKind(called.kind(innerId, id), face)
}
