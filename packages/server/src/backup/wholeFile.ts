/** Files that are there whole or not at all. */
import { randomBytes } from 'node:crypto'
import { createWriteStream } from 'node:fs'
import { open, rename, rm } from 'node:fs/promises'
import { dirname } from 'node:path'
import type { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { flushFolder } from '../flushFolder.ts'

/**
 * Writes `file` beside its place (`<file>.<8 hex digits>.part`, which a killed process leaves behind and anybody may delete), flushes it, has it looked at, and only
 * then gives it its name; what had that name is there until then.
 */
export async function wholeFile(
  file: string,
  content: Readable,
  proven: (path: string) => Promise<void>,
): Promise<void> {
  const part = `${file}.${randomBytes(4).toString('hex')}.part`
  try {
    await pipeline(content, createWriteStream(part, { mode: 0o600, flags: 'wx' }))
    await flush(part)
    await proven(part)
    await rename(part, file)
  } catch (error) {
    await rm(part, { force: true })
    throw error
  }
  await flushFolder(dirname(file))
}

/** Until what was written is on the disk. */
async function flush(file: string): Promise<void> {
  const handle = await open(file, 'r+')
  await handle.sync().finally(() => handle.close())
}
