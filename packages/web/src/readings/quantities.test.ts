import type { Face } from '@gripbook/engine'
import { expect, test } from 'vitest'
import { changedBetween, turnsExpected } from './changed.ts'
import { spotsOf, valueAt } from './quantities.ts'
import { againstExpected, readTurns, turnsText } from './turns.ts'

const face: Face = {
  id: 'pan',
  gasket: 0.5,
  holes: [
    { id: '1', thread: 'M6', grip: 12 },
    { id: '2', thread: 'M6', ending: 'through', behind: 9 },
  ],
  kinds: [{ id: 'b1', thread: 'M6', length: { nominal: 30 } }],
}
const unit = { kinds: [{ id: 'b2', thread: 'M6', tip: 1 }] }
const ids = (quantity: Parameters<typeof spotsOf>[0]) => spotsOf(quantity, unit, face).map(({ id }) => id)

test('only a blind hole has a bottom, only a through hole has room behind', () => {
  expect(ids('grip')).toEqual(['1', '2'])
  expect(ids('bottomDepth')).toEqual(['1'])
  expect(ids('behind')).toEqual(['2'])
  expect(ids('gasket')).toEqual(['pan', '1', '2'])
  expect(ids('length')).toEqual(['b1', 'b2'])
})

test('what is known is found in the hole, in the face, in its own tray or in the shared one', () => {
  expect(valueAt('grip', { place: 'hole', id: '1' }, unit, face)).toBe(12)
  expect(valueAt('grip', { place: 'hole', id: '2' }, unit, face)).toBeUndefined()
  expect(valueAt('gasket', { place: 'face', id: 'pan' }, unit, face)).toBe(0.5)
  expect(valueAt('length', { place: 'kind', id: 'b1' }, unit, face)).toEqual({ nominal: 30 })
  expect(valueAt('tip', { place: 'kind', id: 'b2', shared: true }, unit, face)).toBe(1)
})

const holes = (...verdicts: ('settled' | 'open' | 'contradicted')[]) => ({
  holes: Object.fromEntries(
    verdicts.map((verdict, i) => [String(i + 1), { verdict, may: [], likely: {}, best: null, why: '' }]),
  ),
})

test('what a reading changed is told by what the holes are now', () => {
  expect(changedBetween(holes('open', 'open', 'settled'), holes('settled', 'settled', 'settled'))).toEqual({
    settled: ['1', '2'],
    open: [],
    contradicted: [],
  })
  expect(changedBetween(holes('settled'), holes('contradicted'))?.contradicted).toEqual(['1'])
  expect(changedBetween(holes('open'), holes('open'))).toBeNull()
  expect(changedBetween(null, holes('settled'))).toBeNull()
})

test('turns are read as they are spoken, and held against what is expected', () => {
  expect(['9', '9.5', '9,5', '9 1/2', '9 3/4'].map(readTurns)).toEqual([9, 9.5, 9.5, 9.5, 9.75])
  expect(['', 'nine', '-1', '9 1/3', '2000'].map(readTurns)).toEqual([null, null, null, null, null])
  expect(againstExpected(6, [9, 11])).toBe('fewer')
  expect(againstExpected(12, [9, 11])).toBe('more')
  expect(againstExpected(8.6, [9, 11])).toBeNull()
  expect(againstExpected(6, null)).toBeNull()
  expect(turnsText(9.3)).toBe('9.25')
  const pairs = [
    { hole: '1', kind: 'b1', verdict: 'fits', line: 'thread', why: '', margin: 1, turns: [9, 11] },
  ] as const
  expect(turnsExpected({ pairs: [...pairs] as never }, '1', 'b1')).toEqual([9, 11])
  expect(turnsExpected({ pairs: [] }, '1', 'b1')).toBeNull()
})
