/**
 * What spread of the clamp the order leaves that the search comes to, beside the patterns of the shop, over generated covers; and for covers with few bolts, how far it is from the best
 * of all orders.
 */
import { seededRandom } from '../packages/engine/src/maths/random.ts'
import type { OrderAnswer, OrderKind, TighteningAnswer } from '../packages/engine/src/tightening/answer.ts'
import { boltsOf } from '../packages/engine/src/tightening/boltsOf.ts'
import { USUAL_SHARES } from '../packages/engine/src/tightening/facePasses.ts'
import { everyOrder } from '../packages/engine/src/tightening/orders/everyOrder.ts'
import { burdenOf, patternsFor, searchOrder } from '../packages/engine/src/tightening/orders/index.ts'
import { planTightening } from '../packages/engine/src/tightening/planTightening.ts'
import { condense } from '../packages/engine/src/tightening/plate/condense.ts'
import { raterOf } from '../packages/engine/src/tightening/rating.ts'
import { type AnyCover, anyCover } from './anyCover.ts'
import { median, short, table } from './table.ts'

const COVERS = 30
const SMALL = 10
/** Bolts of which every order can be tried. */
const FEW = 8
/** Orders that annealing may try where every order is known: the smallest share that the product ever tries is greater. */
const SPARSE = 4_000
const ROUND_OFF = 1e-9

const PATTERNS: readonly (readonly [OrderKind, string])[] = [
  ['cross', 'cross'],
  ['spiral', 'spiral from the middle'],
  ['rails', 'long sides from the middle'],
  ['corners', 'corners first'],
  ['round', 'round the edge'],
]

export async function tighteningSpread(print: (line: string) => void): Promise<void> {
  besidePatterns(print)
  besideAll(print)
}

type Planned = {
  drawn: AnyCover
  answer: TighteningAnswer
  left: OrderAnswer
  patterns: OrderAnswer[]
  seconds: number
}

function planned(drawn: AnyCover): Planned {
  const started = performance.now()
  const read = planTightening(drawn.unit, drawn.face.id)
  const seconds = (performance.now() - started) / 1000
  if (!read.ok) throw new Error(`a generated cover has a fault: ${JSON.stringify(read.faults)}`)
  const patterns = read.value.orders.filter(({ kind }) => kind !== 'found')
  const found = read.value.orders.find(({ kind }) => kind === 'found')
  return { drawn, answer: read.value, left: found ?? leastBy(patterns, figureOf), patterns, seconds }
}

/** What orders are compared by: the spread told, and where the bed is a range the worst over it. */
function figureOf({ spread, overBed }: OrderAnswer): number {
  return overBed.length === 1 ? spread : Math.max(spread, ...overBed)
}

function besidePatterns(print: (line: string) => void): void {
  const all = Array.from({ length: COVERS }, (_, k) => planned(anyCover(k + 1)))
  const rows = PATTERNS.map(([kind, words]) => {
    const ratios = all.flatMap(({ left, patterns }) =>
      patterns.filter((order) => order.kind === kind).map((order) => figureOf(left) / figureOf(order)),
    )
    return ratioRow(words, ratios)
  })
  const best = all.map(({ left, patterns }) => figureOf(left) / Math.min(...patterns.map(figureOf)))
  const shop = all.map(({ left, patterns }) => figureOf(left) / figureOf(patterns[0]!))
  const spreads = all.map(({ left, patterns }) => left.spread / Math.min(...patterns.map(({ spread }) => spread)))
  rows.push(ratioRow("the shop's pattern of each", shop))
  rows.push(ratioRow('the best pattern of each', best))
  rows.push(ratioRow('the best of each by the middle of the bed alone', spreads))
  print(table(['spread that the search leaves, over that of', 'covers', 'median', 'least', 'most'], rows))
  print('')
  const kept = all.filter(({ answer }) => answer.orders.every(({ kind }) => kind !== 'found')).length
  const advised = all.filter(({ answer }) => answer.advice.why === 'found').length
  const ranges = all.filter(({ left }) => left.overBed.length > 1).length
  print(
    `Over ${COVERS} generated covers, three passes, bolts run down by hand; on ${ranges} the bed is a range and the worst over it counts. Worse than the best pattern: on ${count(best, 1 + ROUND_OFF)}. ` +
      `By the middle of the bed alone: on ${count(spreads, 1 + ROUND_OFF)}. Where the search's order held no better than a pattern on the bed that only pushes, that pattern was kept: on ${kept}. Found order advised: on ${advised}. ` +
      `Median gain over the best pattern: ${percent(1 - median(best))}, over the shop's pattern: ${percent(1 - median(shop))}. Seconds for a cover: median ${short(median(all.map(({ seconds }) => seconds)))}, most ${short(Math.max(...all.map(({ seconds }) => seconds)))}.`,
  )
  print('')
  besideBothWays(all, print)
}

