import { outwardInPairs } from './outward.ts'
import type { Places } from './places.ts'
import { isRim } from './rim.ts'
import { dot, minus, type Shape } from './shape.ts'

/** With fewer bolts there is no side to speak of. */
const FEWEST = 6
/** Longer than wide by this, or filling its rectangle by that, the outline is a pan's. Common practice, no source. */
const ELONGATED = 1.25
const RECTANGULAR = 0.85

/** A pan is held along its rim, none of its bolts in the middle, and is long or rectangular. */
export function isPan(places: Places, shape: Shape): boolean {
  const { length, width, area } = shape
  const isOblong = length >= ELONGATED * width || area >= RECTANGULAR * length * width
  return places.length >= FEWEST && shape.hull.length > 2 && isOblong && places.every(({ at }) => isRim(at, shape))
}

/** From the middle of the long sides outward to both ends, each bolt followed by the one across on the other side. Common practice, no source. */
export function rails(places: Places, shape: Shape): number[] {
  return outwardInPairs(
    places,
    shape,
    places.map(({ at }) => Math.abs(dot(minus(at, shape.middle), shape.along))),
  )
}
