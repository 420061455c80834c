import { middleOf } from '../quantity/interval.ts'

/**
 * What to set when a bolt drags before its head seats (locking patch, locking nut, insert, hurt thread), all N·m: the drag is used up in the thread
 * and makes no clamp load, so it is added to the wanted torque.
 * @source trade manuals; one Army manual adds it only from a third of the specified torque up (`worthAdding`)
 */
export function withDrag(torque: number, drag: number): { setting: number; worthAdding: boolean } {
  return { setting: torque + drag, worthAdding: drag >= torque / 3 }
}

/** A bolt whose drag stands out from its neighbours'. */
export type DragFinding = { hole: string; drag: number; usual: number }

/**
 * Holes whose drag (N·m) is more than twice the middle of all, and at least 0.5 N·m above it: a hurt thread, a wrong insert, or a patch where there should be
 * none. Fewer than three bolts have no neighbours to compare with. The two limits are common practice, no source.
 */
export function oddDrag(drags: Readonly<Record<string, number>>): DragFinding[] {
  const entries = Object.entries(drags)
  if (entries.length < 3) return []
  const sorted = entries.map(([, drag]) => drag).sort((a, b) => a - b)
  const half = Math.floor(sorted.length / 2)
  const lower = sorted[sorted.length % 2 === 0 ? half - 1 : half] as number
  const usual = middleOf({ lo: lower, hi: sorted[half] as number })
  return entries
    .filter(([, drag]) => drag > 2 * usual && drag - usual >= 0.5)
    .map(([hole, drag]) => ({ hole, drag, usual }))
    .sort((a, b) => b.drag - a.drag)
}
