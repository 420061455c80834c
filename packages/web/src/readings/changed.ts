/** What a reading has changed of the answer. */
import type { FaceAnswer } from '@gripbook/engine'

export type Changed = { settled: string[]; open: string[]; contradicted: string[] }

/** Holes whose verdict is another one than before, by what it is now; null where none is. */
export function changedBetween(
  before: Pick<FaceAnswer, 'holes'> | null,
  after: Pick<FaceAnswer, 'holes'>,
): Changed | null {
  const changed: Changed = { settled: [], open: [], contradicted: [] }
  for (const [hole, { verdict }] of Object.entries(after.holes)) {
    if (before !== null && before.holes[hole]?.verdict !== verdict) changed[verdict].push(hole)
  }
  return Object.values(changed).some((holes) => holes.length > 0) ? changed : null
}

/** Turns to expect from the first thread until the head seats; null where no length is known. */
export function turnsExpected(
  answer: Pick<FaceAnswer, 'pairs'> | null,
  hole: string,
  kind: string,
): [number, number] | null {
  return answer?.pairs.find((pair) => pair.hole === hole && pair.kind === kind)?.turns ?? null
}
