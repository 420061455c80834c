import type { Quantity } from '../../quantity/quantity.ts'
import type { Face, Hole, Kind, Rank, Trial, Unit } from '../../unit.ts'
import { type Random, random } from './random.ts'

/** What is really there, in mm. */
export type HoleTruth = { grip: number; mouth: number; threadDepth: number; bottomDepth: number; behind: number }
export type KindTruth = { length: number; threadLength: number; tip: number }

export type GeneratedUnit = {
  unit: Unit
  /** The kind that belongs in each hole. */
  truth: Record<string, string>
  values: { holes: Record<string, HoleTruth>; kinds: Record<string, KindTruth> }
}

export type UnitWish = {
  holes?: number
  kinds?: number
  /** Lines that tie holes or kinds together: rank lines, kinds whose length is known only roughly. */
  coupled?: boolean
  /** Readings left out, 0 to 1. */
  unread?: number
  /** Whether the least engagement is stated; otherwise a torque is, and the engine finds its own. */
  stated?: boolean
}

const SIZES = [
  { thread: 'M6', diameter: 6, pitch: 1, torque: 10 },
  { thread: 'M8', diameter: 8, pitch: 1.25, torque: 25 },
] as const

/** Usual lengths of hexagon bolts in mm, ISO 4017 (from memory). */
const LENGTHS = [16, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 80, 90, 100]

const hundredth = (value: number) => Number(value.toFixed(2))

/** Instruments of a bench: uncertainty and last digit in mm (common practice, no source). */
const CALIPER = { uncertainty: 0.1, digit: 0.01 }
const DEPTH_ROD = { uncertainty: 0.3, digit: 0.1 }
const RULE = { uncertainty: 1, digit: 0.5 }
type Instrument = typeof CALIPER

/** A reading that lies within its stated uncertainty of the truth, rounding included. */
export function reading(draw: Random, truth: number, { uncertainty, digit }: Instrument = CALIPER): Quantity {
  const room = uncertainty - digit / 2
  const shown = Math.round((truth + draw.between(-room, room)) / digit) * digit
  return { value: hundredth(Math.max(0, shown)), plusMinus: uncertainty }
}

/**
 * A unit such as lies on a bench, with its truth: a face of 6 to 40 holes designed by one habit (bosses of a few heights, standard lengths,
 * engagement near one target), read with instruments of known uncertainty, some readings missing, some bolts swapped.
 */
