import type { Unit } from '@gripbook/engine'

/** The example of the unit file's contract, field for field. */
export const EXAMPLE = `{ "gripbook": "unit/1", "name": "gearbox on bench 2",
  "faces": [{
    "id": "pump-cover", "history": "unknown",
    "torque": 10, "minimumEngagement": 7.5,
    "holes": [{ "id": "1", "thread": "M6", "ending": "blind", "at": [12.5, 40.0],
                "grip": {"value": 31.9, "plusMinus": 0.1}, "bracket": 0, "mouth": 0,
                "threadDepth": 14, "bottomDepth": {"atLeast": 16}, "behind": 5,
                "material": "cast aluminium", "needs": ["stud end"], "minimumEngagement": 7.5, "asFound": "b1",
                "torque": {"value": 8, "unit": "lbf·ft"}, "visit": 1, "locates": false }],
    "kinds": [{ "id": "b1", "thread": "M6", "length": 45, "threadLength": 24, "tip": 1.0, "count": 4,
                "class": "8.8", "head": {"form": "hex flange", "acrossFlats": 10}, "features": ["stud end"] }],
    "weigh": { "habit": true, "asFound": true }
  }] }`

/** A unit with every field that there is, in every shape that the file allows. */
export const FULL: Unit = {
  gripbook: 'unit/1',
  name: 'Getriebe №2 変速機',
  history: 'opened before',
  faces: [
    {
      id: 'pan',
      name: 'Oil pan',
      history: 'never opened',
      torque: { value: 8, unit: 'lbf·ft' },
      minimumEngagement: { atLeast: 6, atMost: 7.5 },
      gasket: { value: 0.8, plusMinus: 0.1 },
      material: { name: 'cast aluminium', shearStrength: 130, limitPressure: 200 },
      holes: [
        {
          id: '1',
          thread: ['M6', 'M6×0.75'],
          ending: 'through',
          at: [0, -12.5],
          grip: { value: 31.9, plusMinus: 0.1 },
          bracket: 2,
          gasket: 0.5,
          mouth: { nominal: 1 },
          threadDepth: { value: 0.5, plusMinus: 0.01, unit: 'in', also: { value: 12.7, plusMinus: 0.3, unit: 'mm' } },
          bottomDepth: { atLeast: 16 },
          behind: { atMost: 5, unit: 'mm' },
          material: 'steel',
          needs: ['stud end'],
          minimumEngagement: 7,
          asFound: 'b1',
          torque: 9,
          visit: 1,
          locates: true,
          boltStiffness: 200_000,
          unitsBefore: { b1: 3, none: 1, 't-1': 2 },
          note: 'weeps\nat the corner',
        },
        { id: '2', thread: '1/4-20 UNC', asFound: 'none' },
      ],
      kinds: [
        {
          id: 'b1',
          thread: 'M6',
          length: { nominal: 45 },
          threadLength: 24,
          tip: { atLeast: 1, atMost: 2 },
          count: 4,
          class: '8.8',
          head: { form: 'hex flange', acrossFlats: { value: 10, plusMinus: 0.2 } },
          features: ['stud end'],
          washer: { thickness: 1.6, captive: true },
          note: 'yellow',
        },
        { id: 'b2', thread: ['1/4-20', '1/4-28'], washer: 1.6, count: 0 },
      ],
      ranks: [
        { quantity: 'grip', less: '1', more: '2' },
        { quantity: 'length', less: 't-1', more: 'b1' },
      ],
      trials: [
        { hole: '1', kind: 'b1', turns: 12.5 },
        { hole: '1', kind: 'b1', stickOut: { value: 12, plusMinus: 0.5 } },
        { hole: '2', kind: 'b2', proud: 3 },
      ],
      weigh: { habit: false, asFound: true },
      cover: {
        outline: [
          [0, 0],
          [100, 0],
          [100, 60],
        ],
        openings: [
          [
            [10, 10],
            [20, 10],
            [20, 20],
          ],
        ],
        thickness: 8,
        regions: [
          {
            outline: [
              [0, 0],
              [5, 0],
              [5, 5],
            ],
            thickness: 14,
          },
        ],
        young: 70_000,
        poisson: 0.33,
        lines: [{ name: 'main valve', from: [20, 5], to: [80, 5] }],
      },
      bed: {
        stiffness: { atLeast: 2, atMost: 20 },
        hollows: [
          [
            [60, 10],
            [70, 10],
            [70, 20],
          ],
        ],
      },
      embedment: { roughness: 6.3, interfaces: 2 },
      boltStiffness: 150_000,
      snug: true,
      order: [
        { share: 0.5, sequence: ['1', '2'] },
        { share: 1, sequence: ['2', '1'] },
      ],
      clamp: 8000,
      note: 'face note',
    },
    { id: 'rear', holes: [{ id: '1', thread: 'M8' }] },
  ],
  kinds: [{ id: 't-1', thread: 'M8', length: { value: 1.5, unit: 'in' }, head: { form: 'stud' } }],
  note: '',
}
