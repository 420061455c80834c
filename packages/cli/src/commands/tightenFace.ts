import type { Unit } from '@gripbook/engine'
import { nearestName } from '@gripbook/record'
import { listed } from '../text/list.ts'

/** The most faces that are listed when one must be chosen. */
const MOST_NAMED = 10

/** The id of the face to plan for: the one that is wanted, else the only one with a cover; or why there is none, in words. */
export function faceToTighten(
  unit: Unit,
  wanted: string | undefined,
): { ok: true; face: string } | { ok: false; why: string } {
  const ids = unit.faces.map(({ id }) => id)
  if (wanted !== undefined) {
    if (ids.includes(wanted)) return { ok: true, face: wanted }
    const near = nearestName(wanted, ids)
    return {
      ok: false,
      why: `There is no face ${JSON.stringify(wanted)} in this unit. ${near ? `Did you mean ${JSON.stringify(near)}?` : `There is: ${named(ids)}.`}`,
    }
  }
  const covered = unit.faces.filter(({ cover }) => cover !== undefined).map(({ id }) => id)
  if (covered.length === 1) return { ok: true, face: covered[0]! }
  return covered.length === 0
    ? {
        ok: false,
        why: `No face of this unit has a cover. Add "cover" (outline and thickness), "bed" (stiffness) and "at" of each hole to a face: docs/unit-file.md, Tightening. There is: ${named(ids)}.`,
      }
    : {
        ok: false,
        why: `Which face? ${named(covered)} have a cover: gripbook tighten FILE --face ${JSON.stringify(covered[0])}`,
      }
}

function named(ids: readonly string[]): string {
  const first = ids.slice(0, MOST_NAMED).map((id) => JSON.stringify(id))
  return ids.length > MOST_NAMED ? `${first.join(', ')} and ${ids.length - MOST_NAMED} more` : listed(first)
}
