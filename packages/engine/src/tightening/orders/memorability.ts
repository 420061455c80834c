import type { Point } from '../../unit.ts'
import { acrossFrom } from './outward.ts'
import { patternsFor } from './patterns.ts'
import { distance, numbered, type Places } from './places.ts'
import { roundTheEdge } from './roundTheEdge.ts'
import { dot, minus, type Shape, shapeOf } from './shape.ts'

/** Of the reach: a bolt so near to where a rule points is the one it points at. */
const THERE = 0.1
/** A nearest bolt may be this much farther than the very nearest: no one measures. */
const NEAREST = 1.1

/** The simple rules by which a hand finds the next bolt, one bit each, so that a step can follow several. */
const NEXT = 1
const ACROSS = 2
const MIRROR = 4
const SAME_JUMP = 8
const SAME_WAY = 16

/**
 * How hard an order of these bolts is to remember, from 0 to 1. 0 is a known pattern, seen from any side or in a mirror. Any other order is judged
 * step by step: the next bolt is the nearest that is left, or stands straight across, or is the mirror image of the one before, or is as many
 * bolts on round the edge, or as far and in the same direction, as in one of the last two steps. A step by a rule that one of the last two steps followed as well costs
 * nothing, a step by another rule costs half, a step by none costs one; the mean over all steps is the answer. Gripbook's own measure, no source.
 */
export function hardToRemember(places: Places): (sequence: ArrayLike<number>) => number {
  const known = new Set(knownOrders(places).map((sequence) => sequence.join()))
  const ruleOf = rulesOf(places)
  return (sequence) => {
    const steps = sequence.length - 1
    if (steps < 1 || known.has(Array.prototype.join.call(sequence))) return 0
    let [cost, before, last] = [0, 0, 0]
    for (let i = 1; i <= steps; i++) {
      const rules = ruleOf(sequence, i)
      const isGoingOn = i === 1 || (rules & (last | before)) !== 0
      cost += rules === 0 ? 1 : isGoingOn ? 0 : 0.5
      ;[before, last] = [last, rules]
    }
    return cost / steps
  }
}

/** The patterns that suit these bolts as they come out for someone at each of four sides of the bench, and in a mirror: each once. */
export function knownOrders(places: Places): number[][] {
  const quarter = ([x, y]: Point): Point => [y, -x]
  const views: ((at: Point) => Point)[] = [
    (at) => at,
    quarter,
    (at) => quarter(quarter(at)),
    (at) => quarter(quarter(quarter(at))),
  ]
  const mirrored = ([x, y]: Point): Point => [-x, y]
  const orders = [...views, ...views.map((view) => (at: Point) => mirrored(view(at)))].flatMap((view) =>
    patternsFor(places.map(({ at }) => ({ at: view(at) }))).map(({ sequence }) => sequence),
  )
  return [...new Map(orders.map((order) => [order.join(), order])).values()]
}

/** Which rules the step to place `i` of a sequence follows. */
function rulesOf(places: Places): (sequence: ArrayLike<number>, i: number) => number {
  const shape = shapeOf(places)
  const all = numbered(places.length)
  const apart = all.map((bolt) => all.map((other) => distance(places[bolt]!.at, places[other]!.at)))
  const across = all.map((bolt) => acrossFrom(places, shape, bolt, all))
  const images = all.map((bolt) => mirrorImages(places, shape, bolt))
  const edge = all.map(() => 0)
  roundTheEdge(places, shape).forEach((bolt, i) => {
    edge[bolt] = i
  })
  const count = places.length
  const jump = (sequence: ArrayLike<number>, i: number) =>
    i < 1 ? -1 : (edge[sequence[i]!]! - edge[sequence[i - 1]!]! + count) % count
  const isSameWay = (sequence: ArrayLike<number>, i: number, k: number) => {
    if (k < 1) return false
    const way = (step: number) => minus(places[sequence[step]!]!.at, places[sequence[step - 1]!]!.at)
    return distance(way(i), way(k)) <= THERE * shape.reach
  }
  return (sequence, i) => {
    const [from, to] = [sequence[i - 1]!, sequence[i]!]
    let nearest = Number.POSITIVE_INFINITY
    for (let k = i; k < sequence.length; k++) nearest = Math.min(nearest, apart[from]![sequence[k]!]!)
    const now = jump(sequence, i)
    return (
      (apart[from]![to]! <= NEAREST * nearest ? NEXT : 0) |
      (across[from] === to ? ACROSS : 0) |
      (images[from]!.includes(to) ? MIRROR : 0) |
      (now === jump(sequence, i - 1) || now === jump(sequence, i - 2) ? SAME_JUMP : 0) |
      (isSameWay(sequence, i, i - 1) || isSameWay(sequence, i, i - 2) ? SAME_WAY : 0)
    )
  }
}

/** The bolts that a mirror along the cover, and one across it, show in the place of this one. */
function mirrorImages(places: Places, shape: Shape, bolt: number): number[] {
  const { middle, along, reach } = shape
  const off = minus(places[bolt]!.at, middle)
  const u = dot(off, along)
  const v = dot(off, [-along[1], along[0]])
  const at = (a: number, b: number): Point => [
    middle[0] + a * along[0] - b * along[1],
    middle[1] + a * along[1] + b * along[0],
  ]
  return numbered(places.length).filter(
    (other) =>
      other !== bolt && [at(-u, v), at(u, -v)].some((image) => distance(image, places[other]!.at) <= THERE * reach),
  )
}
