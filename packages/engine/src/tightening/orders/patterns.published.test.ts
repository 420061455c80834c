import { expect, test } from 'vitest'
import { groupedOrders, recalledOrders, seenOrders } from '../../../published/crossPatterns.ts'
import { crossPattern } from './crossPattern.ts'
import { patternsFor } from './patterns.ts'
import { ring } from './testing/bolts.ts'

const lines = [seenOrders, recalledOrders].flatMap(({ source, basis, rows }) =>
  rows.map(([bolts, order]) => [Number(bolts), source, basis, order!] as const),
)

test.each(lines)('%i bolts on a round flange go in the order of %s (%s)', (bolts, _source, _basis, order) => {
  const printed = order.split(/\D+/).map(Number)
  expect(printed).toHaveLength(bolts)
  const [pattern] = patternsFor(ring(bolts, 80, 0))
  expect(pattern!.kind).toBe('cross')
  expect(pattern!.sequence.map((bolt) => bolt + 1)).toEqual(printed)
})

test('48 bolts go as 12 groups of four neighbours, the groups in the order of 12 bolts', () => {
  const [[bolts, groups]] = groupedOrders.rows as [[string, string]]
  const sequence = crossPattern(Number(bolts))
  const each = Array.from({ length: Number(groups) }, (_, i) => sequence.slice(4 * i, 4 * i + 4))
  for (const group of each) expect(group.map((bolt) => bolt - group[0]!)).toEqual([0, 1, 2, 3])
  expect(each.map(([bolt]) => bolt! / 4)).toEqual(crossPattern(Number(groups)))
})
