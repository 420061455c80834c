/** One step of an order: which bolts stand how, what changed since the step before, what the marks say. */
import type { OrderAnswer, TighteningAnswer } from '@gripbook/engine'

export type Bar = {
  hole: string
  /** N that the bolt holds after this step, and what it is to hold in the end. */
  load: number
  target: number
  /** N since the step before. */
  change: number
  /** Where it stands in the pass of this step. */
  turn: 'now' | 'done' | 'to come' | 'other visit'
  /** It held something before and holds nothing now. */
  slack: boolean
}

/** A change below this share of the target is none: nobody could measure it. */
const STILL = 0.005

/** Every bolt after step `at` (from 0), in the order in which the pass comes to them; those it does not come to follow. */
export function barsAt(answer: TighteningAnswer, order: OrderAnswer, at: number): Bar[] {
  const step = order.steps[at]
  if (step === undefined) return []
  const before = order.steps[at - 1]?.loads
  const turns = turnsOf(order, step.pass)
  const last = order.steps.findLastIndex(({ pass }) => pass === step.pass)
  const first = order.steps.findIndex(({ pass }) => pass === step.pass)
  const bars = answer.holes.map((hole, i): Bar => {
    const load = step.loads[i] ?? 0
    const was = before?.[i] ?? 0
    const target = answer.bolts.find((bolt) => bolt.hole === hole)?.target ?? 0
    const ownStep = order.steps.findIndex((one, n) => n >= first && n <= last && one.hole === hole)
    const turn = ownStep < 0 ? 'other visit' : ownStep === at ? 'now' : ownStep < at ? 'done' : 'to come'
    const change = Math.abs(load - was) < STILL * target ? 0 : load - was
    return { hole, load, target, change, turn, slack: load < STILL * target && was >= STILL * target }
  })
  const turnOf = (hole: string) => turns.get(hole) ?? Number.POSITIVE_INFINITY
  return bars.sort((a, b) => {
    const [one, other] = [turnOf(a.hole), turnOf(b.hole)]
    return one === other ? 0 : one - other
  })
}

/** The number under which each hole is turned in a pass (1, 2, 3 …). */
export function turnsOf(order: OrderAnswer, pass: number): Map<string, number> {
  const steps = order.steps.filter((step) => step.pass === pass)
  return new Map(steps.map(({ hole }, i) => [hole, i + 1]))
}

/** The order as a whole: the last pass of every visit, one visit after the other. */
export function wholeWay({ passes }: Pick<OrderAnswer, 'passes'>): string[] {
  const last = new Map(passes.map(({ visit, sequence }) => [visit, sequence]))
  return [...new Set([...last.values()].flat())]
}

/** The visits, each with the shares of its passes. */
export function visitsOf({ passes }: Pick<OrderAnswer, 'passes'>): { visit: number; shares: number[] }[] {
  const visits = new Map<number, number[]>()
  for (const { visit, share } of passes) visits.set(visit, [...(visits.get(visit) ?? []), share])
  return [...visits].map(([visit, shares]) => ({ visit, shares }))
}

/** The holes of a pass one after another, for the line between them. */
export function wayOf(order: OrderAnswer, pass: number): string[] {
  return order.steps.filter((step) => step.pass === pass).map(({ hole }) => hole)
}

/** The passes by their number, with their share of the torque and where they start and end among the steps. */
export function passesOf(order: OrderAnswer): { pass: number; share: number; from: number; to: number }[] {
  const passes = new Map<number, { pass: number; share: number; from: number; to: number }>()
  order.steps.forEach(({ pass, share }, i) => {
    const known = passes.get(pass)
    if (known === undefined) passes.set(pass, { pass, share, from: i, to: i })
    else known.to = i
  })
  return [...passes.values()]
}

/** Figure at which a bar is full, N: more than any bolt ever holds in these orders. */
export function fullBar(answer: TighteningAnswer, orders: readonly OrderAnswer[]): number {
  const loads = orders.flatMap(({ steps, lastRounds }) => [...steps.flatMap((step) => step.loads), ...lastRounds.loads])
  return 1.04 * Math.max(1, ...answer.bolts.map(({ target }) => target), ...loads)
}

/** What brings the spread to `wanted` or below: after which of the passes at full torque, else how many rounds more at most; null: not even those. */
export function passesFor(
  order: OrderAnswer,
  wanted: number,
): { passes: number; rounds: number; spread: number } | null {
  const full = order.passes.flatMap(({ share }, i) => (share === 1 ? [i] : []))
  for (const i of full) {
    const spread = order.spreads[i]
    if (spread !== undefined && spread <= wanted) return { passes: i + 1, rounds: 0, spread }
  }
  const { count, spread } = order.lastRounds
  return spread <= wanted ? { passes: order.passes.length, rounds: count, spread } : null
}
