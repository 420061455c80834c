import type { FaultPath, Unit } from '@gripbook/engine'
import { crossFaults } from './crossChecks.ts'
import type { FileFault, ReadFile } from './fault.ts'
import { LIMITS } from './limits.ts'
import { scanJson } from './scan.ts'
import { unitSchema } from './schema.ts'
import { schemaFaults } from './schemaFaults.ts'

/**
 * A unit from the text of a unit file. Lengths and torques stay as they were entered, with their units.
 * Every fault is told at once, each with its path; nothing is guessed and no unknown field is passed over.
 * Never throws for any text, and stays quick for nonsense: too large a text is not read at all, brackets nested too deep are not followed.
 */
export function readUnitFile(text: string): ReadFile<Unit> {
  if (text.length > LIMITS.bytes) return { ok: false, faults: [{ code: 'too-big', path: [], limit: LIMITS.bytes }] }
  const plain = text.startsWith('\uFEFF') ? text.slice(1) : text
  const scanned = scanJson(plain)
  // what cannot be parsed is told alone: any other fault would only be an echo of it
  if (scanned.broken) return failed(scanned.faults.slice(-1))
  const value: unknown = JSON.parse(plain)
  const read = unitSchema.safeParse(value)
  if (read.success && scanned.faults.length === 0) {
    const crossed = crossFaults(value as Unit)
    return crossed.length === 0 ? { ok: true, value: read.data } : failed(crossed)
  }
  const unread = read.success ? [] : schemaFaults(unitSchema, value)
  const tooGreat = new Set(scanned.faults.map((fault) => JSON.stringify(fault.path)))
  const faults = [...scanned.faults, ...unread.filter((fault) => !tooGreat.has(JSON.stringify(fault.path)))]
  const left = without(
    value,
    faults.map((fault) => fault.path),
  )
  return failed([...faults, ...crossFaults(left)])
}

function failed(faults: FileFault[]): ReadFile<Unit> {
  return { ok: false, faults: faults as [FileFault, ...FileFault[]] }
}

/** The value without what stands at the paths: fields are taken out, places in lists left empty. The value is ours, so it is changed in place. */
function without(value: unknown, paths: readonly FaultPath[]): object {
  for (const path of paths) {
    const last = path.at(-1)
    if (last === undefined) return {}
    let here: unknown = value
    for (const step of path.slice(0, -1)) {
      here =
        typeof here === 'object' && here !== null && Object.hasOwn(here, step)
          ? (here as Record<string | number, unknown>)[step]
          : undefined
    }
    if (Array.isArray(here)) here[last as number] = undefined
    else if (typeof here === 'object' && here !== null) delete (here as Record<string, unknown>)[last]
  }
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? value : {}
}
