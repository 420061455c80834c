import type { Unit } from '@gripbook/engine'
import { type FileFault, faultLines, LIMITS, readUnitFile } from '@gripbook/record'
import type { World } from './world.ts'

/** What the file system says, in words; anything else is told as it comes. */
const SYSTEM: Record<string, string> = {
  ENOENT: 'there is no such file.',
  ENOTDIR: 'a part of the path is not a directory.',
  EISDIR: 'this is a directory. Name the unit file in it.',
  EACCES: 'the file may not be read by you.',
  EPERM: 'the file may not be read by you.',
  ELOOP: 'the path leads round in a circle.',
  ENAMETOOLONG: 'the path is too long.',
  EINVAL: 'this is not a path that can be opened.',
  ERR_INVALID_ARG_VALUE: 'this is not a path that can be opened.',
}

/** The reason that a call of the file system gave, in words, or undefined when it was no such call that failed. */
export function systemWords(fault: unknown): string | undefined {
  const code = fault instanceof Error && 'code' in fault ? String(fault.code) : undefined
  return code === undefined ? undefined : (SYSTEM[code] ?? `the file system refused it (${code}).`)
}

/** Every fault of a file on standard error, each with its path in it. */
export function tellFaults(path: string, faults: readonly FileFault[], { err }: Pick<World, 'err'>): void {
  err(`${path}: ${faults.length === 1 ? 'one fault' : `${faults.length} faults`}\n`)
  for (const line of faultLines(faults)) err(`  ${line}\n`)
}

/** The unit in a file. Every fault is told on standard error, each with its path in the file; then there is no unit. */
export async function readUnitFrom(path: string, world: World): Promise<Unit | undefined> {
  const tell = (faults: readonly FileFault[]) => tellFaults(path, faults, world)
  let bytes: Uint8Array
  try {
    bytes = await world.readFile(path, LIMITS.bytes)
  } catch (fault) {
    const words = systemWords(fault)
    if (words === undefined) throw fault
    world.err(`${path}: ${words}\n`)
    return undefined
  }
  const text = bytes.length > LIMITS.bytes ? undefined : decoded(bytes)
  if (text === undefined) {
    tell([
      bytes.length > LIMITS.bytes ? { code: 'too-big', path: [], limit: LIMITS.bytes } : { code: 'not-utf8', path: [] },
    ])
    return undefined
  }
  const read = readUnitFile(text)
  if (read.ok) return read.value
  tell(read.faults)
  return undefined
}

function decoded(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return undefined
  }
}
