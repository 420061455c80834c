import { type Face, intervalOf, type OrderAnswer, type TighteningAnswer, type Unit } from '@gripbook/engine'
import { assumptionWords } from './assumptionWords.ts'
import { figure, wrap } from './jointFigures.ts'
import { listed } from './list.ts'
import { isRanged, orderTable } from './orderTable.ts'
import { ORDER_NAMES, orderDeed } from './orderWords.ts'
import { painter } from './paint.ts'
import type { Screen } from './placementText.ts'
import { headed, section, wideOf } from './setting.ts'
import { evenWhen, percentOf, rounds } from './spreadWords.ts'

const CAUTION =
  'The manual’s order, passes and torques rule; this is a check on them. Local rules and a licensed professional’s judgement come first.'

/**
 * The answer of `gripbook tighten` for a person at the bench: which order and why, what comes before the wrench, the order pass by pass, all orders side by
 * side, the lowest and the highest bolt, and what the sums take for granted. `most` is how uneven the clamp may be, a share. Pure.
 */
export function tighteningText(
  unit: Unit,
  answer: TighteningAnswer,
  most: number,
  { columns, colour }: Screen,
): string {
  const wide = wideOf(columns)
  const face = unit.faces.find(({ id }) => id === answer.face)!
  const advised = answer.orders[answer.advice.order]!
  const title = face.name ? `${face.name} (${face.id})` : face.id
  const { mind, taken } = assumptionWords(answer)
  const lines = [
    ...headed(title, adviceWords(answer), wide, painter(colour)),
    ...wrap(evenWhen(advised, most), wide),
    ...section('Mind', mind, wide),
    ...section('Before the wrench', beforeTheWrench(face, answer), wide),
    ...passLines(advised, wide),
    ...torqueLines(face, advised, wide),
    '',
    ...orderTable(answer, wide),
    ...wrap(
      `passes, rounds: how uneven the clamp is after the passes and after the last rounds, greatest less least over the mean${
        isRanged(answer) ? '; over bed: the same after the passes from the softest to the stiffest bed' : ''
      }.`,
      wide,
      '  ',
    ),
    ...section('Lowest and highest', extremes(answer, advised), wide),
    ...section(
      'Bow',
      advised.bows.map(({ name, bow }) => `${name}: ${bow.toFixed(3)} mm from straight.`),
      wide,
    ),
    ...section('What this takes for granted', taken, wide),
    '',
    ...wrap(CAUTION, wide),
  ]
  return `${lines.join('\n')}\n`
}

/** Which order, and the figures that speak for it. */
function adviceWords({ advice, orders }: TighteningAnswer): string {
  const order = orders[advice.order]!
  const deed = orderDeed(order)
  if (advice.why === 'stated') {
    const others = orders.filter((_, i) => i !== advice.order)
    const best = others.reduce<OrderAnswer | undefined>((a, b) => (a && a.spread <= b.spread ? a : b), undefined)
    const beside =
      best === undefined
        ? ''
        : ` The most even of the others, ${ORDER_NAMES[best.kind]}, leaves ${percentOf(best.spread)}.`
    return `${deed}: it rules. It leaves the clamp uneven by ${percentOf(order.spread)}.${beside}`
  }
  if (advice.why === 'found') {
    const against = orders[advice.against]!
    return `${deed}. It leaves the clamp uneven by ${percentOf(order.spread)}, where “${ORDER_NAMES[against.kind]}” leaves ${percentOf(against.spread)}.`
  }
  const found = advice.found === undefined ? undefined : orders[advice.found]
  const search =
    found === undefined
      ? ' None of the others is truly better.'
      : ` The search found nothing truly better: ${percentOf(found.spread)} in an order that is harder to remember.`
  return `${deed}. It leaves the clamp uneven by ${percentOf(order.spread)}.${search}`
}

/** What hands do first, by the rules of the trade (common practice, no source). */
function beforeTheWrench({ holes, snug }: Face, { bolts }: TighteningAnswer): string[] {
  const planned = new Set(bolts.map(({ hole }) => hole))
  const locating = holes.filter(({ id, locates }) => locates === true && planned.has(id)).map(({ id }) => id)
  const visits = new Set(bolts.map(({ visit }) => visit)).size
  return [
    locating.length > 0
      ? `Start all bolts by hand, dowels and what locates first: ${listed(locating)}.`
      : 'Start all bolts by hand, dowels and locating bolts first.',
    `Run all down until the heads touch${visits > 1 ? ', in each visit its own' : ''}.${
      snug === true
        ? ''
        : ' The file does not say that this is done ("snug"): the figures are for bolts that stay loose until their turn.'
    }`,
  ]
}

