/** How good an order is, fast: for the search. Every figure comes from covers condensed to their bolts, one for each stiffness of the bed that is tried. */
import { bowOf } from './bow.ts'
import { type Chain, chainOf } from './clamp/chain.ts'
import { type Bolt, linearCover, type Pass, type Standing, spreadOf, tighten, untouched } from './clamp/tighten.ts'
import type { Rate } from './orders/index.ts'

/** One stiffness of the bed: compliance at the bolts, and for each stated line the sinks along it for 1 N at each bolt (points × bolts). */
export type BedCase = { compliance: readonly number[][]; lines: readonly (readonly number[][])[] }

/** Bolts that are there in a visit, by their place among all. */
export function boltsBy(bolts: readonly Bolt[], visit: number): number[] {
  return [...bolts.keys()].filter((j) => bolts[j]!.visit <= visit)
}

/** The spread after passes over a bed that holds both ways. */
export function linearSpread(
  compliance: readonly number[][],
  bolts: readonly Bolt[],
  passes: readonly Pass[],
  snug: boolean,
): number {
  const standing = untouched(bolts)
  tighten(passes, bolts, snug, linearCover(compliance), standing)
  return spreadOf(standing.loads, bolts)
}

/**
 * Rates sequences of one visit's bolts (numbered among all) that come after `before`: the spread that the stated shares leave, the worst of all bed cases; with stated lines, plus
 * the share by which their bow exceeds that of an even clamp. Where a bed case is above the bound already, the others are not asked.
 */
export function raterOf(
  cases: readonly BedCase[],
  bolts: readonly Bolt[],
  before: readonly Pass[],
  visit: number,
  shares: readonly number[],
  snug: boolean,
): Rate {
  const there = boltsBy(bolts, visit)
  const counted = there.map((j) => bolts[j]!)
  const rated = cases.map((one) => {
    const { compliance } = one
    const standing = untouched(bolts)
    tighten(before, bolts, snug, linearCover(compliance), standing)
    const chain: Chain = chainOf(compliance, bolts, shares, {
      loads: standing.loads,
      gaps: gapsOf(standing, bolts, visit, snug),
    })
    return { chain, bow: bowRater(one, bolts) }
  })
  return (sequence, bound) => {
    let worst = 0
    for (let i = 0; i < rated.length; i++) {
      const { chain, bow } = rated[i]!
      const loads = chain.loadsAfter(sequence)
      const spread = spreadOf(there.length === bolts.length ? loads : there.map((j) => loads[j]!), counted)
      worst = Math.max(worst, spread + bow(loads))
      if (worst <= bound) continue
      // The one that decided goes first next time: it probably decides again.
      rated.unshift(...rated.splice(i, 1))
      return worst
    }
    return worst
  }
}

function gapsOf({ travel, loads, sinks }: Standing, bolts: readonly Bolt[], visit: number, snug: boolean): number[] {
  return bolts.map((bolt, j) => {
    const u = travel[j]
    if (u === null || u === undefined) return snug && bolt.visit <= visit ? 0 : Number.POSITIVE_INFINITY
    return loads[j]! > 0 ? 0 : Math.max(0, sinks[j]! + bolt.compliance * loads[j]! - u)
  })
}

/** By how much the stated lines bend more than under an even clamp, as a share of that or of a twentieth of the mean sink. */
function bowRater({ compliance, lines }: BedCase, bolts: readonly Bolt[]): (loads: ArrayLike<number>) => number {
  if (lines.length === 0) return () => 0
  const greatest = (loads: ArrayLike<number>) =>
    Math.max(...lines.map((rows) => bowOf(rows.map((row) => dot(row, loads)))))
  const even = bolts.map(({ target }) => target)
  const flat = greatest(even)
  const mean = compliance.reduce((sum, row) => sum + dot(row, even), 0) / bolts.length
  const scale = Math.max(flat, mean / 20)
  return (loads) => Math.max(0, greatest(loads) - flat) / scale
}

function dot(row: readonly number[], loads: ArrayLike<number>): number {
  return row.reduce((sum, c, j) => sum + c * loads[j]!, 0)
}
