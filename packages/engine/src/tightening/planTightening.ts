import type { Read } from '../faults.ts'
import { embedmentOf } from '../joints/boltCompliance.ts'
import { seededRandom } from '../maths/random.ts'
import { must } from '../must.ts'
import type { Face, Point, Unit } from '../unit.ts'
import type {
  Advice,
  Assumption,
  OrderAnswer,
  OrderKind,
  TighteningAnswer,
  TighteningAsked,
  TighteningProgress,
} from './answer.ts'
import { boltsOf } from './boltsOf.ts'
import { bowsOf, type Line, linesOf } from './bow.ts'
import {
  type Bolt,
  embedded,
  type Cover as Held,
  lastRounds,
  linearCover,
  type Pass,
  spreadOf,
  tighten,
  untouched,
} from './clamp/tighten.ts'
import { bedEnds, coverFaults } from './coverFaults.ts'
import { middleStiffness } from './coverUnder.ts'
import { burdenOf, handTravel, type Pattern, patternsFor, searchOrder } from './orders/index.ts'
import { bendingLength, type Condensed, condense } from './plate/condense.ts'
import { type CoverOnBed, coverOnBed } from './plate/contact.ts'
import { type BedCase, boltsBy, linearSpread, raterOf } from './rating.ts'

/** Shares of the final torque. @source gasket makers’ and flange practice: 30, 60, 100 % */
export const USUAL_SHARES: readonly number[] = [0.3, 0.6, 1]

/** More rounds than this and the order is at fault. @source about six rounds in JIS B 2251 (from memory); a few more to see that nothing moves */
const MOST_ROUNDS = 10
/** Orders that one search tries, with 24 bolts and fewer: a quarter of a minute on a slow machine. All orders of eight bolts are fewer. */
const EFFORT = 45_000
/** An order is truly better than a pattern that can be remembered from a tenth on, and when a wrench could tell: from one part in a hundred of the clamp on. */
const [TRULY, TELLING] = [0.9, 0.01]
/** A bolt that moves another's load by less than this share of its own is not felt. */
const UNFELT = 0.002
/** A change of a load that is worth a word, as a share of its target. */
const NOTABLE = 0.01
const SEED = 20_011

const NAMES: Readonly<Record<OrderKind, string>> = {
  stated: 'as stated',
  cross: 'cross pattern',
  spiral: 'spiral from the middle',
  rails: 'long sides from the middle',
  corners: 'corners first',
  round: 'round the edge',
  found: 'found by search',
}

/**
 * In which order and in how many passes a face is tightened, and what clamp each order leaves: the stated order, the patterns that suit the outline, and one that is searched for. Loads in N,
 * lengths in mm. What keeps it from being computed comes back as faults, each with its place in the unit.
 * @source the model: plate on an elastic bed that only pushes, bolts as springs that only pull; see plate/ and clamp/
 */
