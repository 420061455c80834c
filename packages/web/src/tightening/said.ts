/** The sentences that an answer comes to. */
import type { OrderAnswer, TighteningAnswer } from '@gripbook/engine'
import type { FaceWork } from '@gripbook/record'
import { words } from '../words/tightening.ts'
import { visitsOf } from './steps.ts'

/** Which order is advised; before the search has come, the best of the patterns. */
export function advisedOrder(answer: TighteningAnswer): OrderAnswer {
  return answer.orders[answer.advice.order] ?? answer.orders[0]!
}

/** The one sentence on top. */
export function sayAdvice(answer: TighteningAnswer, searched: boolean): string {
  const { advice, orders } = answer
  const order = advisedOrder(answer)
  const name = words.orders[order.kind]
  if (advice.why === 'stated') return words.advice.stated
  if (advice.why === 'pattern') return searched ? words.advice.pattern(name) : words.advice.patternOnly(name)
  const against = orders[advice.against]
  if (against === undefined) return words.advice.patternOnly(name)
  return words.advice.found(words.percent(order.spread), words.orders[against.kind], words.percent(against.spread))
}

/** Where the manual's order rules and another one would leave less than half of its spread: which, and how much. */
export function sayBesideStated(answer: TighteningAnswer): string | null {
  const stated = answer.orders.find(({ kind }) => kind === 'stated')
  const best = answer.orders.reduce((least, order) => (order.spread < least.spread ? order : least))
  if (stated === undefined || best === stated || best.spread > stated.spread / 2) return null
  return words.statedBeside(words.orders[best.kind], words.percent(best.spread), words.percent(stated.spread))
}

/** How many passes at which shares; for several visits at each of them. */
export function sayPasses(order: Pick<OrderAnswer, 'passes'>): string {
  const visits = visitsOf(order)
  if (visits.length <= 1) return words.inPasses(visits[0]?.shares ?? [])
  const alike = visits.every(({ shares }) => shares.join() === visits[0]!.shares.join())
  if (alike) return words.inVisits(visits.length, visits[0]!.shares)
  return visits.map(({ visit, shares }) => words.inVisit(visit, shares)).join(' ')
}

/** One line for every pass that goes another way than the one before: usually one for all of them. */
export function ways(order: Pick<OrderAnswer, 'passes'>): { from: number; to: number; sequence: string[] }[] {
  const lines: { from: number; to: number; sequence: string[] }[] = []
  order.passes.forEach(({ sequence }, i) => {
    const last = lines.at(-1)
    if (last !== undefined && last.sequence.join('\n') === sequence.join('\n')) last.to = i
    else lines.push({ from: i, to: i, sequence })
  })
  return lines
}

/** The order as it is written to the record. */
export function passesToKeep({ passes }: Pick<OrderAnswer, 'passes'>): { share: number; sequence: string[] }[] {
  return passes.map(({ share, sequence }) => ({ share, sequence }))
}

/** The order that is in use, if it is one of these. */
export function orderInUse(
  orders: readonly OrderAnswer[],
  chosen: FaceWork['orderChosen'] | undefined,
): OrderAnswer | null {
  if (chosen === undefined) return null
  const text = JSON.stringify(chosen.value.passes.map(({ share, sequence }) => ({ share, sequence })))
  return orders.find((order) => JSON.stringify(passesToKeep(order)) === text) ?? null
}
