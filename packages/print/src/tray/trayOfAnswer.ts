import type { Face, FaceAnswer, Unit } from '@gripbook/engine'
import { trayOf } from '../answer/boltName.ts'
import type { Look } from '../section/input.ts'
import { threadOf } from '../section/sectionOf.ts'
import type { TrayBolt, TrayInput } from './trayDrawing.ts'

export type TrayOf = {
  unit: Unit
  face: Face
  answer?: FaceAnswer
  title: string
  look: Look
  prefix?: string
}

/** What `trayDrawing` draws of the tray of a face: its kinds from short to long, what is left over, and standard bolts that are wanted and not there. */
export function trayOfAnswer({ unit, face, answer, title, look, prefix }: TrayOf): TrayInput {
  const bolts = [...trayOf(unit, face).values()].map((kind): TrayBolt => {
    const leftOver = answer?.leftOver[kind.id] ?? 0
    return { kind, thread: threadOf(kind.thread), ...(leftOver > 0 ? { leftOver } : {}) }
  })
  return { title, bolts: [...bolts, ...wantedBolts(answer)], look, ...(prefix === undefined ? {} : { prefix }) }
}

/** One drawing for each size that is wanted, by the first standard length that would do. */
function wantedBolts(answer: FaceAnswer | undefined): TrayBolt[] {
  const sizes = new Map<string, TrayBolt>()
  for (const { thread, lengths } of answer?.wanted ?? []) {
    const length = lengths[0]
    if (length === undefined) continue
    const id = `${thread}×${length}`
    const known = sizes.get(id)
    if (known) known.missing = (known.missing ?? 0) + 1
    else
      sizes.set(id, {
        kind: { id, thread, length: { nominal: length }, count: 0 },
        thread: threadOf(thread),
        missing: 1,
      })
  }
  return [...sizes.values()]
}
