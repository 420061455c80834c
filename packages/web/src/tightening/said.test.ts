import type { OrderAnswer, TighteningAnswer } from '@gripbook/engine'
import { expect, test } from 'vitest'
import { advisedOrder, orderInUse, passesToKeep, sayAdvice, sayBesideStated, sayPasses, ways } from './said.ts'

const order = (kind: OrderAnswer['kind'], spread: number, sequence = ['1', '2', '3']): OrderAnswer => ({
  kind,
  name: kind,
  passes: [0.3, 0.6, 1].map((share) => ({ share, visit: 1, sequence })),
  steps: [],
  spread,
  spreads: [spread],
  overBed: [spread],
  bow: 0,
  bows: [],
  travel: 0,
  lastRounds: { count: 1, still: true, loads: [], spread: 0 },
})
const answer = (orders: OrderAnswer[], advice: TighteningAnswer['advice']) => ({ orders, advice }) as TighteningAnswer

test('the one sentence says which order and why', () => {
  const orders = [order('cross', 0.124), order('found', 0.05)]
  expect(sayAdvice(answer(orders, { why: 'found', order: 1, against: 0 }), true)).toBe(
    'The order that was searched for: it leaves 5.0 % of spread where “Crosswise” leaves 12 %.',
  )
  const pattern = answer(orders, { why: 'pattern', order: 0, found: 1 })
  expect(sayAdvice(pattern, true)).toContain('nothing that was searched for is truly better')
  expect(sayAdvice(pattern, false)).toContain('the best of the patterns')
  expect(advisedOrder(pattern).kind).toBe('cross')
})

test('where the manual rules, an order that leaves much less is named beside it', () => {
  const stated = { why: 'stated', order: 0 } as const
  expect(sayAdvice(answer([order('stated', 0.2)], stated), true)).toBe('The manual’s order rules.')
  expect(sayBesideStated(answer([order('stated', 0.2), order('cross', 0.05)], stated))).toContain(
    '“Crosswise” would leave 5.0 %',
  )
  expect(sayBesideStated(answer([order('stated', 0.06), order('cross', 0.05)], stated))).toBeNull()
  expect(sayBesideStated(answer([order('cross', 0.05)], { why: 'pattern', order: 0, found: 0 }))).toBeNull()
})

test('passes that go the same way are one line', () => {
  const passes = [
    { share: 0.5, visit: 1, sequence: ['1', '2'] },
    { share: 1, visit: 1, sequence: ['1', '2'] },
    { share: 1, visit: 1, sequence: ['2', '1'] },
  ]
  expect(ways({ passes })).toEqual([
    { from: 0, to: 1, sequence: ['1', '2'] },
    { from: 2, to: 2, sequence: ['2', '1'] },
  ])
})

test('the order in use is known again by its passes', () => {
  const orders = [order('cross', 0.1), order('found', 0.05, ['2', '1', '3'])]
  const chosen = (name: string, passes: { share: number; sequence: string[] }[]) => ({
    value: { name, passes },
    event: 'e',
    who: 'w',
    at: '2026-11-25T10:00:00.000Z',
  })
  expect(orderInUse(orders, chosen('x', passesToKeep(orders[1]!)))?.kind).toBe('found')
  expect(orderInUse(orders, chosen('x', [{ share: 1, sequence: ['1'] }]))).toBeNull()
  expect(orderInUse(orders, undefined)).toBeNull()
})

test('several visits are told apart, and as one where they go alike', () => {
  const pass = (visit: number, share: number) => ({ share, visit, sequence: [String(visit)] })
  expect(sayPasses({ passes: [pass(1, 0.5), pass(1, 1)] })).toBe('In 2 passes, at 50 % and 100 % of the torque.')
  expect(sayPasses({ passes: [pass(1, 0.5), pass(1, 1), pass(2, 0.5), pass(2, 1)] })).toBe(
    'In 2 visits, each in 2 passes at 50 % and 100 % of the torque.',
  )
  expect(sayPasses({ passes: [pass(1, 1), pass(2, 0.5), pass(2, 1)] })).toBe(
    'Visit 1 at 100 %. Visit 2 at 50 % and 100 %.',
  )
})
