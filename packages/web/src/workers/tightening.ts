/** What the engine's worker answers about tightening: in a piece of its own, fetched when it is first asked. */
import {
  type CoverMap,
  coverUnder,
  planTightening,
  type Read,
  type TighteningAnswer,
  type TighteningProgress,
} from '@gripbook/engine'
import type { CoverQuestion, TighteningQuestion } from './asked.ts'

export function answerTightening(
  asked: TighteningQuestion | CoverQuestion,
  told: (progress: TighteningProgress) => void,
): Read<TighteningAnswer> | Read<CoverMap> {
  if (asked.what === 'cover') return coverUnder(asked.unit, asked.face, asked.loads)
  return planTightening(asked.unit, asked.face, asked.asked, told)
}
