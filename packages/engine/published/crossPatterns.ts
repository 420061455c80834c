/** Orders of tightening round flanges. Bolts are numbered clockwise from 12 o'clock; the list is the order in which they are tightened. */
import type { PublishedTable } from './table.ts'

/** As recalled; the lines for 12, 16 and 24 bolts were also seen quoted in a text about the guideline. */
export const recalledOrders: PublishedTable = {
  source: 'ASME PCC-1, guidelines for pressure boundary bolted flange joint assembly',
  table: 'legacy cross-pattern tightening sequence',
  basis: 'from memory',
  unit: 'positions',
  columns: ['bolts', 'order'],
  rows: [
    ['4', '1-3-2-4'],
    ['12', '1-7-4-10, 2-8-5-11, 3-9-6-12'],
    ['16', '1-9-5-13, 3-11-7-15, 2-10-6-14, 4-12-8-16'],
    ['20', '1-11-6-16, 3-13-8-18, 5-15-10-20, 2-12-7-17, 4-14-9-19'],
    ['24', '1-13-7-19, 4-16-10-22, 2-14-8-20, 5-17-11-23, 3-15-9-21, 6-18-12-24'],
    ['28', '1-15-8-22, 4-18-11-25, 6-20-13-27, 2-16-9-23, 5-19-12-26, 7-21-14-28, 3-17-10-24'],
    ['32', '1-17-9-25, 5-21-13-29, 3-19-11-27, 7-23-15-31, 2-18-10-26, 6-22-14-30, 4-20-12-28, 8-24-16-32'],
  ],
}

export const seenOrders: PublishedTable = {
  source: 'a public maintenance manual, maker withheld',
  table: 'order of tightening on a bolt circle',
  basis: 'seen',
  unit: 'positions',
  columns: ['bolts', 'order'],
  rows: [['8', '1-5-3-7, 2-6-4-8']],
}

/** So many neighbours count as one bolt. */
export const groupedOrders: PublishedTable = {
  source: 'a tightening guide on why the sequence matters',
  table: 'very many bolts: four neighbours as one',
  basis: 'seen',
  unit: 'groups',
  columns: ['bolts', 'groups'],
  rows: [['48', '12']],
}
