/** The figures of two orders, row by row, with which of the two is better where there is a better. */
import type { LengthUnit, OrderAnswer, TighteningAnswer } from '@gripbook/engine'
import { words } from '../words/tightening.ts'

export type PairOf<T> = [T, T]

export type Figure = { what: string; shown: PairOf<string>; better: 0 | 1 | null }

/** A difference below this share of the larger one is none: the model cannot tell. */
const ALIKE = 0.02

export function figuresOf(orders: PairOf<OrderAnswer>, unit: LengthUnit): Figure[] {
  const [left, right] = orders
  const row = (what: string, value: (order: OrderAnswer) => number, say: (value: number) => string): Figure => ({
    what,
    shown: [say(value(left)), say(value(right))],
    better: lesser(value(left), value(right)),
  })
  const small = (value: number) => words.small(value, unit)
  const lines = left.bows.flatMap(({ name }, i) =>
    right.bows[i] === undefined ? [] : [row(words.bowOf(name), (order) => order.bows[i]!.bow, small)],
  )
  const settled =
    left.settled === undefined || right.settled === undefined
      ? []
      : [row(words.settled, (order) => order.settled!.spread, words.percent)]
  const ends = (order: OrderAnswer) => {
    const [soft, stiff] = [order.overBed[0] ?? order.spread, order.overBed.at(-1) ?? order.spread]
    return order.overBed.length > 1 ? `${words.percent(soft)} – ${words.percent(stiff)}` : words.percent(soft)
  }
  return [
    row(words.afterPasses, ({ spread }) => spread, words.percent),
    row(words.afterRounds, ({ lastRounds }) => lastRounds.spread, words.percent),
    {
      what: words.rounds,
      shown: [roundsOf(left), roundsOf(right)],
      better: lesser(left.lastRounds.count, right.lastRounds.count),
    },
    { what: words.overBed, shown: [ends(left), ends(right)], better: null },
    ...settled,
    ...(lines.length > 0 ? lines : [row(words.bow, ({ bow }) => bow, small)]),
    row(
      words.travel,
      ({ travel }) => travel,
      (value) => words.far(value, unit),
    ),
  ]
}

/** What an order stands beside at first: the advised one, or, beside that, what it was held against or the next best. */
export function besides(answer: Pick<TighteningAnswer, 'orders' | 'advice'>, left: OrderAnswer): OrderAnswer {
  const { orders, advice } = answer
  const advised = orders[advice.order]
  if (advised !== undefined && advised !== left) return advised
  const heldAgainst = advice.why === 'found' ? advice.against : advice.why === 'pattern' ? advice.found : undefined
  const against = heldAgainst === undefined ? undefined : orders[heldAgainst]
  if (against !== undefined && against !== left) return against
  const others = orders.filter((order) => order !== left)
  return others.reduce((least, order) => (order.spread < least.spread ? order : least), others[0] ?? left)
}

function roundsOf({ lastRounds }: OrderAnswer): string {
  return words.roundsCount(lastRounds.count, lastRounds.still)
}

function lesser(left: number, right: number): 0 | 1 | null {
  if (Math.abs(left - right) <= ALIKE * Math.max(Math.abs(left), Math.abs(right))) return null
  return left < right ? 0 : 1
}
