/** A zip with the text of one of its files changed and nothing else put right, as somebody would do it who opens and packs it. */
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { buffer } from 'node:stream/consumers'
import { openZip } from '@gripbook/server'
import yazl from 'yazl'

export async function repacked(zip: Buffer, name: string, change: (text: string) => string): Promise<Buffer> {
  const folder = await mkdtemp(join(tmpdir(), 'gb-repacked-'))
  try {
    const path = join(folder, 'a.zip')
    await writeFile(path, zip)
    const opened = await openZip(path, { files: 100, bytes: 1e8 })
    if (!opened.names.includes(name)) throw new Error(`${name} is not in it`)
    const packed = new yazl.ZipFile()
    for (const file of opened.names) {
      const bytes = await opened.read(file, 1e8)
      const isIt = file === name
      const changed = isIt ? Buffer.from(change(bytes.toString())) : bytes
      if (isIt && changed.equals(bytes)) throw new Error(`nothing was changed in ${name}`)
      packed.addBuffer(changed, file)
    }
    opened.close()
    packed.end()
    return await buffer(packed.outputStream)
  } finally {
    await rm(folder, { recursive: true })
  }
}
