import type { Point } from '../../unit.ts'

/**
 * Where the bolts of one visit sit, mm, x to the right, y upwards. An order is a list of places in this list, from 0. Locating bolts are started
 * first by hand, which is not yet tightening: which ones locate changes no order.
 */
export type Places = readonly { readonly at: Point }[]

/** mm. */
export function distance([ax, ay]: Point, [bx, by]: Point): number {
  return Math.hypot(bx - ax, by - ay)
}

/** The place on the other side of the middle, just as far. */
export function reflected([x, y]: Point, middle: Point): Point {
  return [2 * middle[0] - x, 2 * middle[1] - y]
}

const TURN = 2 * Math.PI
/** Of an angle: what stands a hair left of 12 o'clock stands at 12 o'clock. */
const HAIR = 1e-9

/** Angle in radians clockwise from 12 o'clock as seen from the middle, from 0 up to a whole turn. In the middle itself: 0. */
export function clockwise(middle: Point, [x, y]: Point): number {
  return wrapped(Math.atan2(x - middle[0], y - middle[1]))
}

/** An angle in radians as one from 0 up to a whole turn. */
export function wrapped(angle: number): number {
  const within = ((angle % TURN) + TURN) % TURN
  return within > TURN - HAIR ? 0 : within
}

/** The whole numbers from 0 up to, not including, `count`. */
export function numbered(count: number): number[] {
  return Array.from({ length: count }, (_, i) => i)
}

/**
 * The one with the smallest figure; figures that differ by no more than `near` count as equal, and then the next figure decides, at last the place in
 * the list. `figures` says them in order of weight. Undefined of an empty list.
 */
export function first(
  from: Iterable<number>,
  near: number,
  ...figures: ((one: number) => number)[]
): number | undefined {
  let best = [...from]
  for (const figure of figures) {
    const values = best.map(figure)
    const least = Math.min(...values)
    best = best.filter((_, i) => values[i]! <= least + near)
  }
  return best.length === 0 ? undefined : Math.min(...best)
}
