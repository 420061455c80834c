/**
 * The easy cover's bolts tightened in several orders, by a program of its own: compliance as in easy-cover.ts (thin plate), every bolt 200 000 N/mm,
 * target 1 N. Unless said: the bed acts both ways, bolts are loose before their turn, a wrench never loosens.
 */
import type { PublishedTable } from './table.ts'

const PROGRAM = 'small program for tightening on a condensed plate, checked by a second one'

/** Bolt stiffness, N/mm, and the orders by name: bolts are counted from 0. */
export const easyOrders = {
  boltStiffness: 200_000,
  round: [0, 1, 2, 3, 4, 5],
  'middle outward': [1, 4, 0, 3, 2, 5],
  'corners first': [0, 3, 2, 5, 1, 4],
} as const

/** Round the edge, first pass: load of a bolt after so many steps. */
export const loadsAfterSteps: PublishedTable = {
  source: PROGRAM,
  table: 'round the edge, loads after each step',
  basis: 'calculated',
  unit: 'of the target',
  columns: ['steps', 'bolt', 'load'],
  rows: [
    ['1', '0', '1'],
    ['2', '0', '.7048'],
    ['2', '1', '1'],
    ['3', '0', '.8708'],
    ['3', '1', '.3764'],
    ['3', '2', '1'],
    ['4', '0', '1.0111'],
    ['4', '1', '.6274'],
    ['4', '2', '.8264'],
    ['4', '3', '1'],
    ['5', '0', '1.1132'],
    ['5', '1', '.4822'],
    ['5', '2', '1.0263'],
    ['5', '3', '.6883'],
    ['5', '4', '1'],
    ['6', '0', '.8683'],
    ['6', '1', '.8169'],
    ['6', '2', '1.0446'],
    ['6', '3', '.8500'],
    ['6', '4', '.3556'],
    ['6', '5', '1'],
  ],
}

/** What a unit of load put into a later bolt does to bolt 0, round the edge: first row of A in S_final = A·S_initial. */
export const interactionOnFirst: PublishedTable = {
  source: PROGRAM,
  table: 'round the edge, first row of A',
  basis: 'calculated',
  unit: '',
  columns: ['later bolt', 'A'],
  rows: [
    ['0', '1'],
    ['1', '-.2952'],
    ['2', '.1660'],
    ['3', '.1403'],
    ['4', '.1021'],
    ['5', '-.2449'],
  ],
}

/** Loads to put in, round the edge, so that one pass ends with 1 everywhere. */
export const initialLoads: PublishedTable = {
  source: PROGRAM,
  table: 'round the edge, initial loads for a uniform load in one pass',
  basis: 'calculated',
  unit: 'of the target',
  columns: ['bolt', 'load'],
  rows: [
    ['0', '1.0703'],
    ['1', '1.1184'],
    ['2', '.8875'],
    ['3', '1.3508'],
    ['4', '1.6444'],
    ['5', '1'],
  ],
}

/** Change of a bolt's load for one unit more on bolt 0, all tight. */
export const interactionAllTight: PublishedTable = {
  source: PROGRAM,
  table: 'all tight, change per unit at bolt 0',
  basis: 'calculated',
  unit: '',
  columns: ['bolt', 'change'],
  rows: [
    ['0', '1'],
    ['1', '-.6444'],
    ['2', '.1617'],
    ['3', '.0182'],
    ['4', '.3348'],
    ['5', '-.2449'],
  ],
}

/** (max − min)/mean after each full pass; bed and bolts act both ways, bolts loose before their turn. */
export const spreadsTwoWay: PublishedTable = {
  source: PROGRAM,
  table: 'spread, two-way bed and bolts',
  basis: 'calculated',
  unit: '',
  columns: ['order', 'passes', 'spread'],
  rows: [
    ['round', '1', '.838'],
    ['round', '2', '.290'],
    ['round', '3', '.134'],
    ['round', '4', '.077'],
    ['middle outward', '1', '.816'],
    ['middle outward', '2', '.167'],
    ['middle outward', '3', '.042'],
    ['middle outward', '4', '.014'],
    ['corners first', '1', '.539'],
    ['corners first', '2', '.140'],
    ['corners first', '3', '.065'],
    ['corners first', '4', '.046'],
  ],
}

/** One-sided bolts, all run down by hand first; the bed still acts both ways. */
export const spreadsSnug: PublishedTable = {
  source: PROGRAM,
  table: 'spread, one-sided bolts, hand-snug first, two-way bed',
  basis: 'calculated',
  unit: '',
  columns: ['order', 'passes', 'spread'],
  rows: [
    ['round', '1', '.803'],
    ['round', '2', '.276'],
    ['round', '3', '.119'],
    ['round', '4', '.061'],
    ['middle outward', '1', '.905'],
    ['middle outward', '2', '.176'],
    ['middle outward', '3', '.050'],
    ['middle outward', '4', '.017'],
    ['corners first', '1', '.521'],
    ['corners first', '2', '.114'],
    ['corners first', '3', '.041'],
    ['corners first', '4', '.027'],
  ],
}

/** Bed and bolts one-sided, all run down by hand first; full contact with the bed as springs at nodes 5 mm apart. */
export const spreadsSnugContact: PublishedTable = {
  source: PROGRAM,
  table: 'spread, one-sided bed and bolts, hand-snug first',
  basis: 'calculated',
  unit: '',
  columns: ['order', 'passes', 'spread'],
  rows: [
    ['round', '1', '.801'],
    ['round', '2', '.277'],
    ['round', '3', '.118'],
    ['round', '4', '.061'],
    ['middle outward', '1', '.914'],
    ['middle outward', '2', '.176'],
    ['middle outward', '3', '.050'],
    ['middle outward', '4', '.017'],
    ['corners first', '1', '.525'],
    ['corners first', '2', '.115'],
    ['corners first', '3', '.041'],
    ['corners first', '4', '.028'],
  ],
}

/** Bed and bolts one-sided, bolts loose before their turn; full contact with the bed as springs at nodes 5 mm apart. */
export const spreadsLooseContact: PublishedTable = {
  source: PROGRAM,
  table: 'spread, one-sided bed and bolts, loose',
  basis: 'calculated',
  unit: '',
  columns: ['order', 'passes', 'spread'],
  rows: [
    ['round', '1', '2.07'],
    ['round', '2', '1.43'],
    ['round', '3', '1.24'],
    ['round', '4', '1.19'],
    ['middle outward', '1', '.778'],
    ['middle outward', '2', '.215'],
    ['middle outward', '3', '.069'],
    ['middle outward', '4', '.023'],
    ['corners first', '1', '1.66'],
    ['corners first', '2', '1.31'],
    ['corners first', '3', '1.22'],
    ['corners first', '4', '1.19'],
  ],
}

/** Spread after one pass over all 720 orders, two-way bed and bolts. Mirror copies tie. */
export const allOrders: PublishedTable = {
  source: PROGRAM,
  table: 'all 720 orders, one pass, two-way',
  basis: 'calculated',
  unit: '',
  columns: ['what', 'spread'],
  rows: [
    ['best', '.2481'],
    ['median', '1.119'],
    ['worst', '2.360'],
  ],
}
