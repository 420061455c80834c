import type { Quantity } from '../../quantity/quantity.ts'
import type { Face, Hole, Kind, Unit } from '../../unit.ts'

/**
 * Holes and kinds in which one sum decides: an M6 hole with 12 mm of thread down to its bottom, and a bolt of no tip with 12 mm of thread. A bolt
 * of length L fits a grip G just when 6 ≤ L − G ≤ 12: less is too little thread, more meets the bottom.
 */
export function plainHole(id: string, grip?: Quantity, more: Partial<Hole> = {}): Hole {
  return {
    id,
    thread: 'M6',
    ...(grip === undefined ? {} : { grip }),
    threadDepth: 12,
    bottomDepth: 12,
    minimumEngagement: 6,
    ...more,
  }
}

export function plainKind(id: string, length: Quantity, count?: number, more: Partial<Kind> = {}): Kind {
  return { id, thread: 'M6', length, threadLength: 12, tip: 0, ...(count === undefined ? {} : { count }), ...more }
}

/** A unit of one face. Every complete placement counts the same unless `more` says otherwise. */
export function plainUnit(holes: Hole[], kinds: Kind[], more: Partial<Face> = {}): Unit {
  return {
    gripbook: 'unit/1',
    faces: [{ id: 'cover', weigh: { habit: false, asFound: false }, holes, kinds, ...more }],
  }
}
