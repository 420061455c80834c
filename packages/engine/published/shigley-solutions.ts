/** Worked answers on the stiffness of a joint. All were worked out again from the printed figures; slips of the book are named. */
import type { PublishedTable } from './table.ts'

const BOOK = "solutions manual of Shigley's Mechanical Engineering Design, chapter 8"

/** The bolt of 8-20: 113·84.3·207/(113·lt + 84.3·ld). The book prints lt 15 for a grip of 45; a grip of 40 gives lt 10. */
export const bolt820: PublishedTable = {
  source: BOOK,
  table: 'Problem 8-20, bolt',
  basis: 'seen',
  unit: 'MN/m',
  columns: ['shank area, mm²', 'thread area, mm²', 'shank, mm', 'thread, mm', 'stiffness'],
  rows: [['113', '84.3', '30', '15', '466.8']],
}

/** The same bolt with the length that belongs to its grip. */
export const bolt820Corrected: PublishedTable = {
  source: 'the formula of Problem 8-20 with the length for a grip of 40',
  table: 'Problem 8-20, bolt',
  basis: 'calculated',
  unit: 'MN/m',
  columns: ['shank area, mm²', 'thread area, mm²', 'shank, mm', 'thread, mm', 'stiffness'],
  rows: [['113', '84.3', '30', '10', '538.9']],
}

/** Springs in series, as printed: parts, then their sum, Mlbf/in. */
export const inSeriesInch: PublishedTable = {
  source: BOOK,
  table: 'Problems 8-24 and 8-25, springs in series',
  basis: 'seen',
  unit: 'Mlbf/in',
  columns: ['of', 'parts', 'series'],
  rows: [
    ['8-24 bolt', '5.9125 11.778', '3.936'],
    ['8-24 members', '33.30 173.8 21.47 97.27', '10.79'],
    ['8-25 members', '36.14 134.6 23.49', '12.87'],
  ],
}

/** The cap screw of 8-25 as a bar: .1419·30/.845. */
export const bolt825: PublishedTable = {
  source: BOOK,
  table: 'Problem 8-25, cap screw',
  basis: 'seen',
  unit: 'Mlbf/in',
  columns: ['area, in²', 'modulus, Mpsi', 'length, in', 'stiffness'],
  rows: [['.1419', '30', '.845', '5.04']],
}

/** Share of the bolt: bolt/(bolt + members). */
export const shares: PublishedTable = {
  source: BOOK,
  table: 'joint constants',
  basis: 'seen',
  unit: '',
  columns: ['bolt', 'members', 'C'],
  rows: [
    ['466.8', '1523', '.2346'],
    ['3.936', '10.79', '.267'],
    ['5.04', '12.87', '.281'],
  ],
}

/** The M10 in a grip of 45 mm; and 8-20, whose halves of steel and iron are twice as stiff as the 2361 and 1124 printed for the whole grip. */
export const inSeriesMetric: PublishedTable = {
  source: BOOK,
  table: 'M10 in 45 mm and Problem 8-20, springs in series',
  basis: 'seen',
  unit: 'MN/m',
  columns: ['of', 'parts', 'series'],
  rows: [
    ['M10 members', '3503 44044 1567', '1057'],
    ['8-20 members', '4722 2248', '1523'],
  ],
}

/** 8-23 prints 2158 for its frusta 5316, 15 620 and 3887: it takes 55 620 for the second by a slip. */
export const inSeries823: PublishedTable = {
  source: 'the frusta of Problem 8-23 in series, without its slip',
  table: 'Problem 8-23, frusta in series',
  basis: 'calculated',
  unit: 'MN/m',
  columns: ['of', 'parts', 'series'],
  rows: [['8-23 members', '5316 15620 3887', '1963']],
}
