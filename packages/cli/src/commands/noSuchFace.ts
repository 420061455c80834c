import type { Unit } from '@gripbook/engine'
import { nearestName } from '@gripbook/record'
import { listed } from '../text/list.ts'

/** The most faces that are listed when one must be chosen. */
const MOST_NAMED = 10

/** That a face is not there, with the one that was meant or those that there are. */
export function noSuchFace(wanted: string, { faces }: Unit): string {
  const ids = faces.map(({ id }) => id)
  const near = nearestName(wanted, ids)
  const known = near ? `Did you mean ${JSON.stringify(near)}?` : `There is: ${named(ids)}.`
  return `There is no face ${JSON.stringify(wanted)} in this unit. ${known}`
}

/** Ids in quotes, a long list cut short: `"pan", "lid" and 3 more`. */
export function named(ids: readonly string[]): string {
  const first = ids.slice(0, MOST_NAMED).map((id) => JSON.stringify(id))
  return ids.length > MOST_NAMED ? `${first.join(', ')} and ${ids.length - MOST_NAMED} more` : listed(first)
}
