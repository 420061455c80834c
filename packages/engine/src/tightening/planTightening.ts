import type { Read } from '../faults.ts'
import { seededRandom } from '../maths/random.ts'
import { must } from '../must.ts'
import type { Face, Unit } from '../unit.ts'
import { adviceOn, isPattern, worstOf } from './advice.ts'
import type { Assumption, OrderAnswer, TighteningAnswer, TighteningAsked, TighteningProgress } from './answer.ts'
import { boltsOf } from './boltsOf.ts'
import { type Line, linesOf } from './bow.ts'
import { type Bolt, linearCover, type Pass } from './clamp/tighten.ts'
import { bedEnds, coverFaults } from './coverFaults.ts'
import { coverOf, hasThicknessRange } from './coverOf.ts'
import { middleStiffness } from './coverUnder.ts'
import { USUAL_SHARES } from './facePasses.ts'
import { type Bench, liftOff, orderAnswer } from './orderAnswer.ts'
import { burdenOf, type Places, patternsFor, searchOrder } from './orders/index.ts'
import { boltsByVisit, type Plan, passesOf, patternPlans, sameOrder, statedPasses } from './passes.ts'
import { bendingLength, type Condensed, condense } from './plate/condense.ts'
import { coverOnBed } from './plate/contact.ts'
import { type BedCase, raterOf } from './rating.ts'

/** Orders that one search tries, with 24 bolts and fewer: a quarter of a minute on a slow machine. All orders of eight bolts are fewer. */
const EFFORT = 45_000
/** A bolt that moves another's load by less than this share of its own is not felt. */
const UNFELT = 0.002
const SEED = 20_011

/**
 * In which order and in how many passes a face is tightened, and what clamp each order leaves: the stated order, the patterns that suit the outline, and one that is searched for. Loads in N,
 * lengths in mm. What keeps it from being computed comes back as faults, each with its place in the unit. `told` hears how far it is, and once, before the search, all that is known without it.
 * @source the model: plate on an elastic bed that only pushes, bolts as springs that only pull; see plate/ and clamp/
 */
