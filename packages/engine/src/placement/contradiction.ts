/** Rank lines and trials that contradict each other or the readings, whatever bolt goes where. */
import { Coupling } from './coupling.ts'
import type { Problem, RankLine, TrialLine } from './problem.ts'

export type StatedLine = { rank: RankLine } | { trial: TrialLine }

/**
 * The problem without the lines that cannot hold, and the sets of lines that clash: of each set any one left out, the rest of it holds.
 * A ring of rank lines never holds, though a tie of two values does.
 */
export function setContradictionsAside(problem: Problem): { problem: Problem; contradictions: StatedLine[][] } {
  const contradictions: StatedLine[][] = []
  let lines: StatedLine[] = [...problem.ranks.map((rank) => ({ rank })), ...problem.trials.map((trial) => ({ trial }))]
  for (;;) {
    const clash = ringIn(lines) ?? clashIn(problem, lines)
    if (!clash) return { problem: withLines(problem, lines), contradictions }
    contradictions.push(clash)
    lines = lines.filter((line) => line !== clash[clash.length - 1])
  }
}

/** A line leads from less to more; a ring leads back to its start. */
function ringIn(lines: StatedLine[]): StatedLine[] | null {
  const ranks = lines.flatMap((line) => ('rank' in line ? [{ line, ...line.rank }] : []))
  for (const first of ranks) {
    const before = new Map<number, (typeof ranks)[number]>()
    const queue = [first.more]
    for (let at = queue.shift(); at !== undefined; at = queue.shift())
      for (const rank of ranks)
        if (rank.quantity === first.quantity && rank.less === at && !before.has(rank.more)) {
          before.set(rank.more, rank)
          queue.push(rank.more)
        }
    if (first.less === first.more) return [first.line]
    if (!before.has(first.less)) continue
    const ring = [first.line]
    for (let at = first.less; at !== first.more; ) {
      const rank = before.get(at)!
      ring.push(rank.line)
      at = rank.less
    }
    return ring
  }
  return null
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
