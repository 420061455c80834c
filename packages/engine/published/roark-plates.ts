/** Roark's table of rectangular plates. */
import type { PublishedTable } from './table.ts'

const BOOK = "Roark's Formulas for Stress and Strain"

/** Simply supported, central load: y = α P b²/(E t³), b the short side, ν 0.3. */
export const central: PublishedTable = {
  source: BOOK,
  table: 'Table 11.4, simply supported, load at the centre',
  basis: 'seen',
  unit: 'P b²/(E t³)',
  columns: ['a/b', 'α'],
  rows: [
    ['1', '.1267'],
    ['1.2', '.1478'],
    ['1.4', '.1621'],
    ['1.6', '.1715'],
    ['1.8', '.1770'],
    ['2', '.1805'],
  ],
}

/** Simply supported, uniform load: y = α q b⁴/(E t³). The last figure is 0.4 % above the series value .1106. */
export const uniform: PublishedTable = {
  source: BOOK,
  table: 'Table 11.4, simply supported, uniform load',
  basis: 'seen',
  unit: 'q b⁴/(E t³)',
  columns: ['a/b', 'α'],
  rows: [
    ['1', '.0444'],
    ['1.2', '.0616'],
    ['1.4', '.0770'],
    ['1.6', '.0906'],
    ['1.8', '.1017'],
    ['2', '.1110'],
  ],
}
