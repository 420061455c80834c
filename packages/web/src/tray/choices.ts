/** What is offered to pick from: what was used in this unit before, then what is usual. */
import type { Unit } from '@gripbook/engine'

/** The usual threads of a gearbox's faces, by common practice, no source. */
const USUAL_THREADS = ['M5', 'M6', 'M8', 'M10', 'M12', '1/4-20', '5/16-18'] as const
const USUAL_FEATURES = ['stud end', 'patch', 'flange'] as const
/** Classes that are met most; the rest stands behind "more". */
export const USUAL_CLASSES = ['8.8', '10.9', '12.9'] as const

function first(lists: readonly (readonly string[])[], most: number): string[] {
  return [...new Set(lists.flat())].slice(0, most)
}

/** Threads to tap: the last one, then those of the unit's holes and kinds, then the usual ones. */
export function threadsOffered(unit: Unit, last: string): string[] {
  const own = [...unit.faces.flatMap(({ holes, kinds = [] }) => [...holes, ...kinds]), ...(unit.kinds ?? [])].flatMap(
    ({ thread }) => thread,
  )
  return first([[last], own, USUAL_THREADS], 8)
}

/** Features to tap: what holes need and kinds have in this unit, then the usual ones. */
export function featuresOffered(unit: Unit): string[] {
  const needed = unit.faces.flatMap(({ holes }) => holes.flatMap(({ needs = [] }) => needs))
  const had = [...unit.faces.flatMap(({ kinds = [] }) => kinds), ...(unit.kinds ?? [])].flatMap(
    ({ features = [] }) => features,
  )
  return first([needed, had, USUAL_FEATURES], 10)
}
