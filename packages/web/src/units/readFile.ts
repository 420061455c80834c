/** A unit file as it lies on the device, or all that is wrong with it. */
import { type FileFault, LIMITS, type ReadFile, readUnitFile } from '@gripbook/record'

type Unit = Extract<ReturnType<typeof readUnitFile>, { ok: true }>['value']

export function unitFileFrom(bytes: Uint8Array): ReadFile<Unit> {
  if (bytes.length > LIMITS.bytes) return refused({ code: 'too-big', path: [], limit: LIMITS.bytes })
  try {
    return readUnitFile(new TextDecoder('utf-8', { fatal: true }).decode(bytes))
  } catch {
    return refused({ code: 'not-utf8', path: [] })
  }
}

/** How much there is in it: bolt kinds in the trays of the faces and in the one that they share. */
export function sizeOfUnit(unit: Unit): { faces: number; holes: number; kinds: number } {
  return {
    faces: unit.faces.length,
    holes: unit.faces.reduce((sum, { holes }) => sum + holes.length, 0),
    kinds: unit.faces.reduce((sum, { kinds = [] }) => sum + kinds.length, unit.kinds?.length ?? 0),
  }
}

function refused(fault: FileFault): ReadFile<Unit> {
  return { ok: false, faults: [fault] }
}