/** The order as holes, pass by pass, and the rounds that end it. */
function passLines({ passes, lastRounds, kind }: OrderAnswer, wide: number): string[] {
  const visits = new Set(passes.map(({ visit }) => visit))
  const lines = passes.flatMap(({ share, visit, sequence }, i) => {
    const start = i === 0 || passes[i - 1]!.visit !== visit
    const number = passes.slice(0, i + 1).filter((pass) => pass.visit === visit).length
    return [
      ...(visits.size > 1 && start ? [`  Visit ${visit}`] : []),
      ...wrap(
        sequence.join(', '),
        wide,
        `${visits.size > 1 ? '  ' : ''}  Pass ${number}, ${figure(share * 100, 1)} %: `.padEnd(
          visits.size > 1 ? 20 : 18,
        ),
      ),
    ]
  })
  const { count, still } = lastRounds
  const last = still
    ? count === 0
      ? 'Then once round the edge at full torque: no bolt should turn.'
      : `Then round the edge at full torque until no bolt turns: ${rounds(count)} in the sums.`
    : `Then round the edge at full torque until no bolt turns; in the sums some still turned after ${rounds(count)}.`
  const title = kind === 'stated' ? 'The order, as the manual states it' : 'The order'
  return ['', title, ...lines, ...wrap(last, wide, '  ')]
}

/** What to set on the wrench, pass by pass, for the holes of each torque; nothing where the torque is not one figure. */
function torqueLines({ holes, torque }: Face, { passes }: OrderAnswer, wide: number): string[] {
  const groups = new Map<string, { full: number; shares: Set<number>; holes: string[] }>()
  for (const hole of holes) {
    const { lo, hi } = intervalOf(hole.torque ?? torque, 'torque')
    const mine = passes.filter(({ sequence }) => sequence.includes(hole.id)).map(({ share }) => share)
    if (lo !== hi || lo === 0 || mine.length === 0) continue
    const key = `${lo} ${mine.join(' ')}`
    const group = groups.get(key) ?? { full: lo, shares: new Set(mine), holes: [] }
    group.holes.push(hole.id)
    groups.set(key, group)
  }
  const items = [...groups.values()].map(
    (group) =>
      `${inTurn([...group.shares].map((share) => figure(group.full * share, 1)))} N·m: ${group.holes.length === holes.length ? 'all bolts' : `${group.holes.length === 1 ? 'bolt' : 'bolts'} ${listed(group.holes)}`}`,
  )
  return section('Torque, pass by pass', items, wide)
}

/** The bolts that hold least and most of their target, after the passes, when the surfaces have settled under those, and after the last rounds. */
function extremes(answer: TighteningAnswer, { steps, lastRounds, settled }: OrderAnswer): string[] {
  const after = (when: string, loads: readonly number[] | undefined): string[] => {
    if (loads === undefined) return []
    const bolts = answer.holes.map((hole, i) => {
      const target = answer.bolts.find((bolt) => bolt.hole === hole)!.target
      return { hole, load: loads[i]!, target, share: loads[i]! / target }
    })
    const least = bolts.reduce((a, b) => (b.share < a.share ? b : a))
    const most = bolts.reduce((a, b) => (b.share > a.share ? b : a))
    const known = !answer.assumptions.some(({ what }) => what === 'unit load')
    const say = ({ hole, load, target, share }: typeof least): string =>
      `bolt ${hole} ${percentOf(share)} of its target${known ? ` (${kilo(load)} of ${kilo(target)} kN)` : ''}`
    return [`${when}: ${say(least)}, ${say(most)}.`]
  }
  return [
    ...after('After the passes', steps.at(-1)?.loads),
    ...after('After the passes, when the surfaces have settled', settled?.loads),
    ...after('After the last rounds', lastRounds.loads),
  ]
}

/** "3, 6, then 10". */
const inTurn = (figures: readonly string[]): string => figures.join(', ').replace(/, ([^,]*)$/, ', then $1')

const kilo = (newtons: number): string => (newtons / 1000).toFixed(1)
