/** What the engine's worker answers about tightening: in a piece of its own, fetched when it is first asked. */
import { type CoverMap, coverUnder, planTightening, type Read, type TighteningAnswer } from '@gripbook/engine'
import type { CoverQuestion, TighteningQuestion } from './asked.ts'
import type { Told } from './asking.ts'

export function answerTightening(
  asked: TighteningQuestion | CoverQuestion,
  told: Told<Read<TighteningAnswer>>,
): Read<TighteningAnswer> | Read<CoverMap> {
  if (asked.what === 'cover') return coverUnder(asked.unit, asked.face, asked.loads)
  return planTightening(asked.unit, asked.face, asked.asked, (progress, soFar) =>
    told(progress, soFar && { ok: true, value: soFar }),
  )
}
