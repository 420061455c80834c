/** What to do on a face, in the order in which hands do it: contradictions lead, then what moves, what is missing, what is left over, what to measure. */
import type { Conflict, FaceAnswer, HoleAnswer, Move, NextReading, Wanted } from '@gripbook/engine'
import { roundsToDo } from '@gripbook/print'
import type { FaceWork } from '@gripbook/record'

export type Task =
  | { do: 'doubt'; conflict: Conflict }
  | { do: 'move'; round: Move[] }
  | { do: 'get'; wanted: Wanted }
  | { do: 'measure'; next: NextReading }
  | { do: 'lay aside'; kind: string; count: number; fits: readonly string[] }

/** `work`: what hands have put where; a move whose bolts sit where they belong is done. */
export function tasksOf(answer: FaceAnswer, work?: FaceWork): Task[] {
  return [
    ...[answer.conflict, ...(answer.furtherConflicts ?? [])].flatMap((conflict): Task[] =>
      conflict === null ? [] : [{ do: 'doubt', conflict }],
    ),
    ...movesLeft(answer, work).map((round): Task => ({ do: 'move', round })),
    ...answer.wanted.map((wanted): Task => ({ do: 'get', wanted })),
    ...(answer.next === null ? [] : [{ do: 'measure', next: answer.next } as const]),
    ...Object.entries(answer.leftOver).flatMap(([kind, count]): Task[] =>
      count > 0 ? [{ do: 'lay aside', kind, count, fits: answer.leftOverFits?.[kind] ?? [] }] : [],
    ),
  ]
}

/** Rounds of moves as far as something of them is still to be done. */
export function movesLeft(answer: FaceAnswer, work: FaceWork | undefined): Move[][] {
  return roundsToDo(answer).filter((round) => !round.every((move) => isMoved(move, work)))
}

/** The bolt that belongs there was put there. */
export function isMoved({ hole, to }: Pick<Move, 'hole' | 'to'>, work: FaceWork | undefined): boolean {
  return work?.holes[hole]?.placed?.value === to
}

/** The bolt that was put into a hole and may sit there; null: none yet, or one that cannot. */
export function rightlyPut(
  { may }: Pick<HoleAnswer, 'may'>,
  work: FaceWork['holes'][string] | undefined,
): string | null {
  const put = work?.placed?.value
  return typeof put === 'string' && may.includes(put) ? put : null
}

export type Counts = { settled: number; open: number; contradicted: number; holes: number }

export function countsOf(answer: FaceAnswer): Counts {
  const counts: Counts = { settled: 0, open: 0, contradicted: 0, holes: 0 }
  for (const { verdict } of Object.values(answer.holes)) {
    counts[verdict]++
    counts.holes++
  }
  return counts
}
