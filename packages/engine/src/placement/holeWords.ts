/** Why a kind belongs in a hole, in one line. */
import type { Pair } from './answer.ts'
import { list } from './words.ts'

export type HoleFacts = {
  /** All pairs of the hole, kinds of other faces left out. */
  pairs: Pair[]
  /** Kinds in at least one complete placement. */
  may: string[]
  contradicted: boolean
  /** May stay empty because the tray has no bolt left for it. */
  mayBeEmpty: boolean
}

export function holeWhy({ pairs, may, contradicted, mayBeEmpty }: HoleFacts): string {
  const alone = pairs.filter(({ verdict }) => verdict !== 'cannot').map(({ kind }) => kind)
  if (alone.length === 0) return nothingFits(pairs)
  if (contradicted || mayBeEmpty) return `${list(alone, 'or')} would fit, but there are not enough to go round`
  if (may.length === 1) return onlyOne(may[0]!, pairs, alone)
  return `${list(may, 'or')} can go here`
}

function nothingFits(pairs: Pair[]): string {
  const near = nearest(pairs)
  return near ? `no kind in the tray fits; nearest is ${near.kind}: ${near.why}` : 'no kind in the tray has its thread'
}

function onlyOne(kind: string, pairs: Pair[], alone: string[]): string {
  const own = pairs.find((pair) => pair.kind === kind)!
  const needed = alone.filter((other) => other !== kind)
  if (needed.length > 0) return `${list(needed, 'or')} would fit too, but cannot be spared from other holes`
  const near = nearest(pairs.filter((pair) => pair !== own))
  return near ? `${own.why}; ${near.kind} ${near.why}` : own.why
}

/** The kind that fails by least; one that fails by thread or feature only when there is no other. */
function nearest(pairs: Pair[]): Pair | undefined {
  const failed = pairs.filter(({ verdict, line }) => verdict === 'cannot' && line !== 'thread')
  const by = ({ margin }: Pair) => (typeof margin === 'number' ? margin : Number.NEGATIVE_INFINITY)
  return failed.sort((a, b) => by(b) - by(a))[0]
}

export function asFoundWhy(kind: string, verdict: 'must change' | 'may stay' | 'right', facts: HoleFacts): string {
  if (kind === 'none') return 'found empty, and a bolt belongs here'
  const own = facts.pairs.find((pair) => pair.kind === kind)
  if (verdict === 'right') return `${kind} was found here and is the only kind that can be`
  if (verdict === 'may stay') return `${kind} was found here and can stay`
  if (own?.verdict === 'cannot') return `${kind} ${own.why}`
  return `${kind} would fit here, but then another hole would go without its bolt`
}
