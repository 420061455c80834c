/** A judged pair as the answer prints it: mm, words, and what is worth saying although it fits. */
import { turnsToSeat } from '../joints/index.ts'
import type { Interval } from '../quantity/interval.ts'
import type { Pair } from './answer.ts'
import { type Judged, sectionOf } from './pair.ts'
import { type HoleSpans, type KindSpans, pitchSpan } from './problem.ts'
import { inMillimetres, NANOMETRES, type Span } from './span.ts'
import { pairWords } from './words.ts'

export function pairAnswer(hole: HoleSpans, kind: KindSpans, judged: Judged): Pair {
  const { verdict, line } = judged
  const end = (nm: number | null) => (nm === null || !Number.isFinite(nm) ? null : inMillimetres(nm))
  const margin =
    verdict === 'may'
      ? ([end(judged.worst), end(judged.best)] as [number | null, number | null])
      : end(verdict === 'fits' ? judged.worst : judged.best)
  const close = verdict === 'fits' ? closeness(hole, kind, judged) : []
  const turns = verdict === 'cannot' ? null : turnsOf(hole, kind, judged)
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

/** Turns from the first thread until the head seats, to a tenth; null where the stick-out is not known. */
function turnsOf(hole: HoleSpans, kind: KindSpans, { readings }: Judged): [number, number] | null {
  const { stickOut } = sectionOf(readings!)
  if (!Number.isFinite(stickOut.hi)) return null
  const wanted = {
    stickOut: inMillimetresBoth(stickOut),
    mouth: inMillimetresBoth(hole.mouth),
    tip: inMillimetresBoth(kind.tip),
  }
  const { lo: finest, hi: coarsest } = pitchSpan(kind.threads)
  const tenth = (turns: number) => Math.round(turns * 10) / 10
  return [tenth(turnsToSeat({ ...wanted, pitch: coarsest }).lo), tenth(turnsToSeat({ ...wanted, pitch: finest }).hi)]
}

function inMillimetresBoth({ lo, hi }: Span): Interval {
  return { lo: inMillimetres(lo), hi: inMillimetres(hi) }
}
