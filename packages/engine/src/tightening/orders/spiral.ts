import { outwardInPairs } from './outward.ts'
import { distance, type Places } from './places.ts'
import type { Shape } from './shape.ts'

/** From the middle outward in a spiral, paired across the middle: any cover that is neither round nor a pan. Common practice, no source. */
export function spiral(places: Places, shape: Shape): number[] {
  return outwardInPairs(
    places,
    shape,
    places.map(({ at }) => distance(at, shape.middle)),
  )
}
