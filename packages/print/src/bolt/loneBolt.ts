/** A bolt by itself, in no hole, as it is drawn. */
import type { Kind } from '@gripbook/engine'
import type { DrawnThread } from '../section/input.ts'
import { threadOf } from '../section/measures.ts'

/** A bolt of unknown length is broken off after so many diameters. */
const BROKEN_AFTER = 2.5

/** mm. `known` false: the length has no upper end, and the bolt is broken off there. */
export function loneBolt(
  kind: Kind,
  thread: DrawnThread,
): { length: number; known: boolean; threadLength: number; tip: number } {
  const own = threadOf(kind, thread)
  const { known, at } = own.length
  const length = known ? at : Math.max(at, BROKEN_AFTER * thread.diameter)
  return { length, known, threadLength: Math.min(own.threadLength.at, length), tip: own.tip.at }
}
