import { expect, test } from 'vitest'
import { patternsFor } from './patterns.ts'
import type { Places } from './places.ts'
import { grid, pan, placed, ring } from './testing/bolts.ts'

/** Each order as the bolts are numbered, by its kind. */
const ordersOf = (places: Places) =>
  Object.fromEntries(patternsFor(places).map(({ kind, sequence }) => [kind, sequence.join(' ')]))

test('a round flange is crossed, and corners are no question there', () => {
  expect(ordersOf(ring(6, 50, 0))).toEqual({ cross: '0 3 1 4 2 5', round: '0 1 2 3 4 5' })
  expect(ordersOf(ring(5, 50, 0))).toEqual({ cross: '0 2 4 1 3', round: '0 1 2 3 4' })
  expect(ordersOf(ring(10, 50, 0)).cross).toBe('0 5 2 7 4 9 1 6 3 8')
})

test('a round flange counts from 12 o’clock, wherever its bolts are numbered from and however it is measured', () => {
  const off = (i: number) => ({ x: (i % 2) * 0.8, y: (i % 3) * -0.6 })
  const bolts: Places = ring(8, 50, Math.PI / 2).map(({ at: [x, y] }, i) => ({ at: [x + off(i).x, y + off(i).y] }))
  expect(ordersOf(bolts).cross).toBe('6 2 0 4 7 3 1 5')
})

test('bolts on a circle but not evenly, and even ones off the circle, are no round flange', () => {
  const [first, ...others] = ring(8, 50, 0)
  expect(Object.keys(ordersOf(others))).not.toContain('cross')
  expect(Object.keys(ordersOf([{ at: [first!.at[0], first!.at[1] - 10] }, ...others]))).not.toContain('cross')
  expect(
    Object.keys(
      ordersOf(
        placed([
          [0, 0],
          [60, 0],
          [60, 30],
          [0, 30],
        ]),
      ),
    ),
  ).not.toContain('cross')
})

test('three rows of a valve body go from the middle outward, each bolt followed by the one across', () => {
  //  8 9 10 11
  //  4 5  6  7
  //  0 1  2  3
  expect(ordersOf(grid(4, 3, [30, 30]))).toEqual({
    spiral: '6 5 9 2 1 10 7 4 8 3 11 0',
    corners: '11 0 3 8 6 5 10 1 7 4 2 9',
    round: '10 11 7 3 2 1 0 4 8 9 6 5',
  })
})

test('a pan goes from the middle of its long sides outward, each bolt followed by the one across', () => {
  //  0  1  2  3  4
  // 13           5
  // 12           6
  // 11 10  9  8  7
  expect(ordersOf(pan(4, 3, [50, 50]))).toEqual({
    rails: '2 9 10 3 1 8 7 0 13 6 5 12 11 4',
    corners: '4 11 7 0 2 9 3 10 5 12 6 13 8 1',
    round: '2 3 4 5 6 7 8 9 10 11 12 13 0 1',
  })
})

test('a rim with a dent is a pan still, a bolt in the middle makes it another cover', () => {
  const rim: Places = pan(5, 2, [40, 40]).map(({ at: [x, y] }, i) => ({ at: [x, i === 2 ? y - 10 : y] }))
  expect(Object.keys(ordersOf(rim))[0]).toBe('rails')
  expect(Object.keys(ordersOf([...rim, { at: [100, 40] }]))[0]).toBe('spiral')
})

test('round the edge follows the hull where a long cover would mix up angles, and inner bolts come last', () => {
  const edge = pan(5, 2, [40, 20])
  const dented: Places = edge.map(({ at: [x, y] }, i) => ({ at: [x, i === 1 ? y - 7 : y] }))
  expect(ordersOf(dented).round).toBe('3 4 5 6 7 8 9 10 11 12 13 0 1 2')
  expect(ordersOf([{ at: [100, 20] }, ...edge]).round).toMatch(/ 0$/)
})

test('a lone bolt in the middle of a ring goes first in a spiral and last round the edge', () => {
  const orders = ordersOf([...ring(6, 50, 0), ...placed([[7, -3]])])
  expect(orders.spiral).toBe('6 3 0 1 4 5 2')
  expect(orders.round).toBe('0 1 2 3 4 5 6')
})

test('few bolts, bolts in one line and bolts in one place have an order as well', () => {
  expect(patternsFor([])).toEqual([])
  expect(ordersOf(placed([[3, 4]]))).toEqual({ spiral: '0' })
  expect(
    Object.keys(
      ordersOf(
        placed([
          [3, 4],
          [10, 4],
        ]),
      ),
    ),
  ).toEqual(['spiral'])
  expect(
    ordersOf(
      placed([
        [0, 0],
        [30, 0],
        [0, 20],
      ]),
    ).spiral,
  ).toMatch(/^[012] [012] [012]$/)
  expect(
    ordersOf(
      placed([
        [0, 0],
        [10, 0],
        [20, 0],
        [30, 0],
        [40, 0],
      ]),
    ),
  ).toEqual({
    spiral: '2 3 1 0 4',
    corners: '4 0 2 3 1',
    round: '2 1 0 4 3',
  })
  expect(
    ordersOf(
      placed([
        [0, 0],
        [1, 3],
        [2, 6],
        [3, 9],
      ]),
    ).spiral,
  ).toBe('2 1 0 3')
  expect(
    ordersOf(
      placed([
        [1, 1],
        [1, 1],
        [1, 1],
      ]),
    ).spiral,
  ).toBe('0 1 2')
})

test('two rows are held like a pan', () => {
  // 5 6 7 8 9
  // 0 1 2 3 4
  expect(ordersOf(grid(5, 2, [30, 40])).rails).toBe('7 2 1 8 3 6 5 4 9 0')
})

test('four in a square cross, four in a rectangle take one diagonal, then the other', () => {
  expect(
    ordersOf(
      placed([
        [0, 0],
        [50, 0],
        [50, 50],
        [0, 50],
      ]),
    ).cross,
  ).toBe('2 0 1 3')
  expect(
    ordersOf(
      placed([
        [0, 0],
        [50, 0],
        [50, 30],
        [0, 30],
      ]),
    ).spiral,
  ).toBe('2 0 3 1')
})

test('locating bolts do not change the order', () => {
  const plain = grid(4, 3, [30, 30])
  expect(patternsFor(plain.map((one, i) => ({ ...one, locates: i === 11 })))).toEqual(patternsFor(plain))
})
