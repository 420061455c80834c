import type { Event, FoldedUnit } from '@gripbook/record'

/** Entries that nobody undid, in the order of the record. */
export function standingOf({ entries, undone }: Pick<FoldedUnit, 'entries' | 'undone'>): Event[] {
  const gone = new Set(undone.map(({ event }) => event))
  return entries.filter(({ id }) => !gone.has(id))
}
