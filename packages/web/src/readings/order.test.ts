import { expect, test } from 'vitest'
import { leadOf, nextSpot, startOf } from './order.ts'
import type { Spot } from './quantities.ts'

const spots: Spot[] = ['1', '2', '3', '4'].map((id) => ({ place: 'hole', id }))
const read =
  (...ids: string[]) =>
  ({ id }: Spot) =>
    ids.includes(id)

test('the next is the first after it that lacks its reading, then from the front', () => {
  expect(nextSpot(spots, read(), null)?.id).toBe('1')
  expect(nextSpot(spots, read('1', '2'), spots[1]!)?.id).toBe('3')
  expect(nextSpot(spots, read('3', '4'), spots[3]!)?.id).toBe('1')
})

test('when all are read there is no next, and never the one that was just taken', () => {
  expect(nextSpot(spots, read('1', '2', '3', '4'), spots[0]!)).toBeNull()
  expect(nextSpot(spots, read('1', '2', '3'), spots[3]!)).toBeNull()
  expect(nextSpot([], read(), null)).toBeNull()
})

const next = (reading: { quantity: string; of: string; place: 'hole' | 'kind'; kind?: string }) =>
  leadOf({ reading, bits: 1, settles: [], minutes: 1, why: '' })

test('what settles most is a field of the station, or a bolt to turn in', () => {
  expect(next({ quantity: 'grip', of: '4', place: 'hole' })).toEqual({
    to: 'reading',
    quantity: 'grip',
    place: 'hole',
    id: '4',
  })
  expect(next({ quantity: 'turns', of: '4', place: 'hole', kind: 'b2' })).toEqual({ to: 'try', hole: '4', kind: 'b2' })
  expect(next({ quantity: 'something newer', of: '4', place: 'hole' })).toBeNull()
  expect(leadOf(null)).toBeNull()
})

test('the station starts at what the address names, else at what settles most', () => {
  const lead = next({ quantity: 'bottomDepth', of: '4', place: 'hole' })
  expect(startOf(undefined, lead)).toEqual({ tab: 'measure', quantity: 'bottomDepth', id: '4' })
  expect(startOf('bottomDepth', lead)).toEqual({ tab: 'measure', quantity: 'bottomDepth', id: '4' })
  expect(startOf('grip', lead)).toEqual({ tab: 'measure', quantity: 'grip', id: null })
  expect(startOf('grip left 4', lead)).toEqual({ tab: 'measure', quantity: 'grip', id: 'left 4' })
  expect(startOf('ranks', lead).tab).toBe('ranks')
  expect(startOf('nonsense', null)).toEqual({ tab: 'measure', quantity: 'grip', id: null })
})
