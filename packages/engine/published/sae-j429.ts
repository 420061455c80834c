/** SAE J429: inch grades. */
import type { PublishedTable } from './table.ts'

/** Minimum strengths by grade and size in inches. */
export const strengths: PublishedTable = {
  source: 'SAE J429, tables of a machine design course',
  table: 'property table',
  basis: 'seen',
  unit: 'ksi',
  columns: ['grade and size', 'property', 'value'],
  rows: [
    ['grade 2 1/4-3/4', 'proof', '55'],
    ['grade 2 1/4-3/4', 'yield', '57'],
    ['grade 2 1/4-3/4', 'tensile', '74'],
    ['grade 2 >3/4-1 1/2', 'proof', '33'],
    ['grade 2 >3/4-1 1/2', 'yield', '36'],
    ['grade 2 >3/4-1 1/2', 'tensile', '60'],
    ['grade 5 1/4-1', 'proof', '85'],
    ['grade 5 1/4-1', 'yield', '92'],
    ['grade 5 1/4-1', 'tensile', '120'],
    ['grade 5 >1-1 1/2', 'proof', '74'],
    ['grade 5 >1-1 1/2', 'yield', '81'],
    ['grade 5 >1-1 1/2', 'tensile', '105'],
    ['grade 8 1/4-1 1/2', 'proof', '120'],
    ['grade 8 1/4-1 1/2', 'yield', '130'],
    ['grade 8 1/4-1 1/2', 'tensile', '150'],
  ],
}
