import { trayOf } from '@gripbook/print'
import { type Called, type Event, type FoldedUnit, sayEntry } from '@gripbook/record'
import { namesOf } from '../face/kindNames.ts'

/** What an entry says, with faces, bolts and parts by the names they have in the unit now. */
export function sayIn(folded: Pick<FoldedUnit, 'unit' | 'things'>): (event: Event) => string {
  const called = calledIn(folded)
  return (event) => sayEntry(event, called)
}

/** How faces, bolts and parts are called now; by their ids where they are no longer in the unit. */
export function calledIn({ unit, things }: Pick<FoldedUnit, 'unit' | 'things'>): Called {
  const faces = new Map(unit.faces.map((face) => [face.id, face]))
  const kinds = new Map<string | undefined, Map<string, string>>()
  const kindsOf = (id: string | undefined) => {
    const face = id === undefined ? undefined : faces.get(id)
    const known =
      kinds.get(face?.id) ?? namesOf(face === undefined ? (unit.kinds ?? []) : [...trayOf(unit, face).values()]).long
    kinds.set(face?.id, known)
    return known
  }
  return {
    face: (id) => faces.get(id)?.name ?? id,
    kind: (id, face) => kindsOf(face).get(id) ?? id,
    part: (id) => {
      const name = things.part[id]?.name?.value
      return typeof name === 'string' ? name : id
    },
  }
}
