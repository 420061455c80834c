/** ISO 898-7: torsion alone. */
import type { PublishedTable } from './table.ts'

/** Minimum breaking torques. */
export const breakingTorques: PublishedTable = {
  source: 'ISO 898-7',
  table: 'minimum breaking torque',
  basis: 'from memory',
  unit: 'N·m',
  columns: ['thread', 'class', 'torque'],
  rows: [
    ['M5', '8.8', '7.6'],
    ['M5', '9.8', '8.3'],
    ['M5', '10.9', '9.3'],
    ['M5', '12.9', '10'],
    ['M6', '8.8', '13'],
    ['M6', '9.8', '14'],
    ['M6', '10.9', '16'],
    ['M6', '12.9', '17'],
    ['M8', '8.8', '33'],
    ['M8', '9.8', '36'],
    ['M8', '10.9', '40'],
    ['M8', '12.9', '44'],
    ['M10', '8.8', '66'],
    ['M10', '9.8', '72'],
    ['M10', '10.9', '81'],
    ['M10', '12.9', '90'],
  ],
}
