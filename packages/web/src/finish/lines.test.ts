import type { Open } from '@gripbook/record'
import { expect, test } from 'vitest'
import { groupsOf, placeOf } from './lines.ts'

const hole = (code: 'hole-not-placed' | 'hole-not-final', at: string): Open => ({
  face: 'pan',
  hole: at,
  why: { code, face: 'pan', hole: at },
})

test('the holes of a face that lack the same are one line, in the order of the work', () => {
  const open: Open[] = [
    { why: { code: 'not-checked' } },
    { why: { code: 'part-out', part: 'seal-1' } },
    { why: { code: 'part-out', part: 'clip-1' } },
    hole('hole-not-placed', '1'),
    hole('hole-not-final', '1'),
    hole('hole-not-placed', '2'),
    { face: 'pan', why: { code: 'face-not-closed', face: 'pan' } },
  ]
  expect(groupsOf(open).map(({ group, lines }) => [group, lines.map(({ why, holes }) => [why.code, holes])])).toEqual([
    [
      'faces',
      [
        ['hole-not-placed', ['1', '2']],
        ['hole-not-final', ['1']],
        ['face-not-closed', []],
      ],
    ],
    [
      'parts',
      [
        ['part-out', []],
        ['part-out', []],
      ],
    ],
    ['signatures', [['not-checked', []]]],
  ])
  expect(groupsOf([])).toEqual([])
})

test('each resistance keeps its own line', () => {
  const felt = (at: string, feel: string): Open => ({
    face: 'pan',
    hole: at,
    why: { code: 'resistance-stands', face: 'pan', hole: at, feel },
  })
  expect(groupsOf([felt('1', 'springy'), felt('2', 'dead stop')])[0]!.lines).toHaveLength(2)
})

test('a line leads to where it is settled', () => {
  const at = { book: 'shop', unit: 'u' } as const
  const to = (why: Open['why'], face: string | null = null) => placeOf({ why, face }, at)
  expect(to({ code: 'face-not-closed', face: 'pan' }, 'pan')).toEqual({ at: 'bench', ...at, face: 'pan' })
  expect(to({ code: 'figure-outside', reading: 'End play' })).toEqual({ at: 'figures', ...at })
  expect(to({ code: 'clash', place: ['face', 'pan'], field: 'name' }, 'pan')).toEqual({ at: 'unit', ...at })
  expect(to({ code: 'stop-passed', event: 'e', gate: 'release' })).toEqual({ at: 'story', ...at })
  expect(to({ code: 'part-out', part: 'p' })).toBeNull()
  expect(to({ code: 'come-back-not-answered', event: 'e' })).toBeNull()
  expect(to({ code: 'clock-runs', clock: 'c' })).toBeNull()
  expect(to({ code: 'clock-runs', clock: 'c' }, 'pan')).toMatchObject({ at: 'bench' })
})
