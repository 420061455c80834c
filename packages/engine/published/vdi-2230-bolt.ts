/** VDI 2230 Part 1: how a bolt gives way, how its seat gives way, and what settles after tightening. */
import type { PublishedTable } from './table.ts'

const FORMULAS = 'formulas of VDI 2230 Part 1 and ECSS-E-HB-32-23A, factors from memory'

/**
 * Hex screw M6×1, clamped 10 mm, threaded up to the head, E 205 000 MPa, tapped in aluminium of 70 000 MPa: head 0.5 d/(E A_N), free thread
 * l/(E A_3), engaged core 0.5 d/(E A_3), tapped hole 0.33 d/(E_M A_N).
 */
export const screwM6: PublishedTable = {
  source: FORMULAS,
  table: 'compliance of an M6 screw in aluminium',
  basis: 'calculated',
  unit: 'mm/N',
  columns: ['part', 'compliance'],
  rows: [
    ['head', '5.176e-7'],
    ['free thread', '2.7261e-6'],
    ['engaged core', '8.178e-7'],
    ['tapped hole', '1.0004e-6'],
    ['sum', '5.062e-6'],
  ],
}

/** Core of the M6 by which the thread gives way: d_3 in mm and its area in mm². */
export const coreM6: PublishedTable = {
  source: FORMULAS,
  table: 'core of the M6',
  basis: 'calculated',
  unit: 'mm or mm²',
  columns: ['what', 'value'],
  rows: [
    ['d3', '4.7731'],
    ['A3', '17.894'],
  ],
}

/** The aluminium cover below that screw: dw 8.9, dh 6.6, D_A 20, tapped joint. The cone reaches 19.02 mm with tan φ .50578. */
export const seatM6: PublishedTable = {
  source: FORMULAS,
  table: 'compliance of the clamped zone under an M6 screw',
  basis: 'calculated',
  unit: 'mm/N',
  columns: ['what', 'value'],
  rows: [['clamped zone', '1.6124e-6']],
}

/** What settles: guide values by roughness Rz, loaded along the bolt (axial) or across it (shear). Not for screws below M4. */
export const embedment: PublishedTable = {
  source: 'VDI 2230 Part 1, guide values of embedding',
  table: 'settling',
  basis: 'from memory',
  unit: 'µm',
  columns: ['Rz, µm', 'load', 'where', 'settles'],
  rows: [
    ['below 10', 'axial', 'thread', '3'],
    ['below 10', 'axial', 'head or nut', '2.5'],
    ['below 10', 'axial', 'inner interface', '1.5'],
    ['below 10', 'shear', 'thread', '3'],
    ['below 10', 'shear', 'head or nut', '3'],
    ['below 10', 'shear', 'inner interface', '2'],
    ['10 to 40', 'axial', 'thread', '3'],
    ['10 to 40', 'axial', 'head or nut', '3'],
    ['10 to 40', 'axial', 'inner interface', '2'],
    ['10 to 40', 'shear', 'thread', '3'],
    ['10 to 40', 'shear', 'head or nut', '4.5'],
    ['10 to 40', 'shear', 'inner interface', '2.5'],
    ['40 to 160', 'axial', 'thread', '3'],
    ['40 to 160', 'axial', 'head or nut', '4'],
    ['40 to 160', 'axial', 'inner interface', '3'],
    ['40 to 160', 'shear', 'thread', '3'],
    ['40 to 160', 'shear', 'head or nut', '6.5'],
    ['40 to 160', 'shear', 'inner interface', '3.5'],
  ],
}

/** Loss f/(δ_S + δ_P) of the M6 above, Rz below 10, one inner interface: 3 + 2.5 + 1.5 = 7 µm. */
export const lossM6: PublishedTable = {
  source: FORMULAS,
  table: 'loss of clamp load of the M6 by settling',
  basis: 'calculated',
  unit: 'kN',
  columns: ['settles, µm', 'loss'],
  rows: [['7', '1.05']],
}
