/** Orders as passes over a face: the stated one, and the patterns carried through all visits. Bolts by their place in the list. */
import type { Face } from '../unit.ts'
import type { OrderKind } from './answer.ts'
import type { Bolt, Pass } from './clamp/tighten.ts'
import { type Pattern, type Places, patternsFor } from './orders/index.ts'

/** Shares of the final torque. @source gasket makers’ and flange practice: 30, 60, 100 % */
export const USUAL_SHARES: readonly number[] = [0.3, 0.6, 1]

export type Plan = { kind: OrderKind; passes: Pass[] }

/** The manual's passes; each belongs to the latest visit of its bolts. */
export function statedPasses(face: Face, bolts: readonly Bolt[]): Pass[] {
  const number = new Map(face.holes.map(({ id }, i) => [id, i]))
  return face.order!.map(({ share, sequence }) => {
    const numbers = sequence.map((id) => number.get(id)!)
    return { share, visit: Math.max(...numbers.map((j) => bolts[j]!.visit)), sequence: numbers }
  })
}

/** Visit after visit, each with all its shares. */
export function passesOf(
  visits: readonly { visit: number; sequence: readonly number[] }[],
  shares: readonly number[],
): Pass[] {
  return visits.flatMap(({ visit, sequence }) => shares.map((share) => ({ share, visit, sequence })))
}

export function visitsOf(bolts: readonly Bolt[]): { visit: number; members: number[] }[] {
  const visits = [...new Set(bolts.map(({ visit }) => visit))].sort((a, b) => a - b)
  return visits.map((visit) => ({ visit, members: [...bolts.keys()].filter((j) => bolts[j]!.visit === visit) }))
}

/** The patterns of the first visit, each carried on through later visits by the same pattern, or by the shop's where that one does not suit. */
export function patternPlans(places: Places, bolts: readonly Bolt[], shares: readonly number[]): Plan[] {
  const visits = visitsOf(bolts).map(({ visit, members }) => ({
    visit,
    patterns: patternsFor(members.map((j) => places[j]!)).map(
      ({ kind, sequence }): Pattern => ({ kind, sequence: sequence.map((k) => members[k]!) }),
    ),
  }))
  return visits[0]!.patterns.map(({ kind }) => ({
    kind,
    passes: passesOf(
      visits.map(({ visit, patterns }) => ({
        visit,
        sequence: (patterns.find((other) => other.kind === kind) ?? patterns[0]!).sequence,
      })),
      shares,
    ),
  }))
}

/** Whether two orders take the bolts in the same sequences. */
export function sameOrder(a: readonly Pass[], b: readonly Pass[]): boolean {
  return a.length === b.length && a.every(({ sequence }, p) => sequence.join() === b[p]!.sequence.join())
}
