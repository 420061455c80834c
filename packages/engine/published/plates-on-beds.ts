/** A wide plate on a bed of springs of stiffness k per area; lengths in l = (D/k)^¼. */
import type { PublishedTable } from './table.ts'

/** Under the load P: w = P/(8√(kD)). */
export const infinite: PublishedTable = {
  source: 'Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, 2nd edition',
  table: 'Art. 57 and 58, infinite plate, under the load',
  basis: 'from memory',
  unit: 'P/√(kD)',
  columns: ['w'],
  rows: [['.125']],
}

/** Away from the load: w = −P l²/(2πD)·kei(r/l), as a share of what is under it. */
export const infiniteShape: PublishedTable = {
  source: 'Kelvin function kei in the solution of Timoshenko & Woinowsky-Krieger, Art. 58',
  table: 'infinite plate, deflection beside the load',
  basis: 'calculated',
  unit: 'of w(0)',
  columns: ['r/l', 'w/w(0)'],
  rows: [
    ['0.5', '.85508'],
    ['1', '.63025'],
    ['1.5', '.42195'],
    ['2', '.25770'],
    ['3', '.06509'],
    ['4', '-.00280'],
    ['5', '-.01424'],
  ],
}

/** Where the plate first lifts off, and where it lifts most. */
export const infiniteUplift: PublishedTable = {
  source: 'Kelvin function kei in the solution of Timoshenko & Woinowsky-Krieger, Art. 58',
  table: 'infinite plate, uplift',
  basis: 'calculated',
  unit: 'l or of w(0)',
  columns: ['what', 'value'],
  rows: [
    ['no deflection at', '3.9147'],
    ['most uplift at', '4.932'],
    ['most uplift', '-.01428'],
  ],
}

/** Load at a free straight edge far from any corner: w = c P/√(kD). */
export const freeEdge: PublishedTable = {
  source: 'Fourier integral of the half-plane plate, confirmed by elements on a square of 16 l',
  table: 'load at a free edge',
  basis: 'calculated',
  unit: 'P/√(kD)',
  columns: ['ν', 'c'],
  rows: [
    ['0', '.408248'],
    ['0.15', '.431438'],
    ['0.25', '.450769'],
    ['0.30', '.461980'],
    ['0.33', '.469305'],
  ],
}

/** The same by Westergaard's formula P√(2+1.2ν)/√(E t³ k), which is an approximation: within 0.9 % of the integral. */
export const westergaardEdge: PublishedTable = {
  source: 'Westergaard, as quoted after Ioannides et al. 1985',
  table: 'edge formula, point load',
  basis: 'from memory',
  unit: 'P/√(kD)',
  columns: ['ν', 'c'],
  rows: [
    ['0', '.408248'],
    ['0.15', '.431101'],
    ['0.25', '.452155'],
    ['0.30', '.464884'],
    ['0.33', '.473358'],
  ],
}

/** How the deflection falls away from a load at a free edge, ν 0.3. */
export const freeEdgeShape: PublishedTable = {
  source: 'Fourier integral of the half-plane plate, confirmed by elements on a square of 16 l',
  table: 'deflection beside a load at a free edge',
  basis: 'calculated',
  unit: 'of w(0)',
  columns: ['direction', 'x/l', 'w/w(0)'],
  rows: [
    ['along', '.5', '.8629'],
    ['along', '1', '.6487'],
    ['along', '2', '.2876'],
    ['along', '3', '.0930'],
    ['inward', '.5', '.6289'],
    ['inward', '1', '.3666'],
    ['inward', '2', '.0806'],
    ['inward', '3', '-.0118'],
  ],
}

/** Load at a free right-angled corner: w = c P/√(kD). */
export const freeCorner: PublishedTable = {
  source: 'conforming bicubic elements of l/8',
  table: 'load at a free right-angled corner',
  basis: 'calculated',
  unit: 'P/√(kD)',
  columns: ['ν', 'c'],
  rows: [
    ['0', '1.1738'],
    ['0.15', '1.2122'],
    ['0.30', '1.2719'],
  ],
}

/** Westergaard's corner figure is an approximation: no sum is held to it nearer than 15 %. */
export const westergaardCorner: PublishedTable = {
  source: 'Westergaard',
  table: 'corner formula',
  basis: 'from memory',
  unit: 'P/√(kD)',
  columns: ['c'],
  rows: [['1.1']],
}
