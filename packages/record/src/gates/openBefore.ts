/** Everything that keeps a unit or a face from being released, or a face from being closed. */
import type { FoldedUnit } from '../unit.ts'
import { openToClose } from './closing.ts'
import { openOfFace, openOfUnit } from './open.ts'
import { passedStops } from './passedStops.ts'
import { standingOf } from './standing.ts'
import type { Facts, Open } from './stop.ts'

export type Step = { release: 'unit' } | { release: 'face'; face: string } | { close: string }

/** Empty: it may be done. `onlyPerson`: the shop is one person, and the release will say so. */
export function openBefore(
  unit: FoldedUnit,
  { onlyPerson = false, ...facts }: Facts & { onlyPerson?: boolean } = {},
  step: Step = { release: 'unit' },
): Open[] {
  const standing = standingOf(unit)
  if ('close' in step) return openToClose(unit, standing, step.close)
  const silent = passedStops(unit, facts).filter(({ override }) => override === undefined)
  const before = { folded: unit, standing, silent, onlyPerson }
  return step.release === 'unit' ? openOfUnit(before) : openOfFace(before, step.face)
}
