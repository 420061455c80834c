/** The passes of a face: those of its order, or plain ones. */
import { USUAL_SHARES } from '@gripbook/engine'
import type { BenchFace, BenchHole } from './benchFace.ts'

export type PlannedPass = {
  /** As `pass-torqued` counts it: through the whole order; without one from 1 in each visit. */
  pass: number
  visit: number
  share: number
  holes: string[]
}

/** Passes of the order, each in the latest visit of its holes; without an order the usual shares over all holes, visit after visit. */
export function passesOf({ order, holes }: BenchFace): PlannedPass[] {
  if (order === undefined)
    return visitsOf(holes).flatMap((visit) =>
      USUAL_SHARES.map((share, i) => ({ pass: i + 1, visit, share, holes: idsIn(holes, visit) })),
    )
  const visits = new Map(holes.map(({ id, visit }) => [id, visit]))
  return order.map(({ share, sequence }, i) => {
    const there = sequence.filter((id) => visits.has(id))
    return { pass: i + 1, visit: Math.max(1, ...there.map((id) => visits.get(id)!)), share, holes: there }
  })
}

export function visitsOf(holes: readonly BenchHole[]): number[] {
  return [...new Set(holes.map(({ visit }) => visit))].sort((a, b) => a - b)
}

function idsIn(holes: readonly BenchHole[], visit: number): string[] {
  return holes.filter((hole) => hole.visit === visit).map(({ id }) => id)
}
