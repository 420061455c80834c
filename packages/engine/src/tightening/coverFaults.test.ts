import { describe, expect, test } from 'vitest'
import type { Face, Point } from '../unit.ts'
import { coverFaults } from './coverFaults.ts'

const SQUARE: Point[] = [
  [0, 0],
  [100, 0],
  [100, 80],
  [0, 80],
]
const box = (x: number, y: number, size: number): Point[] => [
  [x, y],
  [x + size, y],
  [x + size, y + size],
  [x, y + size],
]

const face = (more: Partial<Face> = {}): Face => ({
  id: 'cover',
  holes: [
    { id: '1', thread: 'M6', at: [10, 10] },
    { id: '2', thread: 'M6', at: [90, 70] },
  ],
  cover: { outline: SQUARE, thickness: 8 },
  bed: { stiffness: 5 },
  ...more,
})
const cover = (more: Partial<NonNullable<Face['cover']>>): Face =>
  face({ cover: { outline: SQUARE, thickness: 8, ...more } })
const told = (one: Face) => coverFaults(one, ['faces', 0])

describe('[TI8] a face that cannot be computed is refused with the place of the fault', () => {
  test.each<[string, Face, unknown]>([
    [
      'a face without cover',
      { id: 'cover', holes: face().holes, bed: { stiffness: 5 } },
      { path: ['faces', 0], code: 'tightening-needs', missing: 'cover' },
    ],
    [
      'a face without bed',
      { id: 'cover', holes: face().holes, cover: face().cover! },
      { path: ['faces', 0], code: 'tightening-needs', missing: 'bed' },
    ],
    [
      'a bed of no stiffness',
      face({ bed: { stiffness: 0 } }),
      { path: ['faces', 0, 'bed', 'stiffness'], code: 'bed-not-above-zero' },
    ],
    [
      'one bolt',
      face({ holes: [face().holes[0]!] }),
      { path: ['faces', 0, 'holes'], code: 'tightening-needs', missing: 'two bolts' },
    ],
    [
      'a bolt without place',
      face({ holes: [...face().holes, { id: '3', thread: 'M6' }] }),
      { path: ['faces', 0, 'holes', 2], code: 'tightening-needs', missing: 'place' },
    ],
    [
      'an outline that crosses itself',
      cover({ outline: [SQUARE[0]!, SQUARE[2]!, SQUARE[1]!, SQUARE[3]!] }),
      { path: ['faces', 0, 'cover', 'outline', 0], code: 'outline-crosses-itself', other: 2, near: [50, 40] },
    ],
    [
      'an outline that touches itself in a corner',
      cover({
        outline: [
          [0, 0],
          [100, 0],
          [50, 40],
          [100, 80],
          [0, 80],
          [50, 40],
        ],
      }),
      { path: ['faces', 0, 'cover', 'outline', 1], code: 'outline-crosses-itself', other: 4, near: [50, 40] },
    ],
    [
      'an outline that runs back over itself',
      cover({
        outline: [
          [0, 0],
          [120, 0],
          [100, 0],
          [100, 80],
          [0, 80],
        ],
      }),
      { path: ['faces', 0, 'cover', 'outline', 0], code: 'outline-crosses-itself', other: 1, near: [120, 0] },
    ],
    [
      'an outline on one line',
      cover({
        outline: [
          [0, 0],
          [50, 0],
          [100, 0],
        ],
      }),
      { path: ['faces', 0, 'cover', 'outline', 0], code: 'outline-crosses-itself', other: 2, near: [0, 0] },
    ],
    [
      'an outline that is one point',
      cover({
        outline: [
          [5, 5],
          [5, 5],
          [5, 5],
        ],
      }),
      { path: ['faces', 0, 'cover', 'outline'], code: 'outline-without-area' },
    ],
    [
      'a region that crosses itself',
      cover({ regions: [{ outline: [SQUARE[0]!, SQUARE[2]!, SQUARE[1]!, SQUARE[3]!], thickness: 12 }] }),
      {
        path: ['faces', 0, 'cover', 'regions', 0, 'outline', 0],
        code: 'outline-crosses-itself',
        other: 2,
        near: [50, 40],
      },
    ],
    [
      'an opening over the edge',
      cover({ openings: [box(20, 20, 10), box(90, 30, 20)] }),
      { path: ['faces', 0, 'cover', 'openings', 1], code: 'opening-leaves-cover', near: [100, 30] },
    ],
    [
      'an opening beside the cover',
      cover({ openings: [box(200, 20, 10)] }),
      { path: ['faces', 0, 'cover', 'openings', 0], code: 'opening-leaves-cover', near: [200, 20] },
    ],
    [
      'two openings that cross',
      cover({ openings: [box(30, 30, 20), box(40, 40, 20)] }),
      { path: ['faces', 0, 'cover', 'openings', 1], code: 'openings-cross', other: 0, near: [50, 40] },
    ],
    [
      'a bolt off the cover',
      face({ holes: [...face().holes, { id: '3', thread: 'M6', at: [110, 40] }] }),
      { path: ['faces', 0, 'holes', 2, 'at'], code: 'bolt-outside-cover', at: [110, 40] },
    ],
    [
      'a bolt on the edge',
      face({ holes: [...face().holes, { id: '3', thread: 'M6', at: [0, 40] }] }),
      { path: ['faces', 0, 'holes', 2, 'at'], code: 'bolt-outside-cover', at: [0, 40] },
    ],
    [
      'a bolt in an opening',
      cover({ openings: [box(5, 5, 10)] }),
      { path: ['faces', 0, 'holes', 0, 'at'], code: 'bolt-in-opening', at: [10, 10], opening: 0 },
    ],
    [
      'two bolts at one place',
      face({ holes: [...face().holes, { id: '3', thread: 'M8', at: [13, 14] }] }),
      { path: ['faces', 0, 'holes', 2, 'at'], code: 'bolts-at-one-place', other: '1', apart: 5, least: 6 },
    ],
    [
      'a line that ends off the cover',
      cover({ lines: [{ name: 'valve', from: [10, 40], to: [140, 40] }] }),
      { path: ['faces', 0, 'cover', 'lines', 0], code: 'line-leaves-cover', near: expect.anything() },
    ],
    [
      'a line over an opening',
      face({
        cover: {
          outline: SQUARE,
          thickness: 8,
          openings: [box(40, 30, 20)],
          lines: [{ name: 'valve', from: [10, 40], to: [90, 40] }],
        },
      }),
      { path: ['faces', 0, 'cover', 'lines', 0], code: 'line-leaves-cover', near: [40, 40] },
    ],
    [
      'two hollows that leave nothing to lie on',
      face({ bed: { stiffness: 5, hollows: [box(-50, -10, 100), box(50, -10, 100)] } }),
      { path: ['faces', 0, 'bed', 'hollows'], code: 'nothing-to-lie-on' },
    ],
    [
      'a cover like foil on a bed like rock',
      face({ cover: { outline: SQUARE, thickness: 1e-6 } }),
      { path: ['faces', 0, 'cover', 'thickness'], code: 'cover-too-soft' },
    ],
    [
      'a region like an anvil on a bed like foam',
      face({
        cover: { outline: SQUARE, thickness: 1, regions: [{ outline: box(10, 10, 20), thickness: 500 }] },
        bed: { stiffness: 1e-3 },
      }),
      { path: ['faces', 0, 'cover', 'thickness'], code: 'cover-too-stiff' },
    ],
    [
      'a hollow under all of the cover',
      face({ bed: { stiffness: 5, hollows: [box(-10, -10, 200)] } }),
      { path: ['faces', 0, 'bed', 'hollows'], code: 'nothing-to-lie-on' },
    ],
  ])('%s', (_, one, fault) => {
    expect(told(one)).toContainEqual(fault)
  })

  test('all faults are told at once', () => {
    expect(told({ id: 'cover', holes: [{ id: '1', thread: 'M6' }] }).map(({ path }) => path.join('.'))).toEqual([
      'faces.0.holes',
      'faces.0.holes.0',
      'faces.0',
      'faces.0',
    ])
  })
})

test('a sound cover has no fault: outlines either way round, closed again at the end, corners given twice, openings, hollows over the edge', () => {
  expect(told(face())).toEqual([])
  expect(told(cover({ outline: [...SQUARE].reverse() }))).toEqual([])
  expect(told(cover({ outline: [...SQUARE, SQUARE[0]!] }))).toEqual([])
  expect(told(cover({ outline: [SQUARE[0]!, SQUARE[0]!, ...SQUARE.slice(1)] }))).toEqual([])
  expect(
    told(
      cover({ openings: [box(30, 30, 10), box(60, 30, 10)], regions: [{ outline: box(50, 50, 90), thickness: 12 }] }),
    ),
  ).toEqual([])
  expect(told(face({ bed: { stiffness: { atLeast: 2, atMost: 6 }, hollows: [box(20, -10, 50)] } }))).toEqual([])
  expect(told(face({ bed: { stiffness: { atLeast: 2 } } }))).toEqual([])
})
