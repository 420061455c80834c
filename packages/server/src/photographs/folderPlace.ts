/** Photographs in a folder: `<first two letters>/<name>`, written beside, flushed, and renamed, so that a name never stands for half a file. */
import { randomUUID } from 'node:crypto'
import { mkdir, open, readdir, readFile, rename, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { flushFolder } from '../flushFolder.ts'
import { isName, mustBeName, type Place, PlaceError } from './place.ts'

const ARRIVING = 'arriving'
/** What a killed process left half written is of no use to anybody; a file being written now is younger. */
const LEFT_BEHIND = 3_600_000

export function folderPlace(folder: string): Place {
  const arriving = join(folder, ARRIVING)
  const shelf = (name: string) => join(folder, name.slice(0, 2))
  const path = (name: string) => join(shelf(name), name)
  let ready: Promise<void> | undefined

  const usable = async <T>(work: () => Promise<T>): Promise<T> => {
    try {
      return await work()
    } catch (error) {
      throw new PlaceError({ code: 'folder-unusable', folder, reason: (error as Error).message }, error)
    }
  }

  async function prepare(): Promise<void> {
    await mkdir(arriving, { recursive: true, mode: 0o700 })
    await flushFolder(folder)
    const now = Date.now()
    for (const name of await readdir(arriving)) {
      const file = join(arriving, name)
      const { mtimeMs } = await stat(file).catch(() => ({ mtimeMs: now }))
      if (now - mtimeMs > LEFT_BEHIND) await rm(file, { force: true })
    }
  }

  /** Once for each process; tried again when anything failed: the folder may have been away. */
  function prepared(): Promise<void> {
    ready ??= prepare()
    return ready
  }

  async function write(name: string, bytes: Uint8Array): Promise<void> {
    await prepared()
    const beside = join(arriving, randomUUID())
    try {
      const file = await open(beside, 'wx', 0o600)
      try {
        await file.writeFile(bytes)
        await file.sync()
      } finally {
        await file.close()
      }
      if ((await mkdir(shelf(name), { recursive: true, mode: 0o700 })) !== undefined) await flushFolder(folder)
      await rename(beside, path(name))
    } catch (error) {
      await rm(beside, { force: true }).catch(() => {})
      throw error
    }
    await flushFolder(shelf(name))
  }

  return {
    where: folder,
    put(name, bytes) {
      mustBeName(name)
      return usable(() =>
        write(name, bytes).catch((error) => {
          ready = undefined
          throw error
        }),
      )
    },
    get(name) {
      mustBeName(name)
      return usable(() => readFile(path(name)).catch(nothing))
    },
    async has(name) {
      mustBeName(name)
      return usable(async () => (await stat(path(name)).catch(nothing))?.isFile() ?? false)
    },
    async remove(name) {
      mustBeName(name)
      await usable(async () => {
        await rm(path(name), { force: true })
        await flushFolder(shelf(name)).catch(nothing)
      })
    },
    async *list() {
      const shelves = await usable(async () => (await readdir(folder).catch(nothing)) ?? [])
      for (const two of shelves.filter((name) => name.length === 2)) {
        const names = await usable(() => readdir(join(folder, two)))
        for (const name of names) if (isName(name) && name.startsWith(two)) yield name
      }
    },
  }
}

function nothing(error: NodeJS.ErrnoException): null {
  if (error.code === 'ENOENT') return null
  throw error
}
