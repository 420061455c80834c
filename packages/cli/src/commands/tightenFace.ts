import type { Unit } from '@gripbook/engine'
import { named, noSuchFace } from './noSuchFace.ts'

/** The id of the face to plan for: the one that is wanted, else the only one with a cover; or why there is none, in words. */
export function faceToTighten(
  unit: Unit,
  wanted: string | undefined,
): { ok: true; face: string } | { ok: false; why: string } {
  const ids = unit.faces.map(({ id }) => id)
  if (wanted !== undefined)
    return ids.includes(wanted) ? { ok: true, face: wanted } : { ok: false, why: noSuchFace(wanted, unit) }
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
