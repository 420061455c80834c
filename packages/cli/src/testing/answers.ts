import type { FaceAnswer, HoleAnswer, Kind, PlacementAnswer, Unit } from '@gripbook/engine'

const bolt = (id: string, length: number): Kind => ({ id, thread: 'M6', length })

/** A face of four holes with all that an answer can say: a swap, an open hole, one that stays empty, a bolt left over. */
export const UNIT: Unit = {
  gripbook: 'unit/1',
  faces: [
    {
      id: 'pump-cover',
      name: 'Pump cover',
      holes: ['1', '4', '7', '9'].map((id) => ({ id, thread: 'M6' })),
      kinds: [bolt('b1', 45), bolt('b2', 40), bolt('b3', 25)],
    },
    { id: 'pan', name: 'Oil pan', holes: [{ id: '1', thread: 'M6' }] },
  ],
}

export const hole = (answer: Partial<HoleAnswer> & Pick<HoleAnswer, 'verdict' | 'may'>): HoleAnswer => ({
  likely: Object.fromEntries(answer.may.map((kind) => [kind, 1 / answer.may.length])),
  best: answer.may[0] ?? null,
  why: 'fits: 1 mm more thread than needed, at worst; b3 too short',
  ...answer,
})

export const face = (answer: Partial<FaceAnswer> = {}): FaceAnswer => ({
  face: 'pump-cover',
  feasible: true,
  holes: {},
  pairs: [],
  conflict: null,
  changes: { count: 0, cycles: [] },
  missing: 0,
  leftOver: {},
  wanted: [],
  next: null,
  likelihood: { method: 'exact' },
  ...answer,
})

export const placement = (...faces: FaceAnswer[]): PlacementAnswer => ({ gripbook: 'placement/1', faces })

export const FULL_FACE: FaceAnswer = face({
  feasible: false,
  missing: 1,
  holes: {
    '1': hole({
      verdict: 'open',
      may: ['b2', 'b1'],
      likely: { b1: 0.72, b2: 0.28 },
      why: 'b1 or b2 can go here',
      asFound: { kind: 'b1', verdict: 'may stay', why: '' },
    }),
    '4': hole({
      verdict: 'settled',
      may: ['b1'],
      asFound: { kind: 'b2', verdict: 'must change', why: 'b2 too short: only 4.1 mm of thread at best, 7.5 needed' },
    }),
    '7': hole({ verdict: 'contradicted', may: [], why: 'no kind in the tray fits' }),
    '9': hole({
      verdict: 'settled',
      may: ['b2'],
      asFound: {
        kind: 'b1',
        verdict: 'must change',
        why: 'b1 bottoms out: the tip meets the bottom 3.2 mm before the head seats',
      },
    }),
  },
  conflict: {
    holes: ['7'],
    kinds: [],
    short: 1,
    why: 'nothing in the tray fits hole 7',
    doubt: [
      {
        statements: [{ what: 'reading', quantity: 'threadDepth', of: '7', place: 'hole' }],
        why: 'the thread depth of hole 7 may be wrong',
        likely: 0.8,
      },
      { statements: [{ what: 'count', of: 'b1' }], why: 'there may be more of b1', likely: 0.2 },
    ],
  },
  changes: {
    count: 2,
    cycles: [
      [
        { hole: '4', from: 'b2', to: 'b1' },
        { hole: '9', from: 'b1', to: 'b2' },
      ],
    ],
  },
  leftOver: { b3: 2 },
  leftOverFits: { b3: ['pan'] },
  wanted: [{ hole: '7', thread: 'M6', lengths: [30], why: 'M6×30 would fill it, you have none to spare' }],
  next: {
    reading: { quantity: 'grip', of: '1', place: 'hole' },
    bits: 0.9,
    settles: ['1'],
    minutes: 1,
    why: 'measure the grip of hole 1: likely to settle 1',
  },
})
