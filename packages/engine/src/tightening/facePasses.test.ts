import { expect, test } from 'vitest'
import { facePasses } from './facePasses.ts'

const holes = [{ id: '1' }, { id: '2' }, { id: '3', visit: 2 }, { id: '4', visit: 2 }]
const short = (...args: Parameters<typeof facePasses>) =>
  facePasses(...args).map(
    ({ pass, visit, share, holes: own, stated }) =>
      `${pass}: visit ${visit}, ${share} ${own.join(' ')}${stated ? '' : ' *'}`,
  )

test('without an order each visit is tightened in the usual shares, counted from 1', () => {
  expect(short(holes)).toEqual([
    '1: visit 1, 0.3 1 2 *',
    '2: visit 1, 0.6 1 2 *',
    '3: visit 1, 1 1 2 *',
    '1: visit 2, 0.3 3 4 *',
    '2: visit 2, 0.6 3 4 *',
    '3: visit 2, 1 3 4 *',
  ])
})

test('a pass of the order belongs to the latest visit of its bolts; bolts that it leaves out follow in passes of their own', () => {
  const order = [
    { share: 0.5, sequence: ['2'] },
    { share: 1, sequence: ['2', '3'] },
  ]
  expect(short(holes, order)).toEqual([
    '1: visit 1, 0.5 2',
    '3: visit 1, 0.3 1 *',
    '4: visit 1, 0.6 1 *',
    '5: visit 1, 1 1 *',
    '2: visit 2, 1 2 3',
    '6: visit 2, 0.3 4 *',
    '7: visit 2, 0.6 4 *',
    '8: visit 2, 1 4 *',
  ])
})

test('a hole that is no longer there is left out of the order, and a face without holes has no passes', () => {
  expect(short(holes.slice(0, 1), [{ share: 1, sequence: ['9', '1'] }])).toEqual(['1: visit 1, 1 1'])
  expect(short([])).toEqual([])
  expect(short([], [{ share: 1, sequence: ['9'] }])).toEqual([])
})
