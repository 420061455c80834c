/** What two devices say differently of: where, and which thing of it. */
import type { Clash, FoldedUnit } from '@gripbook/record'
import { words } from '../words/index.ts'
import { partNameIn } from './partName.ts'
import { calledIn } from './sayIn.ts'

export function sayClash({ place, field }: Pick<Clash, 'place' | 'field'>, folded: FoldedUnit): string {
  return words.unit.clashAt(sayPlace(place, folded), field, place[0])
}

/** How a kind is called that a field of this place speaks of: only holes have such fields, and look in the tray of their face. A plug has a socket instead. */
export function kindIn({ place: [what, id] }: Pick<Clash, 'place'>, folded: FoldedUnit): (kind: string) => string {
  const { kind } = calledIn(folded)
  return (one) => (what === 'face' ? kind(one, id) : one)
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
