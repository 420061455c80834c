import { must, type Unit } from '@gripbook/engine'
import type { Json } from './events/json.ts'
import type { FoldedUnit } from './unit.ts'
import { crossFaults } from './unitFile/crossChecks.ts'
import type { FileFault } from './unitFile/fault.ts'
import { unitSchema } from './unitFile/schema.ts'

/** Something of the folded unit that a unit file cannot hold as it stands: a face without holes, a rank line of a hole that was struck out. */
export type LeftOut = { face?: string; item: Json; code: FileFault['code'] | 'no-holes' }

/**
 * The unit file of a folded unit, which `writeUnitFile` writes, `readUnitFile` reads and the engine computes on. `unit` is null while no face has a
 * hole with a thread. What would make the file a faulty one is left out and told.
 */
export function unitFileOf(folded: FoldedUnit): { unit: Unit | null; leftOut: LeftOut[] } {
  const leftOut: LeftOut[] = []
  const unit = JSON.parse(JSON.stringify(folded.unit)) as Unit
  unit.faces = unit.faces.filter((face) => {
    if (face.holes.length === 0) leftOut.push({ face: face.id, item: { id: face.id }, code: 'no-holes' })
    return face.holes.length > 0
  })
  // what points to something that was itself left out is found in the next round; each round leaves less
  for (let faults = crossFaults(unit); faults.length > 0; faults = crossFaults(unit)) leaveOut(unit, faults, leftOut)
  if (unit.faces.length === 0) return { unit: null, leftOut }
  const read = unitSchema.safeParse(unit)
  if (read.success) return { unit: read.data, leftOut }
  return { unit: null, leftOut: [...leftOut, { item: (read.error.issues[0]?.path ?? []).join('.'), code: 'too-many' }] }
}

/** Takes out of the unit what the faults speak of: a line of a list, a field of a hole, or an order of tightening, which is nothing without one of its holes. */
function leaveOut(unit: Unit, faults: readonly FileFault[], leftOut: LeftOut[]): void {
  const emptied = new Set<unknown[]>()
  for (const { path, code } of faults) {
    const inFace = path[0] === 'faces' && path.length > 3
    const face = inFace ? unit.faces[path[1] as number] : undefined
    const [what, index, field, inner] = inFace ? path.slice(2) : path
    const owner = (face ?? unit) as unknown as Record<string, unknown>
    const list = owner[what as string] as unknown[]
    const told = (item: unknown) =>
      leftOut.push({ ...(face === undefined ? {} : { face: face.id }), item: item as Json, code })
    if (path[0] === 'parts' || path[0] === 'jobs') {
      const item = (unit as unknown as Record<string, Record<string, Json>[]>)[path[0] as string]![path[1] as number]!
      told({ id: item.id!, [field as string]: item[field as string]! })
      delete item[field as string]
    } else if (path[0] === 'faces' && path[2] === 'inside') {
      const hidden = unit.faces[path[1] as number]!
      leftOut.push({ face: hidden.id, item: { inside: hidden.inside! }, code })
      delete hidden.inside
    } else if (what === 'order') {
      if (list !== undefined) told({ order: list })
      delete owner.order
    } else if (what === 'holes' && (field === 'asFound' || field === 'unitsBefore')) {
      const hole = list[index as number] as Record<string, unknown>
      const place = field === 'asFound' ? hole : (hole.unitsBefore as Record<string, unknown>)
      const name = (field === 'asFound' ? field : inner) as string
      told({ hole: hole.id, [field]: field === 'asFound' ? hole.asFound : name })
      delete place[name]
    } else if (what === 'cover') {
      const { lines } = face!.cover as unknown as { lines: unknown[] }
      told({ line: lines[field as number] as Json })
      lines[field as number] = undefined
      emptied.add(lines)
    } else {
      must(list !== undefined, 'unitFileOf: a fault leads nowhere', path)
      if (list[index as number] !== undefined) told(list[index as number])
      list[index as number] = undefined
      emptied.add(list)
    }
  }
  for (const list of emptied) {
    const left = list.filter((item) => item !== undefined)
    list.splice(0, list.length, ...left)
  }
}
