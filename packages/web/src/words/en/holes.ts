import { runsOf } from '@gripbook/print'

const and = new Intl.ListFormat('en', { type: 'conjunction' })

/** "4", "4 and 9", "1 to 6 and 9". */
const counted = (list: readonly string[]) =>
  and.format(runsOf(list).map(({ from, to }) => (from === to ? from : `${from} to ${to}`)))

/** "hole 4", "holes 1 to 6 and 9". */
export const holes = (list: readonly string[]) => `${list.length === 1 ? 'hole' : 'holes'} ${counted(list)}`
/** The same at the start of a sentence. */
export const Holes = (list: readonly string[]) => `${list.length === 1 ? 'Hole' : 'Holes'} ${counted(list)}`
