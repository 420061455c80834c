/**
 * Which reading next? For every quantity that could be read: how many bits it is expected to take off the doubt about the holes, for each
 * minute of work.
 *
 * While a kind may be in a hole, a quantity of the hole lies in the range in which that kind can fit; a reading outside excludes the kind.
 * So the gain is the information between the reading and the kind in the hole, and what the reading tells of other holes it tells through
 * that kind alone (data processing inequality, with equality here). A kind's length tells of all its holes at once: the sum over them, which is
 * an upper bound.
 */
import { type AssignmentTask, assignablePairs, cheapestAssignment } from '../maths/assignment.ts'
import type { NextReading } from './answer.ts'
import { lengthPrior, likelySpans } from './chance.ts'
import { fitRanges, type Judged, type ReadQuantity } from './pair.ts'
import type { KindSpans, Problem } from './problem.ts'
import { NANOMETRES, type Span } from './span.ts'
import { list, quantityWords } from './words.ts'

/** Minutes that a reading takes at the bench, and how wide its result still is (mm, both ways): common practice, no source. */
const WORK: Record<ReadQuantity | 'turns', { minutes: number; plusMinus: number }> = {
  grip: { minutes: 1, plusMinus: 0.1 },
  threadDepth: { minutes: 1.5, plusMinus: 0.5 },
  bottomDepth: { minutes: 0.5, plusMinus: 0.1 },
  length: { minutes: 0.3, plusMinus: 0.1 },
  turns: { minutes: 0.7, plusMinus: 0.5 },
}

const CELLS = 24
/** Where no reading settles anything by itself, the quickest is still the way on. */
const LEAST_BITS = 1e-4
/** A kind that may be in a hole is never counted as less likely than this: to settle a hole it has to be excluded all the same. */
const DOUBT = 0.05

type Advice = NextReading & { holes: number[] }
type Ranges = Record<ReadQuantity, Span>

export function nextReading(
  problem: Problem,
  judged: Judged[],
  task: AssignmentTask,
  may: Uint8Array,
  chance: Float64Array,
): Advice | null {
  const { bins } = task
  const { holes, kinds } = problem
  const open = holes.map((_, h) => h).filter((h) => kindsOf(may, h, bins).length > 1)
  const ranges = new Map<number, Ranges>()
  for (const h of open)
    for (const k of kindsOf(may, h, bins)) {
      const range = fitRanges(holes[h]!, kinds[k]!)
      if (range) ranges.set(h * bins + k, range)
    }
  /** Bits between a quantity and the kind in hole h; where the quantity is a kind's own, only that kind's range tells. */
  const gain = (h: number, quantity: ReadQuantity, span: Span, blur: number, only?: number) =>
    information(
      kindsOf(may, h, bins).map((k) => ({
        chance: Math.max(DOUBT, chance[h * bins + k]!),
        range: only === undefined || only === k ? (ranges.get(h * bins + k)?.[quantity] ?? span) : span,
      })),
      span,
      blur,
    )
  let best: Advice | null = null
  const rate = ({ bits, minutes }: Advice) => Math.max(bits, LEAST_BITS) / minutes
  const consider = (reading: Advice['reading'], bits: number, holes: number[]) => {
    const { minutes } = WORK[reading.quantity as ReadQuantity | 'turns']
    const advice: Advice = { reading, bits, minutes, holes, settles: [], why: '' }
    if (!best || rate(advice) > rate(best) + 1e-9) best = advice
  }
  for (const h of open) {
    const hole = holes[h]!
    const of = hole.source.id
    const spans = likelySpans(hole)
    for (const quantity of ['grip', 'bottomDepth', 'threadDepth'] as const) {
      const blur = 2 * WORK[quantity].plusMinus * NANOMETRES
      if (width(spans[quantity]) <= blur || (quantity === 'bottomDepth' && !hole.blind)) continue
      consider({ quantity, of, place: 'hole' }, gain(h, quantity, spans[quantity], blur), [h])
    }
    // A bolt that is sure to seat tells the grip too, by as much as its own length, lead and the count of turns leave sure.
    const trial = kindsOf(may, h, bins).find((k) => judged[h * bins + k]!.verdict === 'fits')
    if (trial === undefined || problem.trials.some((line) => line.hole === h && line.kind === trial)) continue
    const blur = turnBlur(kinds[trial]!)
    if (width(spans.grip) > blur)
      consider(
        { quantity: 'turns', of, place: 'hole', kind: kinds[trial]!.source.id },
        gain(h, 'grip', spans.grip, blur),
        [h],
      )
  }
  kinds.forEach((kind, k) => {
    const span = lengthPrior(kind)
    const users = open.filter((h) => may[h * bins + k])
    const blur = 2 * WORK.length.plusMinus * NANOMETRES
    if (users.length === 0 || width(span) <= blur) return
    const bits = users.reduce((sum, h) => sum + gain(h, 'length', span, blur, k), 0)
    consider({ quantity: 'length', of: kind.source.id, place: 'kind' }, bits, users)
  })
  return best && named(best, problem, task, may, chance, open)
}

