import type { Unit } from '@gripbook/engine'

const swapped: Unit = {
  gripbook: 'unit/1',
  history: 'opened before',
  faces: [
    {
      id: 'pan',
      torque: 10,
      material: 'cast aluminium',
      holes: [
        {
          id: '1',
          thread: 'M6',
          grip: { value: 31.9, plusMinus: 0.1 },
          threadDepth: 14,
          bottomDepth: 17,
          asFound: 'short',
        },
        {
          id: '2',
          thread: 'M6',
          grip: { value: 21.8, plusMinus: 0.1 },
          threadDepth: 14,
          bottomDepth: 17,
          asFound: 'long',
        },
        {
          id: '3',
          thread: ['M6', '1/4-20'],
          threadDepth: { atLeast: 10 },
          bracket: 2,
          asFound: 'none',
          unitsBefore: { short: 3 },
        },
        {
          id: '4',
          thread: 'M6',
          ending: 'through',
          grip: { value: 0.86, unit: 'in' },
          threadDepth: 9,
          behind: 5,
          needs: ['stud end'],
        },
      ],
      kinds: [
        { id: 'long', thread: 'M6', length: { nominal: 45 }, threadLength: 24, count: 1, class: '8.8' },
        { id: 'short', thread: 'M6', length: { nominal: 35 }, count: 2, washer: 1.2 },
        { id: 'stud', thread: 'M6', length: 35, count: 1, tip: 1, features: ['stud end'], head: { form: 'stud' } },
      ],
      ranks: [
        { quantity: 'grip', less: '3', more: '1' },
        { quantity: 'length', less: 'short', more: 'long' },
      ],
      trials: [
        { hole: '1', kind: 'long', turns: 11.5 },
        { hole: '3', kind: 'short', proud: { value: 3, plusMinus: 1 } },
      ],
    },
  ],
}

const shared: Unit = {
  gripbook: 'unit/1',
  faces: [
    {
      id: 'a',
      minimumEngagement: 7,
      gasket: 0.5,
      holes: [
        { id: '1', thread: 'M8', grip: 20, threadDepth: 16, bottomDepth: 20, asFound: 't1' },
        { id: '2', thread: 'M8', grip: 30, threadDepth: 16, mouth: 2 },
      ],
    },
    {
      id: 'b',
      holes: [{ id: '1', thread: 'M8', grip: { atLeast: 18, atMost: 22 } }],
      ranks: [],
      weigh: { habit: false, asFound: false },
    },
  ],
  kinds: [
    { id: 't1', thread: 'M8', length: 35, count: 2 },
    { id: 't2', thread: 'M8', length: { value: 45, plusMinus: 0.2 } },
  ],
}

/** Texts of small valid units: between them every part of the file that placement looks at. */
export const SMALL_UNITS: readonly string[] = [swapped, shared].map((unit) => JSON.stringify(unit))
