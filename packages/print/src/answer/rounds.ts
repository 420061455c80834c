import type { FaceAnswer, Move } from '@gripbook/engine'

/** Told for an empty hole where a kind would stand. */
export const NONE = 'none'

/**
 * The move whose hole gives up the bolt that this one takes, if any. The engine tells a closed round so that each takes the bolt of the next,
 * and a chain so that each takes the bolt of the one before.
 */
export function sourceOf(i: number, round: readonly Move[]): Move | undefined {
  const other = isClosed(round) ? round[(i + 1) % round.length] : round[i - 1]
  return other?.from === round[i]!.to ? other : undefined
}

/** True for two holes that just exchange their bolts. */
export function isSwap(round: readonly Move[]): boolean {
  return round.length === 2 && isClosed(round)
}

/** True when every bolt of the round comes out of a hole of the round. */
export function isClosed(round: readonly Move[]): boolean {
  return (
    round.length > 1 && round.every((move, i) => move.to !== NONE && round[(i + 1) % round.length]!.from === move.to)
  )
}

/**
 * The rounds that hands should carry out. Left out is what does no more than empty contradicted holes: there the readings are in doubt first,
 * not the bolt.
 */
export function roundsToDo(answer: FaceAnswer): Move[][] {
  const inDoubt = ({ hole, to }: Move) => to === NONE && answer.holes[hole]?.verdict === 'contradicted'
  return answer.changes.cycles.filter((round) => !round.every(inDoubt))
}
