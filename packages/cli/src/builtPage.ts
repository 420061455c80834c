/** Where the page lies that the server hands to a browser. */
import { access } from 'node:fs/promises'
import { dirname } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The folder of the built page; null where it has not been built. */
export async function builtPage(): Promise<string | null> {
  try {
    const document = fileURLToPath(import.meta.resolve('@gripbook/web/page/index.html'))
    await access(document)
    return dirname(document)
  } catch {
    return null
  }
}
