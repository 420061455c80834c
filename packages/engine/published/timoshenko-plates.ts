/** Deflections of thin plates without a bed, Poisson's ratio 0.3 unless said. a is the short side of a rectangle or the radius of a circle. */
import type { PublishedTable } from './table.ts'

const BOOK = 'Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, 2nd edition'
const ELEMENTS = 'conforming bicubic elements of 1/40 of the side, converged to 0.01 % (central load 0.02 %)'

/** Deflection at the centre, as w D/(q a⁴). */
export const supportedUniform: PublishedTable = {
  source: BOOK,
  table: 'Table 8, simply supported, uniform load',
  basis: 'from memory',
  unit: 'q a⁴/D',
  columns: ['b/a', 'w'],
  rows: [
    ['1', '.00406'],
    ['2', '.01013'],
  ],
}

/** Deflection at the centre, as w D/(P a²). */
export const supportedCentral: PublishedTable = {
  source: BOOK,
  table: 'Table 23, simply supported, central load',
  basis: 'from memory',
  unit: 'P a²/D',
  columns: ['b/a', 'w'],
  rows: [
    ['1', '.01160'],
    ['2', '.01651'],
  ],
}

/** Deflection at the centre, as w D/(q a⁴). */
export const clampedUniform: PublishedTable = {
  source: BOOK,
  table: 'Table 35, clamped, uniform load',
  basis: 'from memory',
  unit: 'q a⁴/D',
  columns: ['b/a', 'w'],
  rows: [
    ['1', '.00126'],
    ['2', '.00254'],
  ],
}

/** Deflection at the centre, as w D/(P a²). */
export const clampedCentral: PublishedTable = {
  source: BOOK,
  table: 'Table 37, clamped, central load',
  basis: 'from memory',
  unit: 'P a²/D',
  columns: ['b/a', 'w'],
  rows: [
    ['1', '.00560'],
    ['2', '.00722'],
  ],
}

/** The square under uniform load, as a page that verifies another program quotes the book. */
export const squaresQuoted: PublishedTable = {
  source: 'clamped plate verification page, quoting the book and NAFEMS R0015',
  table: 'square plates, uniform load',
  basis: 'seen',
  unit: 'q a⁴/D',
  columns: ['edges', 'w'],
  rows: [
    ['supported', '.00406'],
    ['clamped', '.00126'],
  ],
}

/** More ratios and more digits of the same four cases. */
export const rectangles: PublishedTable = {
  source: ELEMENTS,
  table: 'rectangles, deflection at the centre',
  basis: 'calculated',
  unit: 'q a⁴/D or P a²/D',
  columns: ['edges', 'load', 'b/a', 'w'],
  rows: [
    ['supported', 'uniform', '1', '.004062'],
    ['supported', 'uniform', '1.2', '.005651'],
    ['supported', 'uniform', '1.4', '.007085'],
    ['supported', 'uniform', '1.6', '.008308'],
    ['supported', 'uniform', '1.8', '.009316'],
    ['supported', 'uniform', '2', '.010129'],
    ['supported', 'uniform', '3', '.012233'],
    ['supported', 'central', '1', '.011600'],
    ['supported', 'central', '1.2', '.013555'],
    ['supported', 'central', '1.4', '.014865'],
    ['supported', 'central', '1.6', '.015700'],
    ['supported', 'central', '1.8', '.016213'],
    ['supported', 'central', '2', '.016523'],
    ['supported', 'central', '3', '.016933'],
    ['clamped', 'uniform', '1', '.001265'],
    ['clamped', 'uniform', '1.2', '.001725'],
    ['clamped', 'uniform', '1.4', '.002068'],
    ['clamped', 'uniform', '1.6', '.002300'],
    ['clamped', 'uniform', '1.8', '.002446'],
    ['clamped', 'uniform', '2', '.002533'],
    ['clamped', 'uniform', '3', '.002617'],
    ['clamped', 'central', '1', '.005611'],
    ['clamped', 'central', '1.2', '.006474'],
    ['clamped', 'central', '1.4', '.006920'],
    ['clamped', 'central', '1.6', '.007120'],
    ['clamped', 'central', '1.8', '.007201'],
    ['clamped', 'central', '2', '.007229'],
    ['clamped', 'central', '3', '.007241'],
  ],
}

/** Moments per width. The book's table for plates with free edges (Table 47) has a known misprint and is left out. */
export const moments: PublishedTable = {
  source: BOOK,
  table: 'bending moments, uniform load',
  basis: 'from memory',
  unit: 'q a²',
  columns: ['edges', 'b/a', 'where', 'm'],
  rows: [
    ['supported', '1', 'centre', '.0479'],
    ['clamped', '1', 'centre', '.0231'],
    ['clamped', '1', 'edge', '-.0513'],
    ['supported', '2', 'centre, short span', '.1017'],
    ['supported', '2', 'centre, long span', '.0464'],
  ],
}

/** Deflection at the centre of a circle of radius a: 1/(16π), (3+ν)/(16π(1+ν)), 1/64, (5+ν)/(64(1+ν)). */
export const circles: PublishedTable = {
  source: BOOK,
  table: 'circular plates',
  basis: 'from memory',
  unit: 'q a⁴/D or P a²/D',
  columns: ['edge', 'load', 'w'],
  rows: [
    ['clamped', 'central', '.0198944'],
    ['supported', 'central', '.0505011'],
    ['clamped', 'uniform', '.015625'],
    ['supported', 'uniform', '.0637019'],
  ],
}

/** A square held at three corners, P at the fourth: w = P a²/(2 D (1−ν)), and a quarter of it at the centre. */
export const twistedSquare: PublishedTable = {
  source: 'pure twist of a thin plate, w = P a²/(2 D (1−ν)); four elements give the same digits',
  table: 'square held at three corners',
  basis: 'calculated',
  unit: 'P a²/D',
  columns: ['where', 'w'],
  rows: [
    ['corner', '.714286'],
    ['centre', '.178571'],
  ],
}
