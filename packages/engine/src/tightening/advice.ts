import type { Advice, OrderAnswer } from './answer.ts'

/** An order is truly better than a pattern that can be remembered from a tenth on, and when a wrench could tell: from one part in a hundred of the clamp on. */
const [TRULY, TELLING] = [0.9, 0.01]

export const isPattern = ({ kind }: OrderAnswer): boolean => kind !== 'stated' && kind !== 'found'

/** The figure by which orders are compared: the spread, and where the bed is a range the worst over it. */
export function worstOf({ spread, overBed }: OrderAnswer): number {
  return overBed.length === 1 ? spread : Math.max(spread, ...overBed)
}

function isTrulyBetter(one: OrderAnswer, other: OrderAnswer): boolean {
  return worstOf(one) <= TRULY * worstOf(other) && worstOf(one) <= worstOf(other) - TELLING
}

/** The stated order rules. Else the found one where it is truly better, or the shop's pattern unless another pattern is. */
export function adviceOn(orders: readonly OrderAnswer[]): Advice {
  if (orders[0]!.kind === 'stated') return { why: 'stated', order: 0 }
  const found = orders.findIndex(({ kind }) => kind === 'found')
  const pattern = orders.reduce(
    (best, order, i) => (isPattern(order) && isTrulyBetter(order, orders[best]!) ? i : best),
    orders.findIndex(isPattern),
  )
  if (found >= 0 && isTrulyBetter(orders[found]!, orders[pattern]!))
    return { why: 'found', order: found, against: pattern }
  return { why: 'pattern', order: pattern, ...(found < 0 ? {} : { found }) }
}
