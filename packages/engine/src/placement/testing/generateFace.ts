import type { Quantity } from '../../quantity/quantity.ts'
import type { Face, Hole, Kind, Rank, RankQuantity, Trial, Unit } from '../../unit.ts'
import { type Random, random } from './random.ts'

const PITCH: Record<string, number> = { M6: 1, M8: 1.25 }

/** Four decimals keep an inch figure a whole number of nanometres. */
const figure = (value: number, decimals = 4) => Number(value.toFixed(decimals))

/** A truth drawn first, and statements about it that are mostly true: most faces then come out neither trivial nor hopeless. */
type Drawn = { random: Random; grid: number }

const onGrid = ({ grid }: Drawn, value: number) => figure(Math.max(0, Math.round(value / grid) * grid))

/** A statement about a length in one of the forms that the file knows. Now and then it is wrong. */
function stated(drawn: Drawn, truth: number, spread: number): Quantity {
  const { random: draw } = drawn
  const value = onGrid(drawn, draw.chance(0.06) ? truth + draw.between(-5, 5) : truth)
  const off = () => onGrid(drawn, draw.between(0, spread))
  const form = draw.whole(0, 9)
  if (form <= 2) return value
  if (form <= 4) return { value, plusMinus: off() }
  if (form === 5) return { atLeast: onGrid(drawn, value - off()), atMost: figure(value + off()) }
  if (form === 6) return { atLeast: onGrid(drawn, value - off()) }
  if (form === 7) return { atMost: figure(value + off()) }
  if (form === 8) return { value: figure(value / 25.4, 3), plusMinus: 0.004, unit: 'in' }
  return { value, plusMinus: off(), unit: 'mm' }
}

const sometimes = <T extends object>(draw: Random, probability: number, part: () => T): T | object =>
  draw.chance(probability) ? part() : {}

/**
 * A unit with one small face for brute force: 2 to 6 holes, 1 to 4 kinds, every form of statement. Values lie on a coarse grid in most
 * faces, so that exact ties are common.
 */
