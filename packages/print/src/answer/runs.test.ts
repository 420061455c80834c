import { expect, test } from 'vitest'
import { runsOf } from './runs.ts'

const said = (...names: string[]) => runsOf(names).map(({ from, to }) => (from === to ? from : `${from} to ${to}`))

test('three and more that count on are drawn together, two are not', () => {
  expect(said('10', '9', '2', '1', '4', '8', '1')).toEqual(['1', '2', '4', '8 to 10'])
  expect(said('1', '2', '3')).toEqual(['1 to 3'])
  expect(said()).toEqual([])
})

test('only whole numbers count on', () => {
  expect(said('a1', 'a2', 'a3', '01', '02', '03')).toEqual(['01', '02', '03', 'a1', 'a2', 'a3'])
  expect(said('0', '1', '2')).toEqual(['0 to 2'])
})