export function planTightening(
  unit: Unit,
  faceId: string,
  asked: TighteningAsked = {},
  told: (progress: TighteningProgress, soFar?: TighteningAnswer) => void = () => {},
): Read<TighteningAnswer> {
  const index = unit.faces.findIndex(({ id }) => id === faceId)
  const face = unit.faces[index]
  must(face !== undefined, 'planTightening: there is no such face', { faceId })
  const [fault, ...more] = coverFaults(face, ['faces', index])
  if (fault !== undefined) return { ok: false, faults: [fault, ...more] }

  const { bolts, assumed } = boltsOf(unit, face)
  const shares = asked.shares ?? USUAL_SHARES
  const places = face.holes.map(({ at }) => ({ at: at! }))
  const beds = bedCases(face)
  const middleBed = beds[Math.floor(beds.length / 2)]!
  const lines = linesOf(face)
  const condensed = beds.map((stiffness, i) => {
    told({ what: 'plate', done: i / beds.length })
    return condenseFace(face, stiffness, lines)
  })
  const { fine, bedCase: middle } = condensed[beds.indexOf(middleBed)]!
  const cover = coverOnBed(
    coverOf(face),
    seating(face, middleBed),
    places.map(({ at }) => at),
    fine,
  )
  const bench: Bench = {
    face,
    bolts,
    snug: face.snug ?? false,
    places: places.map(({ at }) => at),
    lines,
    cases: condensed.map(({ bedCase }) => bedCase),
    middle,
    cover,
    held: isFelt(fine.compliance, bolts) ? cover.lie : linearCover(fine.compliance),
    round: patternsFor(places).find(({ kind }) => kind === 'round')?.sequence ?? [...places.keys()],
  }
  const answerWith = (orders: OrderAnswer[]): TighteningAnswer => {
    const advice = adviceOn(orders)
    return {
      gripbook: 'tightening/1',
      face: faceId,
      holes: face.holes.map(({ id }) => id),
      compliance: fine.compliance,
      accuracy: { error: fine.error, grid: fine.grid },
      bolts: bolts.map(({ target, compliance, visit }, i) => ({
        hole: face.holes[i]!.id,
        target,
        stiffness: 1 / compliance,
        visit,
      })),
      bed: { soft: beds[0]!, middle: middleBed, stiff: beds[beds.length - 1]! },
      orders,
      advice,
      assumptions: [
        { what: 'estimate' },
        { what: 'flat' },
        ...(face.cover?.young === undefined || face.cover.poisson === undefined
          ? [{ what: 'aluminium' } as const]
          : []),
        ...(hasThicknessRange(face) ? [{ what: 'thickness' } as const] : []),
        ...assumed,
        ...thick(face, middleBed),
        ...leftOut(face),
        ...liftOff(orders[advice.order]!, bench),
      ],
    }
  }

  const plans: Plan[] = []
  if (face.order !== undefined && face.order.length > 0) plans.push({ kind: 'stated', passes: statedPasses(face) })
  plans.push(...patternPlans(places, bolts, shares))
  const searching = (asked.search ?? true) && places.length > 2
  const known = plans.map(({ kind, passes }, i) => {
    told({ what: 'orders', done: i / (plans.length + (searching ? 1 : 0)) })
    return orderAnswer(kind, passes, bench)
  })
  if (!searching) return { ok: true, value: answerWith(known) }

  told({ what: 'search', done: 0 }, answerWith(known))
  const passes = searched(plans, places, bench, shares, (done) => told({ what: 'search', done }))
  if (plans.some((plan) => sameOrder(plan.passes, passes))) return { ok: true, value: answerWith(known) }
  told({ what: 'orders', done: plans.length / (plans.length + 1) })
  const found = orderAnswer('found', passes, bench)
  // The search counts on a bed that holds both ways; what is told counts on one that only pushes, and there it must hold too.
  const isWorse = worstOf(found) > Math.min(...known.filter(isPattern).map(worstOf))
  return { ok: true, value: answerWith(isWorse ? known : [...known, found]) }
}

/** Whether any bolt feels what another does. Where none does, what touches where need not be asked at every turn. */
function isFelt(compliance: readonly number[][], bolts: readonly Bolt[]): boolean {
  return compliance.some((row, i) =>
    row.some((c, j) => j !== i && Math.abs(c) > UNFELT * (row[i]! + bolts[i]!.compliance)),
  )
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
    coverOf(face),
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

/** Visit by visit the order that the search finds, each on what is tight already. */
function searched(
  plans: readonly Plan[],
  places: Places,
  { bolts, snug, cases }: Bench,
  shares: readonly number[],
  told: (done: number) => void,
): Pass[] {
  const visits = boltsByVisit(bolts)
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
      rate: (sequence, bound) => {
        for (let k = 0; k < among.length; k++) among[k] = members[sequence[k]!]!
        return rate(among, bound)
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

/** So that many bolts do not take many minutes, fewer orders are tried: half a minute with 60. */
function effortFor(bolts: number, cases: number): number {
  return bolts <= 8 ? EFFORT : Math.ceil((EFFORT / cases) * Math.min(1, (24 / bolts) ** 2))
}

function thick(face: Face, stiffness: number): Assumption[] {
  const cover = coverOf(face)
  const length = bendingLength(cover, stiffness)
  return length < cover.thickness ? [{ what: 'thick', bendingLength: length }] : []
}

function leftOut(face: Face): Assumption[] {
  if (face.order === undefined || face.order.length === 0) return []
  const reached = new Set(face.order.flatMap(({ sequence }) => sequence))
  const holes = face.holes.map(({ id }) => id).filter((id) => !reached.has(id))
  return holes.length > 0 ? [{ what: 'left out', holes }] : []
}
