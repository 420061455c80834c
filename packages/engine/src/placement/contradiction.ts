/** Rank lines and trials that contradict each other or the readings, whatever bolt goes where. */
import { Coupling } from './coupling.ts'
import type { Problem, RankLine, TrialLine } from './problem.ts'

export type StatedLine = { rank: RankLine } | { trial: TrialLine }

/**
 * The problem without the lines that clash, none of which can be trusted then, and the sets of lines that do. A ring of rank lines never
 * holds, though a tie of two values does.
 */
export function setContradictionsAside(problem: Problem): { problem: Problem; contradictions: StatedLine[][] } {
  const contradictions: StatedLine[][] = []
  let lines: StatedLine[] = [...problem.ranks.map((rank) => ({ rank })), ...problem.trials.map((trial) => ({ trial }))]
  for (;;) {
    const clash = ringIn(lines) ?? clashIn(problem, lines)
    if (!clash) return { problem: withLines(problem, lines), contradictions }
    contradictions.push(clash)
    lines = lines.filter((line) => !clash.includes(line))
  }
}

/** All rank lines of a ring: each leads from less to more, and from its more there is a way back to its less. */
function ringIn(lines: StatedLine[]): StatedLine[] | null {
  const ranks = lines.flatMap((line) => ('rank' in line ? [{ line, ...line.rank }] : []))
  const reached = (from: number, quantity: RankLine['quantity']): Set<number> => {
    const seen = new Set([from])
    for (const at of seen)
      for (const rank of ranks) if (rank.quantity === quantity && rank.less === at) seen.add(rank.more)
    return seen
  }
  const turning = ranks.filter(({ less, more, quantity }) => reached(more, quantity).has(less))
  const first = turning[0]
  if (!first) return null
  const around = reached(first.more, first.quantity)
  const ring = turning.filter(
    ({ quantity, less, more }) =>
      quantity === first.quantity && around.has(less) && around.has(more) && reached(more, quantity).has(first.less),
  )
  return ring.map(({ line }) => line)
}

function clashIn(problem: Problem, lines: StatedLine[]): StatedLine[] | null {
  const clashes = (some: StatedLine[]) =>
    new Coupling(withLines(problem, some), new Uint8Array(problem.holes.length * (problem.kinds.length + 1))).clash(
      [],
    ) !== null
  if (lines.length === 0 || !clashes(lines)) return null
  let set = lines
  for (const line of lines) {
    const fewer = set.filter((other) => other !== line)
    if (clashes(fewer)) set = fewer
  }
  return set
}

function withLines(problem: Problem, lines: StatedLine[]): Problem {
  return {
    ...problem,
    ranks: lines.flatMap((line) => ('rank' in line ? [line.rank] : [])),
    trials: lines.flatMap((line) => ('trial' in line ? [line.trial] : [])),
  }
}
