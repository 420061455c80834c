import type { OrderAnswer, TighteningAnswer, Unit } from '@gripbook/engine'

/** A small cover of four bolts in two torque groups, one of them in a second visit, with an order of the manual's. */
export const COVERED: Unit = {
  gripbook: 'unit/1',
  faces: [
    {
      id: 'side',
      name: 'Side cover',
      torque: 10,
      holes: [
        { id: '1', thread: 'M6', at: [10, 10] },
        { id: '2', thread: 'M6', at: [90, 10], locates: true },
        { id: '3', thread: 'M8', at: [90, 50], torque: { value: 20, unit: 'N·m' } },
        { id: '4', thread: 'M6', at: [10, 50], visit: 2 },
      ],
      snug: true,
    },
    { id: 'pan', holes: [{ id: '1', thread: 'M6' }] },
  ],
}

const TARGETS = [5000, 5000, 10_000, 5000]

export const order = (answer: Partial<OrderAnswer> = {}): OrderAnswer => ({
  kind: 'stated',
  name: 'as stated',
  passes: [
    { share: 0.5, visit: 1, sequence: ['3', '1', '2'] },
    { share: 1, visit: 1, sequence: ['3', '1', '2'] },
    { share: 0.5, visit: 2, sequence: ['4'] },
    { share: 1, visit: 2, sequence: ['4'] },
  ],
  steps: [{ hole: '4', share: 1, pass: 4, moved: true, loads: [4000, 5100, 9600, 5000] }],
  spread: 0.222,
  spreads: [0.4, 0.2, 0.03, 0.222],
  overBed: [0.25, 0.222, 0.18],
  bow: 0.0123,
  bows: [],
  travel: 1240,
  lastRounds: { count: 2, still: true, loads: [5000, 5100, 10_000, 5150], spread: 0.03 },
  ...answer,
})

export const tightening = (answer: Partial<TighteningAnswer> = {}): TighteningAnswer => ({
  gripbook: 'tightening/1',
  face: 'side',
  holes: ['1', '2', '3', '4'],
  compliance: [],
  accuracy: { error: 0.012, grid: 4 },
  bolts: ['1', '2', '3', '4'].map((hole, i) => ({
    hole,
    target: TARGETS[i]!,
    stiffness: 2e5,
    visit: hole === '4' ? 2 : 1,
  })),
  bed: { soft: 15, middle: 20, stiff: 28 },
  orders: [order(), order({ kind: 'corners', spread: 0.1, overBed: [0.12, 0.1, 0.07], travel: 2210, bow: 0.004 })],
  advice: { why: 'stated', order: 0 },
  assumptions: [{ what: 'estimate' }, { what: 'flat' }, { what: 'torque', holes: ['1', '2', '3', '4'] }],
  ...answer,
})
