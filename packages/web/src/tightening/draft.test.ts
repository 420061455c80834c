import type { Face } from '@gripbook/engine'
import { faceDescribed, readBody } from '@gripbook/record'
import { expect, test } from 'vitest'
import { changesIn, type Draft, draftOf, readSetup } from './draft.ts'
import { cornersOf, withCorners, without, withTap } from './drawn.ts'

const bare: Face = {
  id: 'pan',
  holes: ['1', '2', '3'].map((id) => ({ id, thread: 'M6' })),
}
const corners: [number, number][] = [
  [0, 0],
  [100, 0],
  [100, 60],
]
const whole: Face = {
  ...bare,
  cover: {
    outline: corners,
    openings: [corners],
    thickness: 8,
    regions: [{ outline: corners, thickness: 14.2 }],
    young: 123_000,
    poisson: 0.29,
    lines: [{ name: 'regulator valve', from: [1, 2], to: [30, 4] }],
  },
  bed: { stiffness: { atLeast: 3, atMost: 4 }, hollows: [corners] },
  snug: false,
  clamp: 8000,
  boltStiffness: 2e5,
  embedment: { roughness: 17 },
  order: [
    { share: 0.333, sequence: ['1', '3', '2'] },
    { share: 1, sequence: ['1', '2', '3'] },
  ],
}
const read = (draft: Draft, face: Face, unit: 'mm' | 'in' = 'mm') => {
  const said = readSetup(draft, face, unit)
  if (!said.ok) throw new Error(JSON.stringify(said.faults))
  return said.told
}

test.each(['mm', 'in'] as const)('what a face was told comes back as it was, shown in %s', (unit) => {
  expect(changesIn(whole, read(draftOf(whole, unit), whole, unit))).toBeNull()
})

test('a thickness that was measured as a range, or in inches, stays so while its figure does', () => {
  const [thickness, region] = [
    { atLeast: 7, atMost: 9 },
    { value: 0.3, unit: 'in' },
  ] as const
  const regions = [{ outline: corners, thickness: region }]
  const face: Face = { ...whole, cover: { ...whole.cover!, thickness, regions } }
  const draft = draftOf(face, 'mm')
  expect([draft.thickness, draft.regions[0]!.thickness]).toEqual(['8', '7.62'])
  expect(changesIn(face, read(draft, face))).toBeNull()
  const { cover } = read({ ...draft, thickness: '8.2' }, face)
  expect([cover!.thickness, cover!.regions![0]!.thickness]).toEqual([8.2, region])
})

test('a bare face needs an outline, a thickness and what lies in the joint', () => {
  const said = readSetup(draftOf(bare, 'mm'), bare, 'mm')
  expect(said.ok).toBe(false)
  expect(said.ok ? [] : said.faults.map(({ at }) => at)).toEqual(['outline', 'thickness', 'bed'])
})

test('what was entered is one entry that the record takes', () => {
  const draft: Draft = { ...draftOf(bare, 'mm'), outline: corners, thickness: '8', bed: 'paper' }
  const body = changesIn(bare, read(draft, bare))!
  expect(body).toEqual({
    face: 'pan',
    cover: { outline: corners, thickness: 8, young: 70_000, poisson: 0.33 },
    bed: { stiffness: { atLeast: 15, atMost: 28 } },
    snug: true,
  })
  expect(readBody(faceDescribed(body)).ok).toBe(true)
})

test('only what changed is written, and what was taken out is unknown again', () => {
  const draft: Draft = { ...draftOf(whole, 'mm'), clamp: '', passes: [], boltStiffness: '300000' }
  expect(changesIn(whole, read(draft, whole))).toEqual({
    face: 'pan',
    boltStiffness: 3e5,
    unknown: ['clamp', 'order'],
  })
})

test('everything that is wrong is told at once, with its place', () => {
  const draft: Draft = {
    ...draftOf(whole, 'mm'),
    thickness: 'thick',
    poisson: '0.5',
    stiffness: '4 to 3',
    clamp: 'much',
    lines: [
      { name: 'edge', corners: [[0, 0]] },
      { name: 'edge', corners },
    ],
    passes: [
      { share: '100', sequence: '1, 2, 2' },
      { share: '50', sequence: '' },
    ],
  }
  const said = readSetup(draft, whole, 'mm')
  expect(said.ok ? [] : said.faults.map(({ at, index, code }) => [at, index, code])).toEqual([
    ['thickness', undefined, 'no figure'],
    ['poisson', undefined, 'no poisson'],
    ['stiffness', undefined, 'no range'],
    ['lines', 0, 'no corners'],
    ['lines', 1, 'name twice'],
    ['clamp', undefined, 'no load'],
    ['passes', 0, 'sequence'],
    ['passes', 1, 'share falls'],
    ['passes', 1, 'no holes'],
  ])
})

test('corners are drawn one by one, put into a closed outline beside the tap, and taken out with their area', () => {
  let draft = draftOf(bare, 'mm')
  const opening = { at: 'openings', index: 0 } as const
  for (const at of corners) draft = withCorners(draft, opening, withTap(cornersOf(draft, opening), opening, false, at))
  expect(draft.openings).toEqual([corners])
  expect(withTap(corners, opening, true, [50, -1])).toEqual([
    [0, 0],
    [50, -1],
    [100, 0],
    [100, 60],
  ])
  expect(without(draft, opening).openings).toEqual([])
  const region = { at: 'regions', index: 0 } as const
  expect(withCorners(draft, region, corners).regions).toEqual([{ corners, thickness: '' }])
})

test('a line has two ends, and a third tap moves the nearer one', () => {
  const line = { at: 'lines', index: 0 } as const
  expect(withTap([[0, 0]], line, false, [9, 9])).toEqual([
    [0, 0],
    [9, 9],
  ])
  expect(
    withTap(
      [
        [0, 0],
        [9, 9],
      ],
      line,
      false,
      [8, 7],
    ),
  ).toEqual([
    [0, 0],
    [8, 7],
  ])
})
