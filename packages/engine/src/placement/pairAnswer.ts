/** A judged pair as the answer prints it: mm, words, and what is worth saying although it fits. */
import type { Pair } from './answer.ts'
import { type Judged, pastMouth, sectionOf } from './pair.ts'
import { type HoleSpans, type KindSpans, pitchSpan } from './problem.ts'
import { inMillimetres, NANOMETRES } from './span.ts'
import { pairWords } from './words.ts'

export function pairAnswer(hole: HoleSpans, kind: KindSpans, judged: Judged): Pair {
  const { verdict, line } = judged
  const end = (nm: number | null) => (nm === null || !Number.isFinite(nm) ? null : inMillimetres(nm))
  const margin =
    verdict === 'may'
      ? ([end(judged.worst), end(judged.best)] as [number | null, number | null])
      : end(verdict === 'fits' ? judged.worst : judged.best)
  const close = verdict === 'fits' ? closeness(hole, kind, judged) : []
  const turns = verdict === 'cannot' ? null : turnsOf(kind, judged)
  return {
    hole: hole.source.id,
    kind: kind.source.id,
    verdict,
    line,
    why: pairWords(hole, kind, judged),
    margin,
    ...(close.length > 0 ? { close } : {}),
    ...(turns ? { turns } : {}),
  }
}

/** Engagement within 10 % of the least, tip within one pitch of the bottom, stick-out past the hole's last full thread by two pitches. */
function closeness(hole: HoleSpans, kind: KindSpans, { readings }: Judged): NonNullable<Pair['close']> {
  const close: NonNullable<Pair['close']> = []
  const pitch = pitchSpan(kind.threads).hi * NANOMETRES
  const { engaged, toBottom, stickOut } = sectionOf(readings!)
  if (hole.blind && toBottom.lo < pitch) close.push('tip near the bottom')
  if (engaged.lo < 1.1 * hole.engagement.hi) close.push('engagement near the least')
  const deepest = hole.mouth.hi + hole.threadDepth.hi
  if (!hole.blind && stickOut.hi > deepest + 2 * pitch) close.push('long stick-out')
  return close
}

/**
 * Turns from the first thread until the head seats: stick-out past the mouth, less anything from nothing to the whole lead, over the pitch.
 * null where it is not known.
 */
function turnsOf(kind: KindSpans, { readings }: Judged): [number, number] | null {
  const { tip, fullThread } = pastMouth(readings!)
  const pitch = pitchSpan(kind.threads)
  const most = tip.hi / (pitch.lo * NANOMETRES)
  if (!Number.isFinite(most)) return null
  const tenth = (turns: number) => Math.round(turns * 10) / 10
  return [tenth(Math.max(0, fullThread.lo / (pitch.hi * NANOMETRES))), tenth(most)]
}
