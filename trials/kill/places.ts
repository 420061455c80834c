/** The two places where the record may live, as the trial starts, kills and finds them. */
import { mkdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { debianServer } from '../../packages/server/src/testing/debianServer.ts'
import { temporaryFolder } from '../../packages/server/src/testing/folders.ts'
import { killHard, killTree } from '../../packages/server/src/testing/killTree.ts'

export type Kind = 'embedded' | 'server'

export type Place = {
  /** What the process that is killed is told. */
  where: string
  /** A place of the same kind where nothing has ever been kept. */
  fresh(): Promise<string>
  /** SIGKILL to PostgreSQL, all of it or its first process alone. */
  killDatabase(where: string, whole: boolean): Promise<void>
  /** Starts PostgreSQL where Gripbook does not do so itself. */
  restart(): Promise<void>
  remove(): Promise<void>
}

export function placeFor(kind: Kind): Promise<Place> {
  return kind === 'embedded' ? embeddedPlace() : serverPlace()
}

async function embeddedPlace(): Promise<Place> {
  const { folder, remove } = await temporaryFolder()
  const folders = [join(folder, 'shop')]
  const pidIn = async (dataFolder: string) => {
    const lock = await readFile(join(dataFolder, 'postgres-17', 'postmaster.pid'), 'utf8').catch(() => '')
    return Number.parseInt(lock, 10)
  }
  const killIn = async (dataFolder: string, whole: boolean) => {
    const pid = await pidIn(dataFolder)
    if (pid > 0) whole ? killTree(pid) : killHard(pid)
  }
  return {
    where: folders[0]!,
    async fresh() {
      const next = join(folder, `shop-${folders.length}`)
      await mkdir(next, { mode: 0o711 })
      folders.push(next)
      return next
    },
    killDatabase: killIn,
    restart: async () => {},
    async remove() {
      for (const each of folders) await killIn(each, true)
      await remove()
    },
  }
}

async function serverPlace(): Promise<Place> {
  const server = await debianServer()
  await server.start()
  return {
    where: await server.freshDatabase(),
    fresh: () => server.freshDatabase(),
    killDatabase: (_, whole) => server.kill(whole),
    restart: () => server.start(),
    remove: () => server.remove(),
  }
}