/** The search counts on a bed that holds both ways; what is told counts on one that only pushes. */
function besideBothWays(all: readonly Planned[], print: (line: string) => void): void {
  const middle = ({ overBed }: OrderAnswer) => overBed[Math.floor(overBed.length / 2)]!
  const toldOver = (orders: readonly OrderAnswer[]) =>
    orders.filter((order) => middle(order) > ROUND_OFF).map((order) => order.spread / middle(order))
  print(
    table(
      [
        'spread told (bed only pushes) over spread searched by (bed holds both ways)',
        'orders',
        'median',
        'least',
        'most',
      ],
      [
        ratioRow('order that the search leaves', toldOver(all.map(({ left }) => left))),
        ratioRow('patterns', toldOver(all.flatMap(({ patterns }) => patterns))),
      ],
    ),
  )
  const same = all.filter(
    ({ answer: { orders } }) => leastBy(orders, middle) === leastBy(orders, ({ spread }) => spread),
  ).length
  print('')
  print(`Of the orders told for a cover both beds name the same as the best: on ${same} of ${all.length}.`)
  print('')
}

/** Covers of which every order can be tried. */
function besideAll(print: (line: string) => void): void {
  const rows: (string | number)[][] = []
  const ratios: number[] = []
  const sparse: number[] = []
  for (let k = 1; k <= SMALL; k++) {
    const { drawn, answer, left } = planned(anyCover(k + 100, FEW))
    const bolts = boltsOf(drawn.unit, drawn.face).bolts
    const { soft, middle, stiff } = answer.bed
    const cases = (soft === stiff ? [soft] : [soft, middle, stiff]).map((stiffness) => ({
      compliance: condense(drawn.cover, { ...drawn.bed, stiffness }, drawn.points).compliance,
      lines: [],
    }))
    const rate = raterOf(cases, bolts, [], 1, USUAL_SHARES, true)
    let [best, tried] = [Number.POSITIVE_INFINITY, 0]
    everyOrder(bolts.length, (sequence) => {
      best = Math.min(best, rate(sequence, best))
      tried += 1
    })
    const places = drawn.points.map((at) => ({ at }))
    const annealed = searchOrder({
      count: bolts.length,
      starts: patternsFor(places).map(({ sequence }) => sequence),
      rate,
      burden: burdenOf(places),
      effort: Math.min(SPARSE, Math.floor(tried / 4)),
      random: seededRandom(k),
    })
    const figure = rate(
      Int32Array.from(left.passes[0]!.sequence, (id) => answer.holes.indexOf(id)),
      Number.POSITIVE_INFINITY,
    )
    ratios.push(figure / best)
    sparse.push(annealed.rate / best)
    rows.push([
      drawn.shape,
      bolts.length,
      tried,
      left.kind,
      best.toFixed(4),
      (figure / best).toFixed(3),
      (annealed.rate / best).toFixed(3),
      (left.spread / figure).toFixed(3),
    ])
  }
  print(
    table(
      [
        'cover',
        'bolts',
        'orders',
        'left',
        'least figure',
        'left over least',
        'annealed over least',
        'spread told over figure',
      ],
      rows,
    ),
  )
  print('')
  print(
    `Figure: the worst spread over the beds, as the search counts it. An order up to 3 % over the least is taken when it is easier on hand and head. Most over the least: ${percent(Math.max(...ratios) - 1)}; ` +
      `more than 5 % over it: on ${count(ratios, 1.05)} of ${SMALL}. Annealed: as for covers with more bolts, with a quarter of all orders or ${SPARSE} as its whole effort: most over the least ${percent(Math.max(...sparse) - 1)}.`,
  )
}

const count = (ratios: readonly number[], bound: number) => ratios.filter((ratio) => ratio > bound).length
const percent = (share: number) => `${(100 * share).toFixed(1)} %`

function ratioRow(words: string, ratios: readonly number[]): (string | number)[] {
  if (ratios.length === 0) return [words, 0, '', '', '']
  return [words, ratios.length, ...[median(ratios), Math.min(...ratios), Math.max(...ratios)].map((r) => r.toFixed(3))]
}

function leastBy<T>(list: readonly T[], figure: (one: T) => number): T {
  return list.reduce((least, one) => (figure(one) < figure(least) ? one : least))
}
