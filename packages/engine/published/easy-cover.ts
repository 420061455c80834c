/**
 * A cover whose compliance other programs have worked out: a rectangle of 120 × 80 mm, 8 mm thick, free edges, on a bed of springs that act both
 * ways, six bolts. Sink at one bolt for 1 N pressing at another.
 */
import type { PublishedTable } from './table.ts'

/** The cover itself; its bed and bolts stand beside it. E and ν are exact, not usual values of a material. */
export const easyCover = {
  outline: [
    [0, 0],
    [120, 0],
    [120, 80],
    [0, 80],
  ],
  thickness: 8,
  young: 110_000,
  poisson: 0.25,
  bed: 5,
  points: [
    [10, 10],
    [60, 10],
    [110, 10],
    [110, 70],
    [60, 70],
    [10, 70],
  ],
} as const

/** Thin-plate theory. Stated error 0.01 % of the largest diagonal term: meshes of 2.5 and 1.25 mm differ by 0.0003 % of it, conforming bicubic
 * rectangles by 0.0004 %, CalculiX in the thin limit by 0.016 %. */
export const thinPlate: PublishedTable = {
  source: 'Argyris C1 quintic triangles of 1.25 mm (GetFEM 5.4.2)',
  table: 'easy cover, thin plate',
  basis: 'calculated',
  unit: 'mm/N',
  columns: ['at', 'load at', 'sink'],
  rows: [
    ['0', '0', '0.000139969'],
    ['0', '1', '4.2788e-05'],
    ['0', '2', '2.62458e-06'],
    ['0', '3', '-3.062e-05'],
    ['0', '4', '-1.86547e-05'],
    ['0', '5', '1.40576e-05'],
    ['1', '0', '4.2788e-05'],
    ['1', '1', '7.49965e-05'],
    ['1', '2', '4.2788e-05'],
    ['1', '3', '-1.86547e-05'],
    ['1', '4', '-7.11967e-06'],
    ['1', '5', '-1.86547e-05'],
    ['2', '0', '2.62458e-06'],
    ['2', '1', '4.2788e-05'],
    ['2', '2', '0.000139969'],
    ['2', '3', '1.40576e-05'],
    ['2', '4', '-1.86547e-05'],
    ['2', '5', '-3.062e-05'],
    ['3', '0', '-3.062e-05'],
    ['3', '1', '-1.86547e-05'],
    ['3', '2', '1.40576e-05'],
    ['3', '3', '0.000139969'],
    ['3', '4', '4.2788e-05'],
    ['3', '5', '2.62458e-06'],
    ['4', '0', '-1.86547e-05'],
    ['4', '1', '-7.11967e-06'],
    ['4', '2', '-1.86547e-05'],
    ['4', '3', '4.2788e-05'],
    ['4', '4', '7.49965e-05'],
    ['4', '5', '4.2788e-05'],
    ['5', '0', '1.40576e-05'],
    ['5', '1', '-1.86547e-05'],
    ['5', '2', '-3.062e-05'],
    ['5', '3', '2.62458e-06'],
    ['5', '4', '4.2788e-05'],
    ['5', '5', '0.000139969'],
  ],
}

/** With shear. A loaded point sinks a little deeper with every halving of the mesh: 0.19 % of the largest diagonal term from 5 to 2.5 mm. It
 * differs from the thin plate by up to 2.46 % of that term, which is the doubt of plate theory itself on such a cover. */
export const thickPlate: PublishedTable = {
  source: 'CalculiX 2.20, S8R of 2.5 mm (expanded to 20-node bricks, shear included)',
  table: 'easy cover, true thickness',
  basis: 'calculated',
  unit: 'mm/N',
  columns: ['at', 'load at', 'sink'],
  rows: [
    ['0', '0', '0.000143417'],
    ['0', '1', '4.23439e-05'],
    ['0', '2', '1.85192e-06'],
    ['0', '3', '-2.9739e-05'],
    ['0', '4', '-1.84535e-05'],
    ['0', '5', '1.28552e-05'],
    ['1', '0', '4.23439e-05'],
    ['1', '1', '7.73845e-05'],
    ['1', '2', '4.23439e-05'],
    ['1', '3', '-1.84535e-05'],
    ['1', '4', '-7.24912e-06'],
    ['1', '5', '-1.84535e-05'],
    ['2', '0', '1.85192e-06'],
    ['2', '1', '4.23439e-05'],
    ['2', '2', '0.000143417'],
    ['2', '3', '1.28552e-05'],
    ['2', '4', '-1.84535e-05'],
    ['2', '5', '-2.9739e-05'],
    ['3', '0', '-2.9739e-05'],
    ['3', '1', '-1.84535e-05'],
    ['3', '2', '1.28552e-05'],
    ['3', '3', '0.000143417'],
    ['3', '4', '4.23439e-05'],
    ['3', '5', '1.85192e-06'],
    ['4', '0', '-1.84535e-05'],
    ['4', '1', '-7.24912e-06'],
    ['4', '2', '-1.84535e-05'],
    ['4', '3', '4.23439e-05'],
    ['4', '4', '7.73845e-05'],
    ['4', '5', '4.23439e-05'],
    ['5', '0', '1.28552e-05'],
    ['5', '1', '-1.84535e-05'],
    ['5', '2', '-2.9739e-05'],
    ['5', '3', '1.85192e-06'],
    ['5', '4', '4.23439e-05'],
    ['5', '5', '0.000143417'],
  ],
}

/** First row for a plate that cannot bend (E × 10⁶): 1/(kA) + x x′/(k I_y) + y y′/(k I_x) about the centroid, times 10⁵. */
export const stiffLimit: PublishedTable = {
  source: 'closed formula of a stiff plate on a bed of springs; elements agree to all digits',
  table: 'easy cover, stiff limit, row of bolt 0',
  basis: 'calculated',
  unit: '1e-5 mm/N',
  columns: ['at', 'sink'],
  rows: [
    ['0', '9.9392'],
    ['1', '5.5990'],
    ['2', '1.2587'],
    ['3', '-5.7726'],
    ['4', '-1.4323'],
    ['5', '2.9080'],
  ],
}
