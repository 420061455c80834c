/** What a joint loses after it is tight, and how gaskets give way. */
import type { PublishedTable } from './table.ts'

/** Loss within five days, then nothing more. */
export const steelJoints: PublishedTable = {
  source: 'Munse 1967, quoted in the commentary of the RCSC specification',
  table: 'relaxation of steel joints',
  basis: 'seen',
  unit: '%',
  columns: ['surface', 'loss'],
  rows: [
    ['uncoated', '2.5'],
    ['galvanised', '6.5'],
  ],
}

/** Short-term relaxation of metal joints. */
export const shortTerm: PublishedTable = {
  source: 'NASA-STD-5020, NSTS 08307',
  table: 'short-term relaxation',
  basis: 'from memory',
  unit: '%',
  columns: ['joint', 'loss'],
  rows: [['metal', '5']],
}

/** How far sheets give way under their test load: the least and the greatest of the stated range. */
export const gasketCompression: PublishedTable = {
  source: 'data pages of gasket sheets and gearbox gasket specifications',
  table: 'compressibility',
  basis: 'seen',
  unit: '%',
  columns: ['sheet', 'load, MPa', 'end', 'compression'],
  rows: [
    ['aramid/NBR sheet', '34.5', 'least', '7'],
    ['aramid/NBR sheet', '34.5', 'most', '17'],
    ['mineral/NBR sheet', '34.5', 'least', '7'],
    ['mineral/NBR sheet', '34.5', 'most', '17'],
    ['encapsulated cellulose/SBR', '6.9', 'least', '25'],
    ['encapsulated cellulose/SBR', '6.9', 'most', '45'],
    ['cork-rubber, all grades', '2.8', 'least', '15'],
    ['cork-rubber, all grades', '2.8', 'most', '65'],
  ],
}

/** Creep relaxation by ASTM F38, sheets of 1/32 in. */
export const gasketCreep: PublishedTable = {
  source: 'data pages of gasket sheets, ASTM F38',
  table: 'creep relaxation',
  basis: 'seen',
  unit: '%',
  columns: ['sheet', 'relaxation'],
  rows: [
    ['aramid/NBR sheet', '20'],
    ['mineral/NBR sheet', '25'],
  ],
}

/** Loads of the compressibility test. */
export const testLoads: PublishedTable = {
  source: 'ASTM F36:1999',
  table: 'Table 1',
  basis: 'seen',
  unit: 'MPa',
  columns: ['sheet', 'load'],
  rows: [
    ['fibre sheet', '34.5'],
    ['paper', '6.89'],
    ['cork-rubber', '2.76'],
    ['cork', '0.69'],
  ],
}

/** Stiffness of the bed by the secant, load over (share × thickness): softest and stiffest. An estimate: unloading is much stiffer. */
export const bedBySecant: PublishedTable = {
  source: 'test load over compression, from the data pages above',
  table: 'bed stiffness of a gasket',
  basis: 'calculated',
  unit: 'N/mm³',
  columns: ['load, MPa', 'compression, %', 'thickness, mm', 'stiffness'],
  rows: [
    ['2.8', '45', '3', '2.1'],
    ['2.8', '30', '3', '3.1'],
    ['2.8', '25', '3', '3.7'],
    ['2.8', '15', '3', '6.2'],
    ['6.9', '45', '1', '15'],
    ['6.9', '25', '1', '28'],
    ['34.5', '17', '0.8', '250'],
    ['34.5', '7', '0.8', '620'],
  ],
}
