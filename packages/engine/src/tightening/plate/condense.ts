import { factored, type Skyline, solveInPlace } from '../../maths/skyline.ts'
import type { Bed, Cover, Point } from '../../unit.ts'
import { boxOf } from './outline.ts'
import { ALUMINIUM, bendingStiffness, onBed, type Plate, plateOf, REACH, shapeAt, valueAt } from './plate.ts'

/** A bed as one figure: N/mm³, and where nothing lies under the cover. */
export type Seating = { stiffness: number; hollows?: NonNullable<Bed['hollows']> }

export type Condensed = {
  /** Sink in mm at place i for 1 N down at place j. */
  compliance: number[][]
  /** Sink at each further place (row) for 1 N down at place j. */
  elsewhere: number[][]
  /** Step of the grid, mm. */
  grid: number
  /** How far the figures may be off, as a share of the greatest: what halving the step changed last, or what further halvings would still change, as the last two say; twice that where the thickness jumps. */
  error: number
}

/** The step is halved until this share is left to be found; finer grids cost more than a casting's own doubt is worth. */
const WANTED = 0.01
/** The same as a share of what the bolt itself sinks: a bolt on a thick rib sinks a tenth of one on a thin corner, and its neighbours feel the share. */
const WANTED_OF_OWN = 0.02
/** Multiplications that the finest grid may cost when it is factored: about two seconds. */
const MOST_WORK = 2e9
/** Up to so many a finer grid costs next to nothing, and what is only feared is reason enough for it. */
const LITTLE_WORK = 2e8

/**
 * The plate on its bed, reduced to places on it: the compliance that all tightening is computed with. The bed holds both ways here. Thickness, places in mm, modulus in MPa. The step
 * of the grid is halved until it no longer matters, or is `grid` mm when that is given. `further`: places where only the sink is wanted.
 */
export function condense(
  cover: Cover,
  bed: Seating,
  points: readonly Point[],
  grid?: number,
  further: readonly Point[] = [],
): Condensed {
  const at = (step: number) => {
    const plate = plateOf(cover, bed.hollows, step)
    const factor = factored(onBed(plate, bed.stiffness))
    const responses = points.map((place) => responseTo(plate, factor, place))
    return {
      compliance: complianceFrom(plate, responses, points),
      elsewhere: further.map((place) => responses.map((field) => valueAt(plate, field, place))),
      work: factoringWork(factor),
    }
  }
  const jumps = (cover.regions ?? []).length > 0
  let step = grid ?? firstStep(cover, bed.stiffness)
  let coarse = at(2 * step)
  let fine = at(step)
  let change = apart(coarse.compliance, fine.compliance)
  let error = (jumps ? JUMP : 1) * change.ofGreatest
  // Whether a further halving is worth its cost is judged by how much the first one brought, on a grid that costs next to nothing; so coarse a grid is not trusted for what is told.
  const isWorth = (before: Change) => isWorthHalving(change, before, jumps && 16 * fine.work <= LITTLE_WORK)
  let goOn = grid === undefined && isWorth(apart(at(4 * step).compliance, coarse.compliance))
  while (goOn && 16 * fine.work <= MOST_WORK) {
    step /= 2
    coarse = fine
    fine = at(step)
    const before = change
    change = apart(coarse.compliance, fine.compliance)
    const left = leftOver(Math.max(FASTEST, change.ofGreatest / before.ofGreatest))
    error = change.ofGreatest * (jumps ? JUMP : left)
    goOn = isWorth(before)
  }
  const { work: _, ...condensed } = fine
  return { ...condensed, grid: step, error }
}

/** Sink of every unknown for 1 N down at a place. */
export function responseTo(plate: Plate, factor: Skyline, at: Point): Float64Array {
  const load = new Float64Array(plate.size)
  const { unknowns, values } = shapeAt(plate, at)
  for (let a = 0; a < REACH; a++) load[unknowns[a]!]! += values[a]!
  return solveInPlace(factor, load)
}

/** Sink at place i for 1 N at place j, mm/N, from the responses to each. Symmetric to the last digit. */
export function complianceFrom(plate: Plate, responses: readonly Float64Array[], points: readonly Point[]): number[][] {
  const rows = points.map((at) => responses.map((field) => valueAt(plate, field, at)))
  return rows.map((row, i) => row.map((value, j) => (value + rows[j]![i]!) / 2))
}

/** (D/k)^¼ in mm: how far a cover carries the load of a bolt. @source Timoshenko and Woinowsky-Krieger, art. 57 */
export function bendingLength(cover: Cover, stiffness: number): number {
  const { young = ALUMINIUM.young, poisson = ALUMINIUM.poisson, thickness } = cover
  return (bendingStiffness(young, poisson, thickness) / stiffness) ** 0.25
}

/** A step that follows the bend of the cover and its narrow side, and is not needlessly fine. */
export function firstStep(cover: Cover, stiffness: number): number {
  const { left, right, low, high } = boxOf(cover.outline)
  const [long, short] = [Math.max(right - left, high - low), Math.min(right - left, high - low)]
  return Math.max(Math.min(bendingLength(cover, stiffness) / 4, short / 16, long / 24), long / 96)
}

/** What a halving leaves of a change at best: a bend under a point load goes with r²·ln r, which a grid follows with the square of its step. A chance quicker one promises nothing. */
const FASTEST = 0.25
/** Where the thickness jumps the true bend has a kink and the splines' has none: a grid follows it no quicker than its step, by fits and starts, so the last change may be half of what is left. */
const JUMP = 2

/** Whether further halvings would still change the figures by more than is wanted, after a last change and one before; or might, where that is `feared`. */
function isWorthHalving(change: Change, before: Change, feared: boolean): boolean {
  const left = (of: keyof Change) => change[of] * leftOver(change[of] / before[of])
  return (feared ? JUMP : 1) * left('ofGreatest') > WANTED || left('ofOwn') > WANTED_OF_OWN
}

/** What all further halvings together would still change, for 1 of the last change, when each changes `ratio` of the one before; inner corners converge no slower than by half. */
function leftOver(ratio: number): number {
  const slow = Math.min(0.5, ratio)
  return slow / (1 - slow)
}

/** Multiplications of factoring; a grid of half the step has four times the rows, each twice as long. */
function factoringWork({ size, first }: Skyline): number {
  let work = 0
  for (let i = 0; i < size; i++) work += (i - first[i]!) ** 2 / 2
  return work
}

/** The greatest change of a figure: as a share of the greatest figure, and of how far the bolts that it is of sink under themselves. */
type Change = { ofGreatest: number; ofOwn: number }

function apart(a: number[][], b: number[][]): Change {
  const own = b.map((row, i) => row[i]!)
  const most = (share: (i: number, j: number) => number) =>
    Math.max(...a.flatMap((row, i) => row.map((value, j) => Math.abs(value - b[i]![j]!) / share(i, j))))
  const greatest = Math.max(...own)
  return { ofGreatest: most(() => greatest), ofOwn: most((i, j) => Math.sqrt(own[i]! * own[j]!)) }
}
