/** Worked examples of books. */
import type { PublishedTable } from './table.ts'

/** Frusta of the clamped zone, example 8-5. */
export const frusta: PublishedTable = {
  source: "Shigley's Mechanical Engineering Design, 9th edition",
  table: 'Example 8-5',
  basis: 'seen',
  unit: 'Mlbf/in',
  columns: ['thickness, in', 'outer, in', 'hole, in', 'modulus, Mpsi', 'stiffness'],
  rows: [
    ['0.5', '0.9375', '0.625', '30', '46.46'],
    ['0.1875', '1.298', '0.625', '30', '197.43'],
    ['0.3125', '0.9375', '0.625', '16', '32.39'],
  ],
}

/** The joint of example 8-5: members in series, bolt, joint constant. */
export const example85: PublishedTable = {
  source: "Shigley's Mechanical Engineering Design, 9th edition",
  table: 'Example 8-5',
  basis: 'seen',
  unit: 'Mlbf/in',
  columns: ['what', 'value'],
  rows: [
    ['members', '17.40'],
    ['bolt', '6.78'],
    ['constant', '.280'],
  ],
}

/** Torque for 25 000 lbf on 3/4-16, friction 0.15 at thread and collar, collar 1.25 d. */
export const torque: PublishedTable = {
  source: "Shigley's Mechanical Engineering Design, 9th edition",
  table: 'page 464',
  basis: 'from memory',
  unit: 'lbf·in',
  columns: ['thread', 'load, lbf', 'friction', 'torque'],
  rows: [['3/4-16', '25000', '0.15', '3551']],
}

/** Torque of an M8 at 8000 N, friction 0.15, bearing diameter 11.27 mm. It takes the exact ring form; the linear one is 0.5 % lower. */
export const m8: PublishedTable = {
  source: 'lecture notes on screws',
  table: 'worked example',
  basis: 'seen',
  unit: 'N·m',
  columns: ['thread', 'load, N', 'friction', 'bearing, mm', 'torque'],
  rows: [['M8', '8000', '0.15', '11.27', '13.4']],
}

/** A reading of the table: M12 8.8, friction 0.14, greatest preload and the least with αA 1.8. */
export const scatterOfM12: PublishedTable = {
  source: "supplier's VDI 2230:2015 table",
  table: 'worked reading',
  basis: 'seen',
  unit: 'kN',
  columns: ['what', 'load'],
  rows: [
    ['most', '41.9'],
    ['least', '23.3'],
  ],
}
