import type { Face } from '../unit.ts'

/** Shares of the final torque. @source gasket makers’ and flange practice: 30, 60, 100 % */
export const USUAL_SHARES: readonly number[] = [0.3, 0.6, 1]

/** One round of the wrench over bolts of a face. */
export type FacePass = {
  /** As the record counts it: through the whole order; without an order from 1 in each visit. */
  pass: number
  visit: number
  /** Of the final torque. */
  share: number
  /** Ids of holes, in the order in which they are tightened. */
  holes: string[]
  /** Whether it is the order's, whose sequence is kept. */
  stated: boolean
}

/**
 * The passes by which the bolts of a face are tightened, visit after visit. Those of the order come first, each in the latest visit of its bolts. Bolts that no pass of the order comes to, which is
 * all of them without an order, follow in the usual shares: nothing that is to be tightened is left out.
 */
export function facePasses(
  holes: readonly { id: string; visit?: number | undefined }[],
  order: NonNullable<Face['order']> = [],
): FacePass[] {
  const visits = new Map(holes.map(({ id, visit = 1 }) => [id, visit]))
  const stated = order.map(({ share, sequence }, i): FacePass => {
    const there = sequence.filter((id) => visits.has(id))
    return { pass: i + 1, visit: Math.max(1, ...there.map((id) => visits.get(id)!)), share, holes: there, stated: true }
  })
  const reached = new Set(stated.flatMap((pass) => pass.holes))
  const left = holes.filter(({ id }) => !reached.has(id))
  let count = order.length
  return visitsOf(holes).flatMap((visit) => {
    const own = left.filter(({ id }) => visits.get(id) === visit).map(({ id }) => id)
    const usual = (own.length === 0 ? [] : USUAL_SHARES).map(
      (share, i): FacePass => ({ pass: order.length > 0 ? ++count : i + 1, visit, share, holes: own, stated: false }),
    )
    return [...stated.filter((pass) => pass.visit === visit && pass.holes.length > 0), ...usual]
  })
}

/** Visits of the holes, each once, the first one first. */
export function visitsOf(holes: readonly { visit?: number | undefined }[]): number[] {
  return [...new Set(holes.map(({ visit = 1 }) => visit))].sort((a, b) => a - b)
}
