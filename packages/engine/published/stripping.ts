/** Stripping of threads. */
import type { PublishedTable } from './table.ts'

/** Shear areas over an engagement of one diameter, 6H/6g. */
export const metricAreas: PublishedTable = {
  source: 'Bickford, Introduction to the Design and Behavior of Bolted Joints, 4th edition',
  table: 'metric stress and shear areas',
  basis: 'seen',
  unit: 'mm²',
  columns: ['thread', 'part', 'area'],
  rows: [
    ['M6', 'bolt', '51.875'],
    ['M6', 'hole', '73.145'],
    ['M8', 'bolt', '97.290'],
    ['M8', 'hole', '134.63'],
    ['M10', 'bolt', '155.80'],
    ['M10', 'hole', '214.77'],
    ['M12', 'bolt', '227.72'],
    ['M12', 'hole', '313.41'],
    ['M16', 'bolt', '417.55'],
    ['M16', 'hole', '569.12'],
  ],
}

/** Shear areas over an engagement of one diameter, 2A/2B. The same table prints the stress area of 7/16-14 as .0163 for .1063. */
export const inchAreas: PublishedTable = {
  source: 'Bickford, Introduction to the Design and Behavior of Bolted Joints, 4th edition',
  table: 'inch stress and shear areas',
  basis: 'seen',
  unit: 'in²',
  columns: ['thread', 'part', 'area'],
  rows: [
    ['1/4-20', 'bolt', '0.092'],
    ['1/4-20', 'hole', '0.135'],
    ['1/4-28', 'bolt', '0.093'],
    ['1/4-28', 'hole', '0.130'],
    ['3/8-16', 'bolt', '0.216'],
    ['3/8-16', 'hole', '0.310'],
    ['3/8-24', 'bolt', '0.217'],
    ['3/8-24', 'hole', '0.299'],
    ['7/16-14', 'bolt', '0.296'],
    ['7/16-14', 'hole', '0.428'],
    ['1/2-20', 'bolt', '0.400'],
    ['1/2-20', 'hole', '0.541'],
  ],
}

/** Shear areas of the hole per inch of engagement. The same table prints .908 for 7/16-20 where the formula gives .946: left out as a misprint. */
export const perInch: PublishedTable = {
  source: 'Fastener Tech Details, tensile, root and stripping areas',
  table: 'stripping areas',
  basis: 'seen',
  unit: 'in² per in',
  columns: ['thread', 'part', 'area'],
  rows: [
    ['1/4-20', 'hole', '0.539'],
    ['1/4-28', 'hole', '0.521'],
    ['5/16-24', 'hole', '0.663'],
    ['3/8-16', 'hole', '0.828'],
    ['1/2-20', 'hole', '1.08'],
  ],
}

/** Worked example: M10 10.9 in 310-type aluminium, 6H. It takes the greatest 6g major diameter for the least, so its inputs are passed as printed. */
export const aluminiumExample: PublishedTable = {
  source: 'machine design text, chapter on thread engagement',
  table: 'worked example',
  basis: 'seen',
  unit: 'mm',
  columns: ['load', 'strength', 'bolt major', 'hole pitch', 'engagement'],
  rows: [['F 69600 N', 'shear 130 MPa', 'Ds 9.968', 'En 9.206', '21.6']],
}

/** Shear strength of die-cast aluminium alloys. */
export const dieCastShear: PublishedTable = {
  source: 'NADCA A-3-2-12',
  table: 'die casting alloys',
  basis: 'seen',
  unit: 'MPa',
  columns: ['alloy', 'shear strength'],
  rows: [
    ['360', '190'],
    ['A360', '180'],
    ['380', '190'],
    ['A380', '190'],
    ['384', '200'],
    ['413', '170'],
  ],
}
