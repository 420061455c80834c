import type { OrderKind } from '../answer.ts'
import { corners } from './corners.ts'
import { crossPattern } from './crossPattern.ts'
import type { Places } from './places.ts'
import { isPan, rails } from './rails.ts'
import { roundFlange } from './roundFlange.ts'
import { roundTheEdge } from './roundTheEdge.ts'
import { type Shape, shapeOf } from './shape.ts'
import { spiral } from './spiral.ts'

export type Pattern = { kind: OrderKind; sequence: number[] }

/**
 * The orders that suit these bolts: the shop's first (cross for a round flange, rails for a pan, spiral for any other), then corners first and round
 * the edge to compare with. Of orders that come out the same only the first is told. No bolts, no order.
 */
export function patternsFor(places: Places): Pattern[] {
  if (places.length === 0) return []
  const flange = roundFlange(places)
  const shape = shapeOf(places)
  const round: Pattern = { kind: 'round', sequence: roundTheEdge(places, shape) }
  if (flange !== undefined) {
    const sequence = crossPattern(places.length).map((position) => flange[position]!)
    return different([{ kind: 'cross', sequence }, round])
  }
  return different([shopPattern(places, shape), { kind: 'corners', sequence: corners(places, shape) }, round])
}

function shopPattern(places: Places, shape: Shape): Pattern {
  return isPan(places, shape)
    ? { kind: 'rails', sequence: rails(places, shape) }
    : { kind: 'spiral', sequence: spiral(places, shape) }
}

function different(patterns: Pattern[]): Pattern[] {
  const written = patterns.map(({ sequence }) => sequence.join())
  return patterns.filter((_, i) => written.indexOf(written[i]!) === i)
}
