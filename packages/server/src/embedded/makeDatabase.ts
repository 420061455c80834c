/** The first start: an empty database in the data folder, whole or not there at all. */
import { spawn } from 'node:child_process'
import { chmod, chown, mkdir, readdir, readFile, rename, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { DatabaseError } from '../database/faults.ts'
import { flushFolder } from '../flushFolder.ts'
import { type Account, blockedAt } from './account.ts'
import type { Binaries } from './binaries.ts'

/** Half-made databases of a first start that was killed are cleared away once they are this old; a younger one may still be in the making. */
const GIVEN_UP_AFTER = 3_600_000

export const SUPERUSER = 'gripbook'

/** The environment of PostgreSQL's programs: none of the user's PG… settings, texts in English so that they can be read here. */
export const PLAIN_ENVIRONMENT = { PATH: process.env.PATH ?? '', LC_ALL: 'C', TZ: 'UTC' }

export function databaseFolder(dataFolder: string, major: string): string {
  return join(dataFolder, `postgres-${major}`)
}

/** Makes the database in the data folder, unless it is there. Killed at any moment, or called twice at once, it leaves one whole database or none. */
export async function makeDatabase(dataFolder: string, binaries: Binaries, account: Account | null): Promise<void> {
  const folder = databaseFolder(dataFolder, binaries.major)
  const found = await majorOf(folder)
  if (found === binaries.major) return clearAway(dataFolder)
  if (found !== null) throw new DatabaseError({ code: 'not-a-database', folder })
  await refuseOtherVersion(dataFolder, binaries.major)
  const making = `${folder}.making-${process.pid}-${Math.random().toString(36).slice(2)}`
  await mkdir(making, { mode: 0o700 })
  if (account !== null) await chown(making, account.uid, account.gid)
  await initialise(making, binaries, account)
  await rename(making, folder).catch(async (error: NodeJS.ErrnoException) => {
    await rm(making, { recursive: true, force: true })
    if (error.code !== 'ENOTEMPTY' && error.code !== 'EEXIST') throw error
  })
  await flushFolder(dataFolder)
}

/** Makes the data folder, unless it is there, and sees that the account can pass through it. */
export async function makeDataFolder(dataFolder: string, account: Account | null): Promise<void> {
  try {
    const made = await mkdir(dataFolder, { recursive: true })
    if (made !== undefined) await chmod(dataFolder, account === null ? 0o700 : 0o711)
  } catch (cause) {
    throw new DatabaseError({ code: 'folder-not-writable', folder: dataFolder, reason: String(cause) }, cause)
  }
  const blocked = await blockedAt(dataFolder, account)
  if (blocked !== null && account !== null)
    throw new DatabaseError({ code: 'folder-out-of-reach', folder: dataFolder, blockedAt: blocked, user: account.uid })
}

/** The version of the database in a folder; null when the folder is not there, '' when it is something else. */
async function majorOf(folder: string): Promise<string | null> {
  if ((await stat(folder).catch(() => null)) === null) return null
  return (await readFile(join(folder, 'PG_VERSION'), 'utf8').catch(() => '')).trim()
}

/** Beginning an empty record beside a full one of another version would look as if everything had been lost. */
async function refuseOtherVersion(dataFolder: string, expected: string): Promise<void> {
  const found = (await readdir(dataFolder)).map((name) => /^postgres-(\d+)$/.exec(name)?.[1]).find(Boolean)
  if (found !== undefined) throw new DatabaseError({ code: 'other-version', folder: dataFolder, found, expected })
}

async function initialise(folder: string, { folder: programs }: Binaries, account: Account | null): Promise<void> {
  const args = ['-D', folder, '-U', SUPERUSER, '--no-locale', '-E', 'UTF8', '--data-checksums']
  // Whoever may enter the socket's folder (mode 0700) may connect, nobody else; nothing listens on a port.
  args.push('--auth-local=trust', '--auth-host=reject')
  const child = spawn(join(programs, 'bin', 'initdb'), args, {
    cwd: folder,
    env: PLAIN_ENVIRONMENT,
    stdio: ['ignore', 'ignore', 'pipe'],
    ...account,
  })
  let said = ''
  child.stderr.setEncoding('utf8').on('data', (text) => {
    said += text
  })
  const status = await new Promise<number | string>((done) => {
    child.once('error', (error) => done(error.message))
    child.once('close', (code, signal) => done(code ?? String(signal)))
  })
  if (status === 0) return
  await rm(folder, { recursive: true, force: true })
  throw new DatabaseError({ code: 'not-made', reason: said.trim() || `initdb ended with ${status}` })
}

async function clearAway(dataFolder: string): Promise<void> {
  for (const name of await readdir(dataFolder)) {
    const path = join(dataFolder, name)
    if (!/^postgres-.*\.making-/.test(name)) continue
    const { mtimeMs } = await stat(path)
    if (Date.now() - mtimeMs > GIVEN_UP_AFTER) await rm(path, { recursive: true, force: true })
  }
}
