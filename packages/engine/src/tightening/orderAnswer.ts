import { embedmentOf } from '../joints/boltCompliance.ts'
import type { Face, Point } from '../unit.ts'
import type { Assumption, OrderAnswer, OrderKind } from './answer.ts'
import { bowsOf, type Line } from './bow.ts'
import {
  type Bolt,
  embedded,
  type Cover as Held,
  lastRounds,
  linearCover,
  type Pass,
  type Standing,
  spreadOf,
  tighten,
  untouched,
} from './clamp/tighten.ts'
import { handTravel } from './orders/index.ts'
import type { CoverOnBed } from './plate/contact.ts'
import { type BedCase, boltsBy, linearSpread } from './rating.ts'

/** More rounds than this and the order is at fault. @source about six rounds in JIS B 2251 (from memory); a few more to see that nothing moves */
const MOST_ROUNDS = 10
/** A change of a load that is worth a word, as a share of its target. */
const NOTABLE = 0.01

const NAMES: Readonly<Record<OrderKind, string>> = {
  stated: 'as stated',
  cross: 'cross pattern',
  spiral: 'spiral from the middle',
  rails: 'long sides from the middle',
  corners: 'corners first',
  round: 'round the edge',
  found: 'found by search',
}

/** All that an order is tried on. `round`: the bolts once round, for the last rounds. */
export type Bench = {
  face: Face
  bolts: readonly Bolt[]
  snug: boolean
  places: readonly Point[]
  lines: readonly Line[]
  /** Soft, middle and stiff bed, or the one. */
  cases: readonly BedCase[]
  middle: BedCase
  cover: CoverOnBed
  /** What answers to the bolts at every turn. */
  held: Held
  round: readonly number[]
}

/** What an order leaves, turn by turn. */
export function orderAnswer(kind: OrderKind, passes: readonly Pass[], bench: Bench): OrderAnswer {
  const { face, bolts, snug, cover, held, lines, cases, round, places } = bench
  const ids = face.holes.map(({ id }) => id)
  const standing = untouched(bolts)
  const turns = tighten(passes, bolts, snug, held, standing)
  const loads = [...standing.loads]
  const { field } = cover.lie(() => Float64Array.from(loads))
  const ends = passes.map((_, p) => turns.findLast(({ pass }) => pass === p + 1)?.loads)
  const tight: Standing = { ...standing, travel: [...standing.travel] }
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
    ...settled(tight, bench),
  }
}

/** When the surfaces have given way under what stands after the passes; only where the face says how rough they are. */
function settled(standing: Standing, { face, bolts, held }: Bench): Pick<OrderAnswer, 'settled'> {
  if (face.embedment === undefined) return {}
  const { roughness, interfaces = 1 } = face.embedment
  embedded(embedmentOf(roughness, interfaces) / 1000, bolts, held, standing)
  return { settled: { loads: [...standing.loads], spread: spreadOf(standing.loads, bolts) } }
}

/** How far the loads would be off if the bed could pull. */
export function liftOff({ passes, steps }: OrderAnswer, { face, bolts, snug, middle }: Bench): Assumption[] {
  const number = new Map(face.holes.map(({ id }, i) => [id, i]))
  const standing = untouched(bolts)
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