function width({ lo, hi }: Span): number {
  return hi - lo
}

/** How wide the grip still is after a count of turns, nm. */
function turnBlur({ threads, tip, length }: KindSpans): number {
  return 2 * WORK.turns.plusMinus * threads[0]!.pitch * NANOMETRES + tip.hi + width(length)
}

function kindsOf(may: Uint8Array, hole: number, bins: number): number[] {
  const kinds: number[] = []
  for (let k = 0; k < bins - 1; k++) if (may[hole * bins + k]) kinds.push(k)
  return kinds
}

/**
 * Information in bits between a value, even over each kind's own range within `span`, and the kind. A reading with `blur` excludes a kind
 * only when all of it lies outside the kind's range.
 */
function information(kinds: { chance: number; range: Span }[], span: Span, blur: number): number {
  const all = kinds.reduce((sum, { chance }) => sum + chance, 0)
  const joint = kinds.map(({ chance, range }) => {
    const lo = range.lo - blur / 2
    const hi = range.hi + blur / 2
    const cells = new Float64Array(CELLS)
    let sum = 0
    for (let c = 0; c < CELLS; c++) {
      const value = span.lo + ((c + 0.5) / CELLS) * width(span)
      if (value < lo || value > hi) continue
      cells[c] = 1
      sum++
    }
    if (sum > 0) for (let c = 0; c < CELLS; c++) cells[c]! *= chance / all / sum
    return cells
  })
  let bits = 0
  for (let c = 0; c < CELLS; c++) {
    let cell = 0
    for (const row of joint) cell += row[c]!
    joint.forEach((row, i) => {
      if (row[c]! > 0) bits += row[c]! * Math.log2(row[c]! / (cell * (kinds[i]!.chance / all)))
    })
  }
  return Math.max(0, bits)
}

/** Adds which holes are settled if the reading says what is most likely, and the sentence. */
function named(
  best: Advice,
  problem: Problem,
  task: AssignmentTask,
  may: Uint8Array,
  chance: Float64Array,
  open: number[],
): Advice {
  const { bins } = task
  const cost = Float64Array.from(may, (m) => (m ? 0 : Number.POSITIVE_INFINITY))
  for (const h of best.holes) {
    const kind = kindsOf(may, h, bins).reduce((a, b) => (chance[h * bins + b]! > chance[h * bins + a]! ? b : a))
    for (let b = 0; b < bins; b++) if (b !== kind) cost[h * bins + b] = Number.POSITIVE_INFINITY
  }
  const assignment = cheapestAssignment({ ...task, cost })
  const pairs = assignment && assignablePairs({ ...task, cost }, assignment.bin)
  const settled = pairs && best.bits > LEAST_BITS ? open.filter((h) => kindsOf(pairs, h, bins).length === 1) : []
  const settles = settled.map((h) => problem.holes[h]!.source.id)
  const { quantity, of, place, kind } = best.reading
  const what = kind
    ? `count the turns of a ${kind} in hole ${of} until its head seats`
    : `measure the ${quantityWords(quantity)} of ${place} ${of}`
  const why = `${what}: ${settles.length > 0 ? `likely to settle ${list(settles)}` : 'it is a step; no reading settles a hole by itself'}`
  return { ...best, settles, why }
}
