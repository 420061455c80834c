/**
 * Figures as a source prints them. `rows` are strings, so that their digits say how near is near; the first columns name the thing, the last
 * column is the printed figure. `basis` says whether the source was seen, recalled from memory, or calculated: by another program, or from a closed
 * formula, that `source` names. Nothing in here comes from Gripbook's own sums.
 */
export type PublishedTable = {
  source: string
  table: string
  basis: 'seen' | 'from memory' | 'calculated'
  unit: string
  columns: readonly string[]
  rows: readonly (readonly string[])[]
}
