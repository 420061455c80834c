/** A zip with the text of one of its files changed and nothing else put right but its seal, as somebody would do it who opens and packs it. */
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { buffer } from 'node:stream/consumers'
import { openZip, zipOf } from '@gripbook/server'

export async function repacked(zip: Buffer, name: string, change: (text: string) => string): Promise<Buffer> {
  const folder = await mkdtemp(join(tmpdir(), 'gb-repacked-'))
  try {
    const path = join(folder, 'a.zip')
    await writeFile(path, zip)
    const opened = await openZip(path, { files: 100, bytes: 1e8 })
    const files = new Map<string, Buffer>()
    for (const file of opened.names) files.set(file, await opened.read(file, 1e8))
    opened.close()
    const before = files.get(name)?.toString() ?? ''
    const after = change(before)
    if (after === before) throw new Error(`nothing was changed in ${name}`)
    files.set(name, Buffer.from(after))
    return await buffer(
      zipOf(
        (async function* () {
          for (const [file, bytes] of files) yield { name: file, bytes }
        })(),
      ),
    )
  } finally {
    await rm(folder, { recursive: true })
  }
}