export function planTightening(
  unit: Unit,
  faceId: string,
  asked: TighteningAsked = {},
  told: (progress: TighteningProgress) => void = () => {},
): Read<TighteningAnswer> {
  const index = unit.faces.findIndex(({ id }) => id === faceId)
  const face = unit.faces[index]
  must(face !== undefined, 'planTightening: there is no such face', { faceId })
  const [fault, ...more] = coverFaults(face, ['faces', index])
  if (fault !== undefined) return { ok: false, faults: [fault, ...more] }

  told({ what: 'plate', done: 0 })
  const shares = asked.shares ?? USUAL_SHARES
  const { bolts, assumed } = boltsOf(unit, face)
  const places = face.holes.map(({ at, locates }) => ({ at: at!, ...(locates === undefined ? {} : { locates }) }))
  const beds = bedCases(face)
  const lines = linesOf(face)
  const condensed = beds.map((stiffness, i) => {
    told({ what: 'plate', done: i / beds.length })
    return condenseFace(face, stiffness, lines)
  })
  const middle = condensed[Math.floor(beds.length / 2)]!
  const cover = coverOnBed(
    face.cover!,
    seating(face, beds[Math.floor(beds.length / 2)]!),
    places.map(({ at }) => at),
    middle.fine,
  )
  const { compliance } = middle.fine
  const bench: Bench = {
    face,
    bolts,
    snug: face.snug ?? false,
    places: places.map(({ at }) => at),
    lines,
    cases: condensed.map(({ bedCase }) => bedCase),
    cover,
    held: isFelt(compliance, bolts) ? cover.lie : linearCover(compliance),
    round: patternsFor(places).find(({ kind }) => kind === 'round')?.sequence ?? [...places.keys()],
  }

  const plans: { kind: OrderKind; passes: Pass[] }[] = []
  if (face.order !== undefined && face.order.length > 0)
    plans.push({ kind: 'stated', passes: statedPasses(face, bolts) })
  plans.push(...patternPlans(places, bolts, shares))
  const orders: OrderAnswer[] = []
  const searching = (asked.search ?? true) && places.length > 2
  const add = ({ kind, passes }: { kind: OrderKind; passes: Pass[] }) => {
    told({ what: 'orders', done: orders.length / (plans.length + (searching ? 1 : 0)) })
    orders.push(orderAnswer(kind, passes, bench))
  }
  for (const plan of plans) add(plan)
  if (searching) {
    const passes = searched(plans, places, bench, shares, (done) => told({ what: 'search', done }))
    const isKnown = plans.some((plan) => sameOrder(plan.passes, passes))
    // The search counts on a bed that holds both ways; what is told counts on one that only pushes, and there it must hold too.
    if (!isKnown) {
      add({ kind: 'found', passes })
      const best = Math.min(...orders.filter(isPattern).map(worstOf))
      if (worstOf(orders[orders.length - 1]!) > best) orders.pop()
    }
  }
  told({ what: 'orders', done: 1 })
  const advice = adviceOn(orders)
  return {
    ok: true,
    value: {
      gripbook: 'tightening/1',
      face: faceId,
      holes: face.holes.map(({ id }) => id),
      compliance: middle.fine.compliance,
      accuracy: { error: middle.fine.error, grid: middle.fine.grid },
      bolts: bolts.map(({ target, compliance, visit }, i) => ({
        hole: face.holes[i]!.id,
        target,
        stiffness: 1 / compliance,
        visit,
      })),
      bed: { soft: beds[0]!, middle: beds[Math.floor(beds.length / 2)]!, stiff: beds[beds.length - 1]! },
      orders,
      advice,
      assumptions: [
        { what: 'estimate' },
        { what: 'flat' },
        ...(face.cover?.young === undefined || face.cover.poisson === undefined
          ? [{ what: 'aluminium' } as const]
          : []),
        ...assumed,
        ...thick(face, beds[Math.floor(beds.length / 2)]!),
        ...leftOut(face),
        ...liftOff(orders[advice.order]!, bench),
      ],
    },
  }
}

/** Whether any bolt feels what another does. Where none does, what touches where need not be asked at every turn. */
function isFelt(compliance: readonly number[][], bolts: readonly Bolt[]): boolean {
  return compliance.some((row, i) =>
    row.some((c, j) => j !== i && Math.abs(c) > UNFELT * (row[i]! + bolts[i]!.compliance)),
  )
}

/** All that an order is tried on. `round`: the bolts once round, for the last rounds. */
type Bench = {
  face: Face
  bolts: readonly Bolt[]
  snug: boolean
  places: readonly Point[]
  lines: readonly Line[]
  cases: readonly BedCase[]
  cover: CoverOnBed
  /** What answers to the bolts at every turn. */
  held: Held
  round: readonly number[]
}

/** Soft, middle and stiff; one figure when the bed is one. */
function bedCases(face: Face): number[] {
  const { lo, hi } = bedEnds(face)
  return lo === hi ? [lo] : [lo, middleStiffness({ lo, hi }), hi]
}

function seating(face: Face, stiffness: number) {
  const hollows = face.bed?.hollows
  return { stiffness, ...(hollows === undefined ? {} : { hollows }) }
}

function condenseFace(face: Face, stiffness: number, lines: readonly Line[]): { fine: Condensed; bedCase: BedCase } {
  const stated = lines.filter(({ name }) => name !== null)
  const fine = condense(
    face.cover!,
    seating(face, stiffness),
    face.holes.map(({ at }) => at!),
    undefined,
    stated.flatMap(({ points }) => points),
  )
  let from = 0
  const rows = stated.map(({ points }) => {
    from += points.length
    return fine.elsewhere.slice(from - points.length, from)
  })
  return { fine, bedCase: { compliance: fine.compliance, lines: rows } }
}

