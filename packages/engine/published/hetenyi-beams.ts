/** Beams on a bed: λ = (κ/(4EI))^¼, κ the bed's stiffness per length. */
import type { PublishedTable } from './table.ts'

const BOOK = 'Hetényi, Beams on Elastic Foundation'

/** Infinite beam under P: y = Pλ/(2κ)·e^(−λx)(cos λx + sin λx), as a share of what is under the load. */
export const infiniteShape: PublishedTable = {
  source: BOOK,
  table: 'infinite beam, deflection beside the load',
  basis: 'from memory',
  unit: 'of y(0)',
  columns: ['λx', 'y/y(0)'],
  rows: [
    ['.5', '.82307'],
    ['1', '.50833'],
    ['2', '.06674'],
    ['3', '-.04226'],
  ],
}

/** The plate in the narrow limit: a strip of 400 × 5 mm, 8 mm thick, E 110 000 MPa, ν 0, bed 5 N/mm³; P 1 N on its axis. */
export const strip: PublishedTable = {
  source: `${BOOK}: Pλ/(2κ) at the centre, 2Pλ/κ at the end`,
  table: 'strip 400 × 5 × 8 mm',
  basis: 'calculated',
  unit: 'mm/N',
  columns: ['load at', 'y'],
  rows: [
    ['centre', '4.54346e-4'],
    ['end', '1.817386e-3'],
  ],
}

/** The same strip as a plate. With ν the centre hardly changes: a narrow strip bends with E I, not with D. */
export const stripAsPlate: PublishedTable = {
  source: 'conforming bicubic elements',
  table: 'strip 400 × 5 × 8 mm as a plate',
  basis: 'calculated',
  unit: 'mm/N',
  columns: ['load at', 'ν', 'y'],
  rows: [
    ['centre', '0', '4.54437e-4'],
    ['end', '0', '1.817427e-3'],
    ['centre', '.25', '4.5415e-4'],
  ],
}
