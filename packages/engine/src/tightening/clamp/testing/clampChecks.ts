/** What another program finds for the easy cover's bolts as they are tightened, beside what Gripbook makes of it. */
import * as orders from '../../../../published/easy-cover-orders.ts'
import { lossM6, screwM6, seatM6 } from '../../../../published/vdi-2230-bolt.ts'
import { type Check, checksOf, digits, either, percent } from '../../../joints/testing/check.ts'
import { TwoWayModel } from '../../orders/testing/twoWayModel.ts'
import { condense } from '../../plate/condense.ts'
import { coverOnBed } from '../../plate/contact.ts'
import { easyCompliance, easyFace } from '../../plate/testing/plateChecks.ts'
import { type Bolt, type Cover, embedded, linearCover, type Pass, spreadOf, tighten, untouched } from '../tighten.ts'

type OrderName = 'round' | 'middle outward' | 'corners first'

/** Bolts of the easy cover, each with its target in N. */
export function easyBolts(targets: readonly number[] = [1, 1, 1, 1, 1, 1]): Bolt[] {
  return targets.map((target) => ({ target, compliance: 1 / orders.easyOrders.boltStiffness, visit: 1 }))
}

export function fullPasses(count: number, sequence: readonly number[]): Pass[] {
  return Array.from({ length: count }, () => ({ share: 1, visit: 1, sequence }))
}

/** The easy cover on a bed that holds both ways. */
export function easyTwoWay(): Cover {
  return linearCover(easyCompliance(1, 2.5))
}

/** The easy cover on a bed that only pushes. */
function easyOneSided(): Cover {
  const { cover, bed, points } = easyFace()
  const onBed = coverOnBed(cover, bed, points, condense(cover, bed, points))
  return (holding) => onBed.lie(holding)
}

/** Spreads after one pass in every order of six bolts, least first; bolts hold both ways, as the other program had it. */
function allSpreads(): number[] {
  const model = new TwoWayModel(
    easyCompliance(1, 2.5),
    easyBolts().map(({ compliance }) => compliance),
  )
  return permutations([0, 1, 2, 3, 4, 5])
    .map((sequence) => model.spread(sequence, [1]))
    .sort((a, b) => a - b)
}

function quantile(ascending: readonly number[], what: string): number {
  const middle = ascending.length / 2
  if (what === 'median') return (ascending[middle - 1]! + ascending[middle]!) / 2
  return what === 'best' ? ascending[0]! : ascending.at(-1)!
}

function permutations(items: readonly number[]): number[][] {
  if (items.length === 0) return [[]]
  return items.flatMap((item) => permutations(items.filter((other) => other !== item)).map((rest) => [item, ...rest]))
}

export function clampChecks(): Check[] {
  const twoWay = easyTwoWay()
  const bolts = easyBolts()
  const first = tighten(fullPasses(1, orders.easyOrders.round), bolts, false, twoWay, untouched(bolts))
  const load = (steps: number, bolt: number) => (steps === 0 ? 0 : first[steps - 1]!.loads[bolt]!)
  const moved = loadsMovedByFirst(twoWay)
  // The other program has its bed as springs at nodes 5 mm apart. Given such a bed Gripbook has the same digits; its own, spread over the area, is up to 4 % apart
  // and moves by less than 0.1 % more on grids down to 1.25 mm.
  const nodal = either(percent(4), digits(5))
  const spreads = (cover: () => Cover, snug: boolean) => {
    const made = new Map<string, number[]>()
    return ([order, passes]: string[]) => {
      const known = made.get(order!) ?? spreadsAfter(orders.easyOrders[order as OrderName], snug, cover())
      made.set(order!, known)
      return known[Number(passes) - 1]!
    }
  }
  return [
    ...checksOf(orders.loadsAfterSteps, digits(1), ([steps, bolt]) => load(Number(steps), Number(bolt))),
    ...checksOf(orders.interactionOnFirst, digits(1), ([bolt]) => load(Number(bolt) + 1, 0) - load(Number(bolt), 0)),
    ...checksOf(orders.interactionAllTight, digits(1), ([bolt]) => moved[Number(bolt)]!),
    ...checksOf(orders.initialLoads, digits(1), ([bolt]) => initialLoads(load)[Number(bolt)]!),
    ...checksOf(
      orders.spreadsTwoWay,
      digits(1),
      spreads(() => twoWay, false),
    ),
    ...checksOf(
      orders.spreadsSnug,
      digits(1),
      spreads(() => twoWay, true),
    ),
    ...checksOf(orders.spreadsSnugContact, nodal, spreads(easyOneSided, true)),
    ...checksOf(orders.spreadsLooseContact, nodal, spreads(easyOneSided, false)),
    ...checksOf(orders.allOrders, digits(1), ([what]) => quantile(allSpreads(), what!)),
    ...checksOf(lossM6, percent(0.5), ([settles]) => lossOfOne(Number(settles) / 1000) / 1000),
  ]
}

function spreadsAfter(sequence: readonly number[], snug: boolean, cover: Cover): number[] {
  const bolts = easyBolts()
  const turns = tighten(fullPasses(4, sequence), bolts, snug, cover, untouched(bolts))
  return [1, 2, 3, 4].map((pass) => spreadOf(turns[pass * sequence.length - 1]!.loads, bolts))
}

/** Change of each load for one unit more on bolt 0, all tight at 1. */
function loadsMovedByFirst(cover: Cover): number[] {
  const bolts = easyBolts()
  const standing = untouched(bolts)
  tighten(fullPasses(60, orders.easyOrders.round), bolts, false, cover, standing)
  const before = standing.loads.slice()
  const wider = bolts.map((bolt, j) => ({ ...bolt, target: j === 0 ? before[0]! + 1 : bolt.target }))
  tighten([{ share: 1, visit: 1, sequence: [0] }], wider, false, cover, standing)
  return Array.from(standing.loads, (load, j) => load - before[j]!)
}

/** Loads to put in so that one pass round ends with 1 everywhere: what later bolts take away is put in before, from the last bolt back. */
function initialLoads(load: (steps: number, bolt: number) => number): number[] {
  const wanted = new Array<number>(6).fill(1)
  for (let j = 5; j >= 0; j--)
    for (let later = j + 1; later < 6; later++) wanted[j]! -= (load(later + 1, j) - load(later, j)) * wanted[later]!
  return wanted
}

/** What an M6 screw alone loses, N, when its joint gives way by so many mm: the cover is the clamped zone under its head. */
function lossOfOne(give: number): number {
  const bolts: Bolt[] = [{ target: 10_000, compliance: Number(screwM6.rows.at(-1)![1]), visit: 1 }]
  const cover = linearCover([[Number(seatM6.rows[0]![1])]])
  const standing = untouched(bolts)
  tighten(fullPasses(1, [0]), bolts, true, cover, standing)
  const before = standing.loads[0]!
  embedded(give, bolts, cover, standing)
  return before - standing.loads[0]!
}