/** The manual's passes; each belongs to the latest visit of its bolts. */
function statedPasses(face: Face, bolts: readonly Bolt[]): Pass[] {
  const number = new Map(face.holes.map(({ id }, i) => [id, i]))
  return face.order!.map(({ share, sequence }) => {
    const numbers = sequence.map((id) => number.get(id)!)
    return { share, visit: Math.max(...numbers.map((j) => bolts[j]!.visit)), sequence: numbers }
  })
}

/** Visit after visit, each with all its shares. */
function passesOf(
  visits: readonly { visit: number; sequence: readonly number[] }[],
  shares: readonly number[],
): Pass[] {
  return visits.flatMap(({ visit, sequence }) => shares.map((share) => ({ share, visit, sequence })))
}

function visitsOf(bolts: readonly Bolt[]): { visit: number; members: number[] }[] {
  const visits = [...new Set(bolts.map(({ visit }) => visit))].sort((a, b) => a - b)
  return visits.map((visit) => ({ visit, members: [...bolts.keys()].filter((j) => bolts[j]!.visit === visit) }))
}

/** The patterns of the first visit, each carried on through later visits by the same pattern, or by the shop's where that one does not suit. */
function patternPlans(
  places: readonly { at: Point; locates?: boolean }[],
  bolts: readonly Bolt[],
  shares: readonly number[],
): { kind: OrderKind; passes: Pass[] }[] {
  const visits = visitsOf(bolts).map(({ visit, members }) => ({
    visit,
    patterns: patternsFor(members.map((j) => places[j]!)).map(
      ({ kind, sequence }): Pattern => ({ kind, sequence: sequence.map((k) => members[k]!) }),
    ),
  }))
  return visits[0]!.patterns.map(({ kind }) => ({
    kind,
    passes: passesOf(
      visits.map(({ visit, patterns }) => ({
        visit,
        sequence: (patterns.find((other) => other.kind === kind) ?? patterns[0]!).sequence,
      })),
      shares,
    ),
  }))
}

/** Visit by visit the order that the search finds, each on what is tight already. */
function searched(
  plans: readonly { kind: OrderKind; passes: Pass[] }[],
  places: readonly { at: Point; locates?: boolean }[],
  { bolts, snug, cases }: Bench,
  shares: readonly number[],
  told: (done: number) => void,
): Pass[] {
  const visits = visitsOf(bolts)
  const passes: Pass[] = []
  visits.forEach(({ visit, members }, v) => {
    const own = members.map((j) => places[j]!)
    const rate = raterOf(cases, bolts, passes, visit, shares, snug)
    const starts = plans
      .filter(({ kind }) => kind !== 'stated')
      .map((plan) => plan.passes.find((pass) => pass.visit === visit)!.sequence.map((j) => members.indexOf(j)))
    const among = new Int32Array(members.length)
    const found = searchOrder({
      count: members.length,
      starts,
      rate: (sequence) => {
        for (let k = 0; k < among.length; k++) among[k] = members[sequence[k]!]!
        return rate(among)
      },
      burden: burdenOf(own),
      effort: effortFor(members.length, cases.length),
      random: seededRandom(SEED),
      told: (done) => told((v + done) / visits.length),
    })
    passes.push(...passesOf([{ visit, sequence: found.sequence.map((k) => members[k]!) }], shares))
  })
  return passes
}

/** A sum grows with the third power of the bolts; so that many bolts do not take many minutes, fewer orders are tried. */
function effortFor(bolts: number, cases: number): number {
  return bolts <= 8 ? EFFORT : Math.ceil((EFFORT / cases) * Math.min(1, (24 / bolts) ** 3))
}

