/** Wrenches and units. */
import type { PublishedTable } from './table.ts'

/** Extensions in line with the wrench; reach below 0 is turned back. */
export const extensions: PublishedTable = {
  source:
    'TM 1-1500-204-23-9, TM 9-254, Navy 14315 (its answer by formula), a helicopter maintenance manual, an aviation handbook',
  table: 'worked examples',
  basis: 'seen',
  unit: 'as the wrench reads',
  columns: ['asked', 'torque', 'L', 'E', 'result'],
  rows: [
    ['setting', '300', '10', '4', '214'],
    ['at bolt', '60', '12', '2', '70'],
    ['setting', '100', '12', '6', '66.7'],
    ['setting', '135', '10', '1.5', '117.39'],
    ['setting', '135', '10', '-1.5', '158.82'],
    ['setting', '40', '12', '4', '30'],
  ],
}

/** How far a universal joint lets the torque rise over its mean. */
export const swivel: PublishedTable = {
  source: 'kinematics of the single Cardan joint, engineering page',
  table: 'angle and excess',
  basis: 'seen',
  unit: '%',
  columns: ['angle', 'excess'],
  rows: [
    ['10', '1.5'],
    ['20', '6'],
    ['30', '15'],
    ['15', '3.5'],
  ],
}

/** Units by definition. */
export const units: PublishedTable = {
  source: 'pound 0.45359237 kg, standard gravity 9.80665 m/s², foot 0.3048 m, inch 25.4 mm',
  table: 'exact factors',
  basis: 'seen',
  unit: 'N·m or mm',
  columns: ['unit', 'size'],
  rows: [
    ['lbf·ft', '1.3558179483314004'],
    ['lbf·in', '0.1129848290276167'],
    ['kgf·m', '9.80665'],
    ['in', '25.4'],
  ],
}

/** Tightening factor αA that belongs to a scatter. */
export const tighteningFactors: PublishedTable = {
  source: 'VDI 2230:1986, page of a fastener supplier',
  table: 'tightening factors',
  basis: 'seen',
  unit: '',
  columns: ['scatter, ±%', 'factor'],
  rows: [
    ['17', '1.4'],
    ['23', '1.6'],
    ['28', '1.8'],
    ['43', '2.5'],
    ['60', '4.0'],
  ],
}