export function generateUnit(seed: number, wish: UnitWish = {}): GeneratedUnit {
  const draw = random(seed)
  const holeCount = wish.holes ?? (draw.chance(0.85) ? draw.whole(6, 14) : draw.whole(15, 40))
  const kindCount = wish.kinds ?? Math.min(draw.whole(3, 8), Math.max(3, Math.floor(holeCount / 2)))
  const coupled = wish.coupled ?? draw.chance(0.5)
  const unread = wish.unread ?? draw.pick([0, 0.1, 0.25, 0.5])
  const target = draw.between(1.5, 2.1)
  const leastShare = draw.between(0.8, 1.2)

  const sizes = draw.chance(0.3) ? SIZES : [draw.pick(SIZES)]
  const chosen = new Set<string>()
  const kindList: { id: string; size: (typeof SIZES)[number]; nominal: number; truth: KindTruth }[] = []
  while (kindList.length < kindCount) {
    const size = kindList.length < sizes.length ? sizes[kindList.length]! : draw.pick(sizes)
    const nominal = draw.pick(LENGTHS.slice(1))
    if (chosen.has(`${size.thread}/${nominal}`)) continue
    chosen.add(`${size.thread}/${nominal}`)
    const length = hundredth(nominal + draw.between(-0.35, 0.35))
    const partly = nominal > 45 && draw.chance(0.5)
    const threadLength = hundredth(
      partly
        ? length - Math.min(length - 2 * size.diameter - 8, draw.between(8, 24))
        : length - draw.between(0.2, 2.4) * size.pitch,
    )
    const tip = hundredth(size.pitch * draw.between(1.05, 1.95))
    kindList.push({ id: `b${kindList.length + 1}`, size, nominal, truth: { length, threadLength, tip } })
  }

  const holeTruths: Record<string, HoleTruth> = {}
  const truth: Record<string, string> = {}
  const holeList = Array.from({ length: holeCount }, (_, index) => {
    const kind = index < kindList.length ? kindList[index]! : draw.pick(kindList)
    const { diameter, pitch } = kind.size
    const id = String(index + 1)
    const through = draw.chance(0.2)
    const mouth = draw.chance(0.3) ? hundredth(draw.between(0.3, 2)) : 0
    // The habit gives the engagement wanted; what the standard length leaves over it falls within half a length step.
    const engagement = diameter * target * draw.between(0.92, 1.12)
    const stickOut =
      mouth + kind.truth.tip + Math.min(engagement, kind.truth.threadLength - kind.truth.tip - mouth - 0.5)
    const grip = hundredth(kind.truth.length - stickOut)
    const s = kind.truth.length - grip
    const threadDepth = hundredth(Math.max(s - kind.truth.tip - mouth, diameter * 1.25) + draw.between(0.3, 4))
    const bottomDepth = hundredth(Math.max(mouth + threadDepth, s) + pitch * draw.between(0.5, 4))
    const behind = hundredth(Math.max(0, s - mouth - threadDepth) + draw.between(0.5, 6))
    holeTruths[id] = { grip, mouth, threadDepth, bottomDepth, behind }
    truth[id] = kind.id
    return { id, through, kind }
  })

  const depthTool = draw.chance(0.8) ? DEPTH_ROD : RULE
  const missing = () => draw.chance(unread)
  const history = draw.pick(['never opened', 'unknown', 'opened before'] as const)
  const swaps = asFoundOf(draw, holeList, truth, history === 'never opened' ? 0 : history === 'unknown' ? 0.4 : 0.8)
  const inch = draw.chance(0.1)
  const written = (quantity: Quantity): Quantity => {
    if (!inch || typeof quantity !== 'object' || !('value' in quantity)) return quantity
    // A thousandth of an inch is 0.0254 mm: the uncertainty takes up what the last digit loses.
    const { value, plusMinus = 0 } = quantity
    return {
      value: Number((value / 25.4).toFixed(3)),
      plusMinus: Number((plusMinus / 25.4 + 0.0006).toFixed(4)),
      unit: 'in',
    }
  }

  const holes: Hole[] = holeList.map(({ id, through, kind }, index) => {
    const own = holeTruths[id]!
    return {
      id,
      thread: kind.size.thread,
      ending: through ? 'through' : 'blind',
      at: [
        hundredth(60 * Math.cos((2 * Math.PI * index) / holeCount)),
        hundredth(60 * Math.sin((2 * Math.PI * index) / holeCount)),
      ],
      material: 'cast aluminium',
      ...(missing() ? {} : { grip: written(reading(draw, own.grip)) }),
      ...(own.mouth > 0 ? { mouth: reading(draw, own.mouth) } : {}),
      ...(missing() ? {} : { threadDepth: written(reading(draw, own.threadDepth, depthTool)) }),
      ...(through || missing()
        ? {}
        : {
            bottomDepth: draw.chance(0.2)
              ? { atLeast: hundredth(own.bottomDepth - draw.between(0, 2)) }
              : reading(draw, own.bottomDepth, depthTool),
          }),
      ...(through && draw.chance(0.6) ? { behind: reading(draw, own.behind, depthTool) } : {}),
      ...(swaps[id] === undefined ? {} : { asFound: swaps[id] }),
    }
  })

  const used = (id: string) => Object.values(truth).filter((kind) => kind === id).length
  const kinds: Kind[] = kindList.map(({ id, size, nominal, truth: own }) => {
    const rough = coupled && draw.chance(0.3)
    return {
      id,
      thread: size.thread,
      length: rough
        ? { atLeast: nominal - 4, atMost: nominal + 4 }
        : draw.chance(0.3)
          ? { nominal }
          : reading(draw, own.length),
      ...(own.length - own.threadLength > 2.5 * size.pitch || draw.chance(0.3)
        ? { threadLength: reading(draw, own.threadLength, DEPTH_ROD) }
        : {}),
      ...sometimesTip(draw, own.tip),
      count: used(id) + (draw.chance(0.15) ? 1 : 0),
      class: '8.8',
    }
  })

  const ranks: Rank[] = []
  if (coupled) {
    for (let left = draw.whole(1, Math.ceil(holeCount / 4)); left > 0; left -= 1) {
      const quantity = draw.pick(['grip', 'grip', 'threadDepth', 'length'] as const)
      const ids = (quantity === 'length' ? kindList : holeList).map(({ id }) => id)
      const [one, two] = draw.shuffled(ids)
      const size = (id: string) =>
        quantity === 'length' ? kindList.find((kind) => kind.id === id)!.truth.length : holeTruths[id]![quantity]
      if (size(one!) === size(two!)) continue
      const [less, more] = size(one!) < size(two!) ? [one!, two!] : [two!, one!]
      ranks.push({ quantity, less, more })
    }
  }
  const trials: Trial[] = []
  if (draw.chance(0.2)) {
    const { id, kind } = draw.pick(holeList)
    const stickOut = kind.truth.length - holeTruths[id]!.grip
    const drop = hundredth(stickOut - holeTruths[id]!.mouth - kind.truth.tip * draw.between(0.2, 0.8))
    trials.push({ hole: id, kind: kind.id, proud: reading(draw, drop, CALIPER) })
  }

  const { diameter, torque } = kindList[0]!.size
  const stated = wish.stated ?? draw.chance(0.9)
  const face: Face = {
    id: 'cover',
    history,
    ...(stated ? { minimumEngagement: hundredth(diameter * leastShare) } : { torque }),
    holes,
    kinds,
    ...(ranks.length > 0 ? { ranks } : {}),
    ...(trials.length > 0 ? { trials } : {}),
  }
  return {
    unit: { gripbook: 'unit/1', name: `generated ${seed}`, faces: [face] },
    truth,
    values: { holes: holeTruths, kinds: Object.fromEntries(kindList.map(({ id, truth: own }) => [id, own])) },
  }
}

function sometimesTip(draw: Random, tip: number): { tip?: Quantity } {
  return draw.chance(0.3) ? { tip: { value: hundredth(tip), plusMinus: 0.2 } } : {}
}

/** The truth, in a share `swapped` of units with bolts of one thread swapped around, in some with a place not noted or found empty. */
function asFoundOf(
  draw: Random,
  holes: readonly { id: string; kind: { size: { thread: string } } }[],
  truth: Readonly<Record<string, string>>,
  swapped: number,
): Record<string, string> {
  const found: Record<string, string> = { ...truth }
  if (draw.chance(swapped)) {
    for (let left = draw.whole(1, 3); left > 0; left -= 1) {
      const one = draw.pick(holes)
      const other = draw.pick(holes.filter(({ kind }) => kind.size.thread === one.kind.size.thread))
      const kept = found[one.id]!
      found[one.id] = found[other.id]!
      found[other.id] = kept
    }
  }
  for (const { id } of holes) {
    if (draw.chance(0.05)) delete found[id]
    else if (draw.chance(0.01)) found[id] = 'none'
  }
  return found
}