function orderAnswer(kind: OrderKind, passes: readonly Pass[], bench: Bench): OrderAnswer {
  const { face, bolts, snug, cover, held, lines, cases, round, places } = bench
  const ids = face.holes.map(({ id }) => id)
  const standing = untouched(bolts)
  const turns = tighten(passes, bolts, snug, held, standing)
  const loads = [...standing.loads]
  const { field } = cover.lie(() => Float64Array.from(loads))
  const ends = passes.map((_, p) => turns.findLast(({ pass }) => pass === p + 1)?.loads)
  const rounds = lastRounds(round, bolts, held, standing, MOST_ROUNDS)
  return {
    kind,
    name: NAMES[kind],
    passes: passes.map(({ share, visit, sequence }) => ({ share, visit, sequence: sequence.map((j) => ids[j]!) })),
    steps: turns
      .map((turn) => ({ ...turn, hole: ids[turn.bolt]!, loads: [...turn.loads] }))
      .map(({ bolt: _, ...step }) => step),
    spread: spreadOf(loads, bolts),
    spreads: passes.map(({ visit }, p) => {
      const there = boltsBy(bolts, visit)
      return spreadOf(
        there.map((j) => ends[p]![j]!),
        there.map((j) => bolts[j]!),
      )
    }),
    overBed: cases.map((one) => linearSpread(one.compliance, bolts, passes, snug)),
    ...bowsOf(lines, cover.plate, field),
    travel: handTravel(
      places.map((at) => ({ at })),
      passes.flatMap(({ sequence }) => sequence),
    ),
    lastRounds: { ...rounds, loads: [...standing.loads], spread: spreadOf(standing.loads, bolts) },
    ...settled(passes, bench),
  }
}

/** After the passes, when the surfaces have given way; only where the face says how rough they are. */
function settled(passes: readonly Pass[], { face, bolts, snug, held }: Bench): Pick<OrderAnswer, 'settled'> {
  if (face.embedment === undefined) return {}
  const standing = untouched(bolts)
  tighten(passes, bolts, snug, held, standing)
  embedded(embedmentOf(face.embedment.roughness, face.embedment.interfaces ?? 1) / 1000, bolts, held, standing)
  return { settled: { loads: [...standing.loads], spread: spreadOf(standing.loads, bolts) } }
}

function sameOrder(a: readonly Pass[], b: readonly Pass[]): boolean {
  return a.length === b.length && a.every(({ sequence }, p) => sequence.join() === b[p]!.sequence.join())
}

const isPattern = ({ kind }: OrderAnswer): boolean => kind !== 'stated' && kind !== 'found'

/** The figure by which orders are compared: the spread, and where the bed is a range the worst over it. */
function worstOf({ spread, overBed }: OrderAnswer): number {
  return overBed.length === 1 ? spread : Math.max(spread, ...overBed)
}

function isTrulyBetter(one: OrderAnswer, other: OrderAnswer): boolean {
  return worstOf(one) <= TRULY * worstOf(other) && worstOf(one) <= worstOf(other) - TELLING
}

/** The stated order rules. Else the found one where it is truly better, or the shop's pattern unless another pattern is. */
function adviceOn(orders: readonly OrderAnswer[]): Advice {
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

function thick(face: Face, stiffness: number): Assumption[] {
  const length = bendingLength(face.cover!, stiffness)
  return length < face.cover!.thickness ? [{ what: 'thick', bendingLength: length }] : []
}

function leftOut(face: Face): Assumption[] {
  if (face.order === undefined || face.order.length === 0) return []
  const reached = new Set(face.order.flatMap(({ sequence }) => sequence))
  const holes = face.holes.map(({ id }) => id).filter((id) => !reached.has(id))
  return holes.length > 0 ? [{ what: 'left out', holes }] : []
}

/** How far the loads would be off if the bed could pull. */
function liftOff({ passes, steps }: OrderAnswer, { face, bolts, snug, cases }: Bench): Assumption[] {
  const number = new Map(face.holes.map(({ id }, i) => [id, i]))
  const standing = untouched(bolts)
  const middle = cases[Math.floor(cases.length / 2)]!
  tighten(
    passes.map((pass) => ({ ...pass, sequence: pass.sequence.map((id) => number.get(id)!) })),
    bolts,
    snug,
    linearCover(middle.compliance),
    standing,
  )
  const told = steps[steps.length - 1]!.loads
  const share = Math.max(...bolts.map(({ target }, j) => Math.abs(told[j]! - standing.loads[j]!) / target))
  return share > NOTABLE ? [{ what: 'lift-off', share }] : []
}
