/** The two places where the record may live, as the trial starts, kills and finds them. */
import { mkdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { debianServer } from '../../packages/server/src/testing/debianServer.ts'
import { temporaryFolder } from '../../packages/server/src/testing/folders.ts'
import { killHard, killTree } from '../../packages/server/src/testing/killTree.ts'

export type Kind = 'embedded' | 'server'

/** What a Gripbook is told: its data folder, and the address of the database where it is not in there. */
export type Spot = { dataFolder: string; url: string | null }

export type Place = {
  spot: Spot
  /** A place of the same kind where nothing has ever been kept. */
  fresh(): Promise<Spot>
  /** SIGKILL to PostgreSQL, all of it or its first process alone. */
  killDatabase(spot: Spot, whole: boolean): Promise<void>
  /** Starts PostgreSQL where Gripbook does not do so itself. */
  restart(): Promise<void>
  remove(): Promise<void>
}

export function placeFor(kind: Kind): Promise<Place> {
  return kind === 'embedded' ? embeddedPlace() : serverPlace()
}

async function embeddedPlace(): Promise<Place> {
  const { folder, remove } = await temporaryFolder()
  const spots: Spot[] = []
  const fresh = async () => {
    const dataFolder = join(folder, `shop-${spots.length}`)
    await mkdir(dataFolder, { mode: 0o711 })
    spots.push({ dataFolder, url: null })
    return spots.at(-1)!
  }
  const pidIn = async ({ dataFolder }: Spot) => {
    const lock = await readFile(join(dataFolder, 'postgres-17', 'postmaster.pid'), 'utf8').catch(() => '')
    return Number.parseInt(lock, 10)
  }
  const killDatabase = async (spot: Spot, whole: boolean) => {
    const pid = await pidIn(spot)
    if (pid > 0) whole ? killTree(pid) : killHard(pid)
  }
  return {
    spot: await fresh(),
    fresh,
    killDatabase,
    restart: async () => {},
    async remove() {
      for (const spot of spots) await killDatabase(spot, true)
      await remove()
    },
  }
}

async function serverPlace(): Promise<Place> {
  const { folder, remove } = await temporaryFolder()
  const server = await debianServer()
  await server.start()
  let made = 0
  const fresh = async (): Promise<Spot> => ({
    dataFolder: join(folder, `shop-${made++}`),
    url: await server.freshDatabase(),
  })
  return {
    spot: await fresh(),
    fresh,
    killDatabase: (_, whole) => server.kill(whole),
    restart: () => server.start(),
    async remove() {
      await server.remove()
      await remove()
    },
  }
}
