/**
 * Which reading next? For every quantity that could be read: how many bits it is expected to take off the doubt about the holes, for each
 * minute of work. A hole's own quantity tells of the rest only through the kind in that hole, so its gain is the information between the
 * reading and that kind. A kind's length tells of all holes at once: the sum over them, which is an upper bound.
 */
import { type AssignmentTask, assignablePairs, cheapestAssignment } from '../maths/assignment.ts'
import type { NextReading } from './answer.ts'
import { fitChances, type HoleQuantity, lengthPrior, likelySpans, type ReadQuantity } from './chance.ts'
import type { Judged } from './pair.ts'
import type { HoleSpans, KindSpans, Problem } from './problem.ts'
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

const CELLS = 12
const LEAST_BITS = 0.005

export function nextReading(
  problem: Problem,
  judged: Judged[],
  task: AssignmentTask,
  may: Uint8Array,
  chance: Float64Array,
): (NextReading & { holes: number[] }) | null {
  const { bins } = task
  const open = problem.holes.map((_, h) => h).filter((h) => kindsOf(may, h, bins).length > 1)
  let best: (NextReading & { holes: number[] }) | null = null
  const consider = (
    quantity: ReadQuantity | 'turns',
    of: { hole: number; by?: number } | { kind: number },
    bits: number,
  ) => {
    const { minutes } = WORK[quantity]
    if (bits < LEAST_BITS || (best && bits / minutes <= best.bits / best.minutes + 1e-9)) return
    const atHole = 'hole' in of
    best = {
      reading: {
        quantity,
        of: atHole ? problem.holes[of.hole]!.source.id : problem.kinds[of.kind]!.source.id,
        place: atHole ? 'hole' : 'kind',
        ...(atHole && of.by !== undefined ? { kind: problem.kinds[of.by]!.source.id } : {}),
      },
      bits,
      minutes,
      settles: [],
      why: '',
      holes: atHole ? [of.hole] : open.filter((h) => may[h * bins + of.kind]),
    }
  }
  for (const h of open) {
    const hole = problem.holes[h]!
    const spans = likelySpans(hole)
    for (const quantity of ['grip', 'bottomDepth', 'threadDepth'] as HoleQuantity[]) {
      if (quantity === 'bottomDepth' && !hole.blind) continue
      if (width(spans[quantity]) > 2 * WORK[quantity].plusMinus * NANOMETRES)
        consider(quantity, { hole: h }, gain(hole, problem.kinds, h, bins, may, chance, quantity, spans[quantity]))
    }
    // A bolt turned in by hand tells the grip too, by as much as its own length, lead and the count of turns leave sure.
    const trial = likeliest(may, chance, h, bins)
    const cells = Math.floor(width(spans.grip) / turnBlur(problem.kinds[trial]!))
    if (cells > 1)
      consider(
        'turns',
        { hole: h, by: trial },
        gain(hole, problem.kinds, h, bins, may, chance, 'grip', spans.grip, { cells }),
      )
  }
  problem.kinds.forEach((kind, k) => {
    const span = lengthPrior(kind)
    const users = open.filter((h) => may[h * bins + k] && judged[h * bins + k]!.verdict === 'may')
    if (users.length === 0 || width(span) <= 2 * WORK.length.plusMinus * NANOMETRES) return
    const bits = users.reduce(
      (sum, h) => sum + gain(problem.holes[h]!, problem.kinds, h, bins, may, chance, 'length', span, { only: k }),
      0,
    )
    consider('length', { kind: k }, bits)
  })
  return best && named(best, problem, task, may, chance, open)
}

function width({ lo, hi }: Span): number {
  return hi - lo
}

function likeliest(may: Uint8Array, chance: Float64Array, hole: number, bins: number): number {
  return kindsOf(may, hole, bins).reduce((a, b) => (chance[hole * bins + b]! > chance[hole * bins + a]! ? b : a))
}

/** How wide the grip still is after a count of turns, nm. */
function turnBlur({ threads, tip, length }: KindSpans): number {
  return 2 * WORK.turns.plusMinus * threads[0]!.pitch * NANOMETRES + tip.hi + width(length)
}

function kindsOf(may: Uint8Array, hole: number, bins: number): number[] {
  return Array.from({ length: bins - 1 }, (_, k) => k).filter((k) => may[hole * bins + k])
}

/**
 * Information in bits between a quantity, even over its span, and the kind in a hole. `only`: the quantity is this kind's own; `cells`: into
 * how many parts the reading tells the span apart.
 */
function gain(
  hole: HoleSpans,
  kinds: KindSpans[],
  h: number,
  bins: number,
  may: Uint8Array,
  chance: Float64Array,
  quantity: ReadQuantity,
  span: Span,
  { only, cells: count = CELLS }: { only?: number; cells?: number } = {},
): number {
  const parts = Math.min(count, CELLS)
  const here = kindsOf(may, h, bins).filter((k) => chance[h * bins + k]! > 0)
  const joint = here.map((k) => {
    const cells =
      only !== undefined && only !== k
        ? new Array<number>(parts).fill(1)
        : fitChances(hole, kinds[k]!, quantity, span, parts)
    const all = cells.reduce((a, b) => a + b, 0)
    return cells.map((cell) => chance[h * bins + k]! * (all > 0 ? cell / all : 1 / parts))
  })
  let bits = 0
  for (let c = 0; c < parts; c++) {
    const cell = joint.reduce((sum, row) => sum + row[c]!, 0)
    here.forEach((k, i) => {
      const p = joint[i]![c]!
      if (p > 0) bits += p * Math.log2(p / (cell * chance[h * bins + k]!))
    })
  }
  return Math.max(0, bits)
}

/** Adds which holes are settled if the reading says what is most likely, and the sentence. */
function named(
  best: NextReading & { holes: number[] },
  problem: Problem,
  task: AssignmentTask,
  may: Uint8Array,
  chance: Float64Array,
  open: number[],
): NextReading & { holes: number[] } {
  const { bins } = task
  const cost = Float64Array.from(may, (m) => (m ? 0 : Number.POSITIVE_INFINITY))
  for (const h of best.holes) {
    const kind = likeliest(may, chance, h, bins)
    for (let b = 0; b < bins; b++) if (b !== kind) cost[h * bins + b] = Number.POSITIVE_INFINITY
  }
  const assignment = cheapestAssignment({ ...task, cost })
  const pairs = assignment && assignablePairs({ ...task, cost }, assignment.bin)
  const settled = pairs ? open.filter((h) => kindsOf(pairs, h, bins).length === 1) : best.holes
  const settles = settled.map((h) => problem.holes[h]!.source.id)
  const { quantity, of, place, kind } = best.reading
  const what = kind
    ? `count the turns of a ${kind} in hole ${of} until its head seats`
    : `measure the ${quantityWords(quantity)} of ${place} ${of}`
  const why = `${what}: ${settles.length > 0 ? `likely to settle ${list(settles)}` : 'it says most of what is still open'}`
  return { ...best, settles, why }
}
