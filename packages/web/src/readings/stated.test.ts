import { boltTried, type Event, rankStated } from '@gripbook/record'
import { expect, test } from 'vitest'
import { rankKnown, ranksOf, trialsOf } from './stated.ts'

const happenings = [
  rankStated({ face: 'pan', quantity: 'grip', less: '1', more: '2' }),
  rankStated({ face: 'cover', quantity: 'grip', less: '1', more: '2' }),
  boltTried({ face: 'pan', trial: { hole: '1', kind: 'b1', turns: 9 } }),
  rankStated({ face: 'pan', quantity: 'grip', less: '2', more: '3' }),
]
const entries = happenings.map((happening, i) => ({ ...happening, id: `e${i}`, at: '' }) as unknown as Event)

test('what was stated on the face and stands, newest first', () => {
  expect(ranksOf({ entries, undone: [] }, 'pan').map(({ event }) => event)).toEqual(['e3', 'e0'])
  expect(ranksOf({ entries, undone: [{ event: 'e3', by: 'e9' }] }, 'pan').map(({ event }) => event)).toEqual(['e0'])
  expect(trialsOf({ entries, undone: [] }, 'pan')).toMatchObject([{ event: 'e2', said: { hole: '1', turns: 9 } }])
})

test('a comparison that stands already, or its opposite, is known', () => {
  const ranks = ranksOf({ entries, undone: [] }, 'pan')
  expect(rankKnown(ranks, { quantity: 'grip', less: '1', more: '2' })).toBe('same')
  expect(rankKnown(ranks, { quantity: 'grip', less: '2', more: '1' })).toBe('opposite')
  expect(rankKnown(ranks, { quantity: 'bottomDepth', less: '1', more: '2' })).toBeNull()
})
