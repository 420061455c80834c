import { clockwise, first, numbered, type Places } from './places.ts'
import { isRim } from './rim.ts'
import { onEdge, type Shape } from './shape.ts'

/** One after another clockwise round the edge, from the first after 12 o'clock; then what sits inside, clockwise too. */
export function roundTheEdge(places: Places, shape: Shape): number[] {
  const { middle, hull } = shape
  const angles = places.map(({ at }) => clockwise(middle, at))
  const edge = places.map(({ at }) => onEdge(at, hull).along)
  const all = numbered(places.length)
  // Along the hull a dent does not change who comes next, as an angle from the middle of a long cover may.
  const rim = all
    .filter((bolt) => isRim(places[bolt]!.at, shape))
    .toSorted((a, b) => edge[b]! - edge[a]! || angles[a]! - angles[b]! || a - b)
  const inside = all.filter((bolt) => !rim.includes(bolt)).toSorted((a, b) => angles[a]! - angles[b]! || a - b)
  const start = rim.indexOf(first(rim, 0, (bolt) => angles[bolt]!) ?? 0)
  return [...rim.slice(start), ...rim.slice(0, start), ...inside]
}
