/** Stress areas of bolts. */
import type { PublishedTable } from './table.ts'

/** Stress areas to two decimals. */
export const twoDecimals: PublishedTable = {
  source: 'GB/T 16823.1, on a page of thread tables',
  table: 'effective stress area',
  basis: 'seen',
  unit: 'mm²',
  columns: ['thread', 'As'],
  rows: [
    ['M3', '5.03'],
    ['M4', '8.78'],
    ['M5', '14.18'],
    ['M6', '20.12'],
    ['M8', '36.61'],
    ['M10', '57.99'],
    ['M12', '84.27'],
    ['M14', '115.44'],
    ['M16', '156.67'],
    ['M18', '192.47'],
    ['M20', '244.80'],
    ['M22', '303.40'],
    ['M24', '352.51'],
    ['M12x1.5', '88.13'],
    ['M12x1.25', '92.07'],
    ['M14x1.5', '124.55'],
    ['M16x1.5', '167.25'],
  ],
}

/** Nominal stress areas, coarse threads, as rounded in the standard. */
export const iso898Coarse: PublishedTable = {
  source: "ISO 898-1, supplier's copy of the proof load table",
  table: 'nominal stress area, coarse',
  basis: 'seen',
  unit: 'mm²',
  columns: ['thread', 'As'],
  rows: [
    ['M3', '5.03'],
    ['M4', '8.78'],
    ['M5', '14.2'],
    ['M6', '20.1'],
    ['M8', '36.6'],
    ['M10', '58.0'],
    ['M12', '84.3'],
    ['M14', '115'],
    ['M16', '157'],
    ['M18', '192'],
    ['M20', '245'],
    ['M22', '303'],
    ['M24', '353'],
  ],
}

/** Nominal stress areas, fine threads, as rounded in the standard. */
export const iso898Fine: PublishedTable = {
  source: 'ISO 898-1',
  table: 'nominal stress area, fine',
  basis: 'from memory',
  unit: 'mm²',
  columns: ['thread', 'As'],
  rows: [
    ['M8x1', '39.2'],
    ['M10x1.25', '61.2'],
    ['M10x1', '64.5'],
    ['M12x1.25', '92.1'],
    ['M12x1.5', '88.1'],
    ['M14x1.5', '125'],
    ['M16x1.5', '167'],
  ],
}

/** Tensile stress areas of unified threads. Another table prints 7/16-14 as .0163, a misprint. */
export const shigleyInch: PublishedTable = {
  source: "Shigley's Mechanical Engineering Design, 9th edition",
  table: 'Table 8-2',
  basis: 'seen',
  unit: 'in²',
  columns: ['thread', 'At'],
  rows: [
    ['1/4-20', '.0318'],
    ['1/4-28', '.0364'],
    ['5/16-18', '.0524'],
    ['5/16-24', '.0580'],
    ['3/8-16', '.0775'],
    ['3/8-24', '.0878'],
    ['7/16-14', '.1063'],
    ['7/16-20', '.1187'],
    ['1/2-13', '.1419'],
    ['1/2-20', '.1599'],
  ],
}
