import type { Point } from '../../unit.ts'
import { onEdge, type Shape } from './shape.ts'

/** Of the width: a rim may be dented by this and still is the rim. Common practice, no source. */
const DENT = 0.2

/** Does a bolt sit on the rim, and not inside? Bolts in one line all do. */
export function isRim(at: Point, shape: Shape): boolean {
  return shape.hull.length < 3 || onEdge(at, shape.hull).off <= DENT * shape.width
}
