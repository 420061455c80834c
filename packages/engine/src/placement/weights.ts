/**
 * How likely a pair is before the counts are looked at: design habit, as found, units before, and how well the readings agree.
 * The figures here are assumptions: common practice, no source. They rank what the readings leave open and never exclude anything.
 */
import { standardLengths } from '../threads/index.ts'
import type { History, Material } from '../unit.ts'
import { fitChance } from './chance.ts'
import { type Judged, sectionOf } from './pair.ts'
import { FOUND_UNKNOWN, type HoleSpans, type KindSpans, type Problem } from './problem.ts'
import { NANOMETRES } from './span.ts'

export type Weights = {
  /** How likely each target is that the designer may have aimed at; adds up to 1. */
  targets: number[]
  /** −ln of the weight of each pair that does not hang on the target, by pair number. */
  own: Float64Array
  /** −ln of the habit weight of each pair, one array for each target. */
  habit: Float64Array[]
}

/** Engagement aimed at, in bolt diameters. */
const TARGETS = Array.from({ length: 13 }, (_, i) => 1 + i / 8)

/** Middle and spread of the engagement that designers aim at, in bolt diameters: common practice, no source. */
const USUAL_TARGET = new Map<string, [middle: number, spread: number]>([
  ['cast aluminium', [1.9, 0.4]],
  ['wrought aluminium', [1.7, 0.4]],
  ['magnesium', [2, 0.4]],
  ['grey iron', [1.5, 0.35]],
  ['ductile iron', [1.3, 0.3]],
  ['steel', [1.2, 0.3]],
])
const ANY_TARGET: [number, number] = [1.6, 0.5]

/** Chance that a bolt did not come out of the hole it belongs in: common practice, no source. */
const MISPLACED: Record<History, number> = { 'never opened': 0.01, unknown: 0.1, 'opened before': 0.25 }

/** Weight of an outcome that has never been seen among the units before (Jeffreys' prior of the Dirichlet-multinomial). */
const UNSEEN = 0.5

export function weightsOf(problem: Problem, judged: Judged[], bins: number): Weights {
  const { holes, kinds } = problem
  const size = holes.length * bins
  const own = new Float64Array(size)
  const weighing = holes.map((hole) => ({
    habit: hole.face.weigh?.habit ?? true,
    asFound: hole.face.weigh?.asFound ?? true,
  }))
  const anyHabit = weighing.some(({ habit }) => habit)
  const targets = anyHabit ? targetPrior(holes) : [1]
  const habit = targets.map(() => new Float64Array(size))
  holes.forEach((hole, h) => {
    const weigh = weighing[h]!
    if (!weigh.habit && !weigh.asFound) return
    const possible = kinds.map((_, k) => k).filter((k) => judged[h * bins + k]!.verdict !== 'cannot')
    for (const k of possible) {
      const pair = h * bins + k
      const found = judged[pair]!
      if (found.verdict === 'may') own[pair]! -= Math.log(Math.max(1e-6, fitChance(hole, kinds[k]!)))
      own[pair]! -= Math.log(beforeWeight(hole, kinds, k, possible.length))
      if (weigh.asFound) own[pair]! -= Math.log(foundWeight(hole, k, kinds.length))
      if (!weigh.habit) continue
      const diameter = Math.min(...hole.threads.map((thread) => thread.diameter))
      const engaged = engagedOf(hole, found)
      const spread = lengthStep(kinds[k]!) / 2
      targets.forEach((_, t) => {
        habit[t]![pair] = 0.5 * ((engaged - TARGETS[t]! * diameter) / spread) ** 2
      })
    }
  })
  return { targets, own, habit }
}

function targetPrior(holes: HoleSpans[]): number[] {
  const middles = holes.map(
    (hole) => USUAL_TARGET.get(nameOf(hole.source.material ?? hole.face.material)) ?? ANY_TARGET,
  )
  const middle = middles.reduce((sum, [m]) => sum + m, 0) / middles.length
  const spread = Math.max(...middles.map(([, s]) => s))
  const weights = TARGETS.map((target) => Math.exp(-0.5 * ((target - middle) / spread) ** 2))
  const all = weights.reduce((a, b) => a + b, 0)
  return weights.map((weight) => weight / all)
}

function nameOf(material: Material | undefined): string {
  return typeof material === 'object' ? material.name : (material ?? '')
}

function foundWeight(hole: HoleSpans, kind: number, kinds: number): number {
  if (hole.asFound === FOUND_UNKNOWN || kinds < 2) return 1
  const wrong = MISPLACED[hole.history]
  return kind === hole.asFound ? 1 - wrong : wrong / (kinds - 1)
}

function beforeWeight(hole: HoleSpans, kinds: KindSpans[], kind: number, possible: number): number {
  const counts = hole.source.unitsBefore
  if (!counts) return 1
  const all = Object.values(counts).reduce((a, b) => a + b, 0)
  const { id } = kinds[kind]!.source
  return ((Object.hasOwn(counts, id) ? counts[id]! : 0) + UNSEEN) / (all + UNSEEN * possible)
}

/** Length of engaged thread at the middle of the readings, mm. */
function engagedOf(hole: HoleSpans, { readings }: Judged): number {
  if (!readings) return 0
  const middle = ({ lo, hi }: { lo: number; hi: number }) => (Number.isFinite(hi) ? (lo + hi) / 2 : lo)
  const depth = Number.isFinite(hole.threadDepth.hi) ? middle(hole.threadDepth) : Number.POSITIVE_INFINITY
  return Math.max(0, Math.min(middle(sectionOf(readings).engaged), depth)) / NANOMETRES
}

/** Step to the next standard length at the kind's length, mm. */
function lengthStep(kind: KindSpans): number {
  const length = kind.length.lo / NANOMETRES
  const series = standardLengths(kind.threads[0]!)
  const next = series.findIndex((standard) => standard > length)
  return next > 0 ? series[next]! - series[next - 1]! : 5
}
