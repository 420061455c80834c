/** Orders as passes over a face: the stated one, and the patterns carried through all visits. Bolts by their place in the list. */
import type { Face } from '../unit.ts'
import type { OrderKind } from './answer.ts'
import type { Bolt, Pass } from './clamp/tighten.ts'
import { facePasses, visitsOf } from './facePasses.ts'
import { type Pattern, type Places, patternsFor } from './orders/index.ts'

export type Plan = { kind: OrderKind; passes: Pass[] }

/** The manual's passes alone: what it leaves out stays loose. */
export function statedPasses({ holes, order }: Face): Pass[] {
  const number = new Map(holes.map(({ id }, i) => [id, i]))
  return facePasses(holes, order)
    .filter(({ stated }) => stated)
    .sort((a, b) => a.pass - b.pass)
    .map((pass) => ({ share: pass.share, visit: pass.visit, sequence: pass.holes.map((id) => number.get(id)!) }))
}

/** Visit after visit, each with all its shares. */
export function passesOf(
  visits: readonly { visit: number; sequence: readonly number[] }[],
  shares: readonly number[],
): Pass[] {
  return visits.flatMap(({ visit, sequence }) => shares.map((share) => ({ share, visit, sequence })))
}

export function boltsByVisit(bolts: readonly Bolt[]): { visit: number; members: number[] }[] {
  return visitsOf(bolts).map((visit) => ({
    visit,
    members: [...bolts.keys()].filter((j) => bolts[j]!.visit === visit),
  }))
}

/** The patterns of the first visit, each carried on through later visits by the same pattern, or by the shop's where that one does not suit. */
export function patternPlans(places: Places, bolts: readonly Bolt[], shares: readonly number[]): Plan[] {
  const visits = boltsByVisit(bolts).map(({ visit, members }) => ({
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
