import type { OrderAnswer } from '@gripbook/engine'
import { expect, test } from 'vitest'
import { besides, figuresOf } from './compare.ts'

const order = (kind: OrderAnswer['kind'], spread: number, more: Partial<OrderAnswer> = {}): OrderAnswer => ({
  kind,
  name: kind,
  passes: [],
  steps: [],
  spread,
  spreads: [spread],
  overBed: [spread * 2, spread, spread / 2],
  bow: 0.012,
  bows: [],
  travel: 400,
  lastRounds: { count: 2, still: true, loads: [], spread: 0.02 },
  ...more,
})

test('every figure of both orders, and which is better where they differ', () => {
  const figures = figuresOf([order('cross', 0.12), order('found', 0.05, { travel: 700 })], 'mm')
  expect(figures.map(({ what, shown, better }) => [what, ...shown, better])).toEqual([
    ['Spread after the passes', '12 %', '5.0 %', 1],
    ['Spread after the last rounds', '2.0 %', '2.0 %', null],
    ['Last rounds', '2', '2', null],
    ['Spread, soft to stiff joint', '24 % – 6.0 %', '10 % – 2.5 %', null],
    ['Bow of the cover', '0.012 mm', '0.012 mm', null],
    ['Way of the hand', '400 mm', '700 mm', 0],
  ])
})

test('with valve lines the bow is told for each of them', () => {
  const bows = (bow: number) => ({ bows: [{ name: 'regulator', bow }] })
  const figures = figuresOf([order('cross', 0.1, bows(0.01)), order('found', 0.1, bows(0.004))], 'in')
  const bow = figures.find(({ what }) => what.includes('regulator'))!
  expect(bow.shown).toEqual(['0.0004 in', '0.0002 in'])
  expect(bow.better).toBe(1)
})

test('at first an order stands beside the advised one, and that beside what it was held against or the next best', () => {
  const orders = [order('stated', 0.2), order('cross', 0.1), order('found', 0.05)]
  const [stated, cross, found] = orders as [OrderAnswer, OrderAnswer, OrderAnswer]
  expect(besides({ orders, advice: { why: 'found', order: 2, against: 1 } }, found)).toBe(cross)
  expect(besides({ orders, advice: { why: 'found', order: 2, against: 1 } }, stated)).toBe(found)
  expect(besides({ orders, advice: { why: 'pattern', order: 1, found: 2 } }, cross)).toBe(found)
  expect(besides({ orders, advice: { why: 'stated', order: 0 } }, stated)).toBe(found)
  expect(besides({ orders: [stated], advice: { why: 'stated', order: 0 } }, stated)).toBe(stated)
})
