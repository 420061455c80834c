/** Looks for an order with a better figure than the patterns have, and among near-best orders for one that is easy on hand and head. */
import { must } from '../../must.ts'
import { anneal } from './anneal.ts'
import { easier } from './easier.ts'
import { everyOrder, ordersOf } from './everyOrder.ts'
import { walk } from './moves.ts'
import { numbered } from './places.ts'
import type { Rate } from './rate.ts'

/** Calls of `rate` unless stated otherwise. All orders of up to eight bolts are fewer. */
const EFFORT = 60_000
/** An order this near to the best is as good: the sums are not that sure. */
const AS_GOOD = 1.03
/** An order is truly better from a tenth on. */
const TRULY = 0.9
/** Shares of the effort: two rounds of annealing, the walk down from the best of them; what is left makes the order easier. */
const [FIRST_ROUND, SECOND_ROUND, WALK] = [0.45, 0.3, 0.1]
const TOLD_EVERY = 500

export type OrderSearch = {
  /** How many bolts; sequences hold the numbers 0 to count − 1, each once. */
  count: number
  /** The patterns to beat. With none the bolts as numbered are the start. */
  starts: readonly (readonly number[])[]
  rate: Rate
  /** What an order asks of hand and head: `burdenOf` the places. */
  burden: (sequence: ArrayLike<number>) => number
  /** Most calls of `rate`; the starts are rated in any case. */
  effort?: number
  /** Numbers from 0 up to 1, drawn from a seed. */
  random: () => number
  /** Hears now and then how far it is, from 0 to 1. */
  told?: (done: number) => void
}

export type FoundOrder = {
  sequence: number[]
  rate: number
  /** How often `rate` was asked. */
  tried: number
  /** Better than the best of the starts by a tenth at least. */
  truly: boolean
}

type Burden = OrderSearch['burden']
type Rated = { sequence: Int32Array; rate: number }
/** Counts what was asked; `left` says how many calls of the effort are, `spent(calls)` whether so many are used up. */
type Asking = {
  rate: Rate
  left: () => number
  spent: (calls: number) => () => boolean
  tried: () => number
}

/**
 * The order with the least burden among those that rate no worse than any start and at most 3 % over the best that was found. When the effort allows
 * for every order (eight bolts at 60 000), the best found is the best of all; else it comes from annealing and a walk downhill from the best start.
 */
export function searchOrder(search: OrderSearch): FoundOrder {
  const { count, burden, effort = EFFORT, random, told } = search
  const asking = counted(search.rate, effort, told)
  const starts = (search.starts.length > 0 ? search.starts : [numbered(count)]).map((start): Rated => {
    must(isOrder(start, count), 'searchOrder: a start holds every bolt once', start)
    const sequence = Int32Array.from(start)
    return { sequence, rate: asking.rate(sequence, Number.POSITIVE_INFINITY) }
  })
  const start = leastRate(starts)
  const found =
    ordersOf(count) <= asking.left()
      ? easiestOfAll(count, start, asking.rate, burden)
      : easiestMet(starts, bestMet(start, asking, effort, random), asking.rate, burden, asking.spent(effort))
  told?.(1)
  const truly = start.rate > 0 && found.rate <= TRULY * start.rate
  return { sequence: [...found.sequence], rate: found.rate, tried: asking.tried(), truly }
}

function counted(rate: Rate, effort: number, told: OrderSearch['told']): Asking {
  let tried = 0
  return {
    rate: (sequence, bound) => {
      const figure = rate(sequence, bound)
      must(figure >= 0, 'searchOrder: a rate is a number, 0 or more', figure)
      tried++
      if (tried % TOLD_EVERY === 0) told?.(Math.min(1, tried / effort))
      return figure
    },
    left: () => Math.max(0, Math.floor(effort) - tried),
    spent: (calls) => () => tried >= calls,
    tried: () => tried,
  }
}

/** Two rounds of annealing, the second from the best of the first, and down from there to where no small change is better. */
function bestMet(start: Rated, { rate, left, spent }: Asking, effort: number, random: () => number): Rated {
  const round = (share: number, at: Rated) =>
    anneal(at.sequence, at.rate, Math.min(Math.floor(share * effort), left()), rate, random)
  const best = round(SECOND_ROUND, round(FIRST_ROUND, start))
  let least = best.rate
  const isBetter = (trial: Int32Array) => {
    const now = rate(trial, least)
    if (now >= least) return false
    least = now
    return true
  }
  const sequence = walk(best.sequence, isBetter, spent((FIRST_ROUND + SECOND_ROUND + WALK) * effort))
  return { sequence, rate: least }
}

/** Every order rated once, then the easiest of the good ones. */
function easiestOfAll(count: number, start: Rated, rate: Rate, burden: Burden): Rated {
  const rates = new Float64Array(ordersOf(count))
  let best = start.rate
  let at = 0
  everyOrder(count, (sequence) => {
    const figure = rate(sequence, boundOf(start.rate, best))
    rates[at++] = figure
    best = Math.min(best, figure)
  })
  const bound = boundOf(start.rate, best)
  let easiest = { ...start, burden: start.rate <= bound ? burden(start.sequence) : Number.POSITIVE_INFINITY }
  at = 0
  everyOrder(count, (sequence) => {
    const figure = rates[at++]!
    if (figure > bound) return
    const now = burden(sequence)
    if (now < easiest.burden) easiest = { sequence: sequence.slice(), rate: figure, burden: now }
  })
  return easiest
}

/** The best order and the starts that are as good, each made easier; the easiest of these. */
function easiestMet(starts: Rated[], best: Rated, rate: Rate, burden: Burden, spent: () => boolean): Rated {
  const bound = boundOf(leastRate(starts).rate, best.rate)
  const rates = new Map<string, number>()
  const remembered: Rate = (sequence) => {
    const figure = rate(sequence, bound)
    if (figure <= bound) rates.set(sequence.join(), figure)
    return figure
  }
  const eased = [best, ...starts]
    .filter((one) => one.rate <= bound)
    .map((one): Rated => {
      const sequence = easier(one.sequence, bound, remembered, burden, spent)
      return { sequence, rate: rates.get(sequence.join()) ?? one.rate }
    })
  const burdens = eased.map(({ sequence }) => burden(sequence))
  return eased[burdens.indexOf(Math.min(...burdens))]!
}

/** No worse than any start comes first, easy on the hand second. */
function boundOf(startRate: number, bestRate: number): number {
  return Math.min(startRate, AS_GOOD * bestRate)
}

function leastRate(all: Rated[]): Rated {
  return all.reduce((least, one) => (one.rate < least.rate ? one : least))
}

function isOrder(sequence: readonly number[], count: number): boolean {
  return sequence.length === count && new Set(sequence).size === count && sequence.every((at) => at >= 0 && at < count)
}
