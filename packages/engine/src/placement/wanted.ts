/** Which standard bolts would fill a hole, tray or no tray. */
import { intervalOf } from '../quantity/interval.ts'
import { standardLengths, standardThreadLength } from '../threads/index.ts'
import { judgePair } from './pair.ts'
import type { HoleSpans, KindSpans } from './problem.ts'
import { spanOf } from './span.ts'

export type StandardBolt = { thread: string; length: number; verdict: 'fits' | 'may' | 'cannot' }

/**
 * Every standard length of the hole's threads, judged in the hole by its readings alone. Thread length anything from the standard's to the
 * whole length, length within its product standard's tolerance, every feature that the hole needs.
 */
export function standardBolts(hole: HoleSpans): StandardBolt[] {
  return hole.threads.flatMap((thread) =>
    standardLengths(thread).map((length) => {
      const bolt: KindSpans = {
        face: null,
        source: { id: `${thread.name}×${length}`, thread: thread.name },
        threads: [thread],
        features: hole.needs,
        length: spanOf(intervalOf({ nominal: length })),
        tip: spanOf({ lo: thread.pitch, hi: 2 * thread.pitch }),
        threadLength: spanOf({ lo: standardThreadLength(thread, length) - 2 * thread.pitch, hi: length }),
        runOut: spanOf({ lo: 0, hi: 2.5 * thread.pitch }),
        washer: { lo: 0, hi: 0 },
        count: 1,
      }
      return { thread: thread.name, length, verdict: judgePair(hole, bolt).verdict }
    }),
  )
}