export function smallUnit(seed: number): Unit {
  const draw = random(seed)
  const drawn: Drawn = { random: draw, grid: draw.pick([0.1, 0.5, 0.5, 1, 0.013]) }
  const holeCount = draw.whole(2, 6)
  const kindCount = draw.whole(1, 4)
  const mixed = draw.chance(0.35)
  const features = draw.chance(0.3)
  const loose = draw.chance(0.4) ? 6 : 1.5

  const kindTruths = Array.from({ length: kindCount }, () => {
    const thread = mixed && draw.chance(0.4) ? 'M8' : 'M6'
    return {
      thread,
      length: onGrid(drawn, draw.whole(4, 9) * 5 + draw.pick([0, 0, 0, 0.5])),
      washer: onGrid(drawn, draw.chance(0.15) ? 1.5 : 0),
    }
  })
  const kinds: Kind[] = kindTruths.map(({ thread, length, washer }, index) => ({
    id: `k${index}`,
    thread: mixed && draw.chance(0.2) ? ['M6', 'M8'] : thread,
    ...sometimes(draw, 0.9, () => ({
      length: draw.chance(0.1) ? { nominal: Math.round(length) } : stated(drawn, length, loose * 2),
    })),
    ...sometimes(draw, 0.4, () => ({ threadLength: onGrid(drawn, length - draw.between(0, length * 0.6)) })),
    ...sometimes(draw, 0.4, () => ({
      tip: draw.chance(0.6)
        ? onGrid(drawn, draw.between(0, 2))
        : { atLeast: onGrid(drawn, 0.5), atMost: onGrid(drawn, draw.between(1, 2.5)) },
    })),
    ...sometimes(draw, 0.7, () => ({ count: draw.chance(0.08) ? 0 : draw.whole(1, Math.max(1, holeCount - 1)) })),
    ...sometimes(draw, features ? 0.6 : 0.05, () => ({
      features: draw.chance(0.7) ? ['stud end'] : ['stud end', 'sealed'],
    })),
    ...(washer > 0
      ? {
          washer: draw.chance(0.5)
            ? washer
            : { thickness: { value: washer, plusMinus: onGrid(drawn, 0.2) }, captive: true },
        }
      : {}),
  }))

  const faceEngagement = onGrid(drawn, draw.between(3, 8))
  const faceGasket = draw.chance(0.2) ? onGrid(drawn, draw.between(0, 1)) : undefined
  const truths: { kind: number; grip: number; mouth: number; depth: number; bottom: number }[] = []
  const holes: Hole[] = Array.from({ length: holeCount }, (_, index) => {
    const kind = draw.whole(0, kindCount - 1)
    const { thread, length, washer } = kindTruths[kind]!
    const pitch = PITCH[thread]!
    const mouth = draw.chance(0.3) ? onGrid(drawn, draw.between(0, 2)) : 0
    const bracket = draw.chance(0.2) ? onGrid(drawn, draw.between(1, 4)) : 0
    const gasket = draw.chance(0.1) ? onGrid(drawn, draw.between(0, 1)) : undefined
    const stickOut = faceEngagement + 2 * pitch + mouth + draw.between(0, 5)
    const grip = onGrid(drawn, length - washer - bracket - (gasket ?? faceGasket ?? 0) - stickOut)
    const depth = onGrid(drawn, stickOut - mouth + draw.between(-1, 4))
    const bottom = onGrid(drawn, mouth + depth + draw.between(0, 4))
    truths.push({ kind, grip, mouth, depth, bottom })
    const through = draw.chance(0.25)
    return {
      id: `h${index}`,
      thread: mixed && draw.chance(0.2) ? ['M8', 'M6'] : thread,
      ...(through ? { ending: 'through' as const } : sometimes(draw, 0.3, () => ({ ending: 'blind' as const }))),
      ...sometimes(draw, 0.9, () => ({ grip: stated(drawn, grip, loose) })),
      ...(bracket > 0 ? { bracket } : {}),
      ...(gasket === undefined ? {} : { gasket }),
      ...(mouth > 0 ? { mouth: draw.chance(0.7) ? mouth : { value: mouth, plusMinus: onGrid(drawn, 0.3) } } : {}),
      ...sometimes(draw, 0.75, () => ({ threadDepth: stated(drawn, depth, loose) })),
      ...sometimes(draw, 0.6, () => ({ bottomDepth: stated(drawn, bottom, loose) })),
      ...sometimes(draw, through ? 0.6 : 0.05, () => ({ behind: stated(drawn, draw.between(0, 6), 1) })),
      ...(features && draw.chance(0.3) ? { needs: ['stud end'] } : {}),
      ...sometimes(draw, 0.25, () => ({
        minimumEngagement: draw.chance(0.5)
          ? onGrid(drawn, draw.between(2, 9))
          : { atLeast: onGrid(drawn, draw.between(2, 5)), atMost: onGrid(drawn, draw.between(5, 9)) },
      })),
      ...sometimes(draw, 0.7, () => ({
        asFound: draw.chance(0.15) ? 'none' : `k${draw.chance(0.5) ? kind : draw.whole(0, kindCount - 1)}`,
      })),
    }
  })

  const ranks: Rank[] = []
  if (draw.chance(0.5)) {
    for (let left = draw.whole(1, 4); left > 0; left -= 1) ranks.push(rank(draw, truths, kindTruths))
    if (draw.chance(0.06)) {
      const { quantity, less, more } = draw.pick(ranks)
      ranks.push({ quantity, less: more, more: less })
    }
    if (draw.chance(0.05) && holeCount > 2) {
      const [a, b, c] = draw.shuffled(holes).map(({ id }) => id)
      ranks.push({ quantity: 'grip', less: a!, more: b! }, { quantity: 'grip', less: b!, more: c! })
      ranks.push({ quantity: 'grip', less: c!, more: a! })
    }
  }

  const trials: Trial[] = []
  if (draw.chance(0.3)) {
    const at = draw.whole(0, holeCount - 1)
    const { kind, grip, mouth } = truths[at]!
    const { length, thread, washer } = kindTruths[kind]!
    const bolt = kinds[kind]!
    const hole = holes[at]!
    const figures = [hole.bracket, hole.gasket ?? faceGasket].map((known) => (typeof known === 'number' ? known : 0))
    const s = length - washer - grip - figures[0]! - figures[1]! + (draw.chance(0.2) ? draw.between(-3, 3) : 0)
    const pair = { hole: hole.id, kind: bolt.id }
    const sort = draw.whole(0, 2)
    if (s > mouth + 2.5 && typeof bolt.thread === 'string' && bolt.thread === hole.thread) {
      if (sort === 0) trials.push({ ...pair, stickOut: { value: onGrid(drawn, s), plusMinus: onGrid(drawn, 0.5) } })
      else if (sort === 1)
        trials.push({
          ...pair,
          proud: draw.chance(0.5)
            ? onGrid(drawn, s - mouth - 1)
            : { value: onGrid(drawn, s - mouth - 1), plusMinus: onGrid(drawn, 0.5) },
        })
      else trials.push({ ...pair, turns: Math.max(0, Math.round(((s - mouth - 1) / PITCH[thread]!) * 2) / 2) })
    }
  }

  const face: Face = {
    id: 'small',
    ...sometimes(draw, 0.3, () => ({ history: draw.pick(['never opened', 'unknown', 'opened before'] as const) })),
    minimumEngagement: draw.chance(0.8)
      ? faceEngagement
      : { atLeast: onGrid(drawn, faceEngagement - 1), atMost: figure(faceEngagement + 1) },
    ...(faceGasket === undefined
      ? {}
      : { gasket: draw.chance(0.6) ? faceGasket : { value: faceGasket, plusMinus: onGrid(drawn, 0.3) } }),
    holes,
    ...(ranks.length > 0 ? { ranks } : {}),
    ...(trials.length > 0 ? { trials } : {}),
    weigh: { habit: false, asFound: false },
  }
  return draw.chance(0.15)
    ? { gripbook: 'unit/1', faces: [face], kinds }
    : { gripbook: 'unit/1', faces: [{ ...face, kinds }] }
}

/** A rank line that is true three times in four. */
function rank(
  draw: Random,
  holes: readonly { grip: number; depth: number; bottom: number }[],
  kinds: readonly { length: number }[],
): Rank {
  const quantity: RankQuantity = draw.pick(
    kinds.length > 1 ? ['grip', 'threadDepth', 'bottomDepth', 'length'] : ['grip', 'threadDepth', 'bottomDepth'],
  )
  const list = quantity === 'length' ? kinds : holes
  const [one, two] = draw.shuffled([...list.keys()])
  const sizeOf = (at: number) => {
    if (quantity === 'length') return kinds[at]!.length
    const { grip, depth, bottom } = holes[at]!
    return quantity === 'grip' ? grip : quantity === 'threadDepth' ? depth : bottom
  }
  const letter = quantity === 'length' ? 'k' : 'h'
  const ordered = sizeOf(one!) <= sizeOf(two!)
  const [less, more] = ordered === draw.chance(0.75) ? [one, two] : [two, one]
  return { quantity, less: `${letter}${less}`, more: `${letter}${more}` }
}
