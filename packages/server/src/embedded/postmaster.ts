/** One PostgreSQL process on one database folder: found by its own lock file, started, stopped. */
import { spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import {
  chown,
  lstat,
  mkdir,
  mkdtemp,
  open,
  readdir,
  readFile,
  readlink,
  realpath,
  rename,
  rm,
  stat,
} from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Account, blockedAt } from './account.ts'
import { PLAIN_ENVIRONMENT } from './makeDatabase.ts'

/** What a running server says of itself in `postmaster.pid`. */
export type Postmaster = { pid: number; socketFolder: string }

export type Start = {
  programs: string
  folder: string
  socketFolder: string
  log: string
  account: Account | null
  settings: Record<string, string>
}

/** The socket's name, `.s.PGSQL.` and the port; the port is a name only, nothing listens on it. */
export const PORT = 5432

/** The length of a socket's path that every system takes (macOS has the shortest), in bytes. */
const LONGEST_SOCKET_PATH = 103

const LOG_AT_MOST = 1_000_000

export async function postmasterOf(folder: string): Promise<Postmaster | null> {
  const lines = (await readFile(join(folder, 'postmaster.pid'), 'utf8').catch(() => '')).split('\n')
  const pid = Number(lines[0])
  const socketFolder = lines[4]
  return Number.isInteger(pid) && pid > 0 && socketFolder ? { pid, socketFolder } : null
}

/**
 * A folder for the socket that stays the same for one database, short whatever the data folder is called (a socket's path has about a hundred
 * bytes), and that only the account can enter: one that another user has put there first is not used.
 */
export async function makeSocketFolder(folder: string, account: Account | null): Promise<string> {
  const owner = account?.uid ?? process.getuid?.() ?? -1
  const name = `gripbook-${createHash('sha256')
    .update(await realpath(folder))
    .digest('hex')
    .slice(0, 12)}`
  const base = await temporaryFolder(name, account)
  const path = join(base, name)
  const made = await mkdir(path, { mode: 0o700 }).then(
    () => true,
    () => false,
  )
  if (made && account !== null) await chown(path, account.uid, account.gid)
  const found = await lstat(path)
  if (found.isDirectory() && found.uid === owner && (found.mode & 0o077) === 0) return path
  const own = await mkdtemp(`${path}-`)
  if (account !== null) await chown(own, account.uid, account.gid)
  return own
}

async function temporaryFolder(name: string, account: Account | null): Promise<string> {
  const wanted = tmpdir()
  const longest = join(wanted, `${name}-XXXXXX`, `.s.PGSQL.${PORT}.lock`)
  const fits = Buffer.byteLength(longest) <= LONGEST_SOCKET_PATH
  return fits && (await blockedAt(wanted, account).catch(() => wanted)) === null ? wanted : '/tmp'
}

/** `ended`: null while it runs, then what it said last. The process outlives this one: it is stopped by whoever leaves last. */
export async function startPostmaster(start: Start): Promise<{ ended: () => Promise<string | null> }> {
  const { programs, folder, socketFolder, log, account } = start
  const grown = (await stat(log).catch(() => null))?.size ?? 0
  if (grown > LOG_AT_MOST) await rename(log, `${log}.1`)
  const output = await open(log, 'a', 0o600)
  const from = (await output.stat()).size
  const settings = Object.entries({
    listen_addresses: '',
    unix_socket_directories: socketFolder,
    unix_socket_permissions: '0700',
    ...start.settings,
  })
  const child = spawn(
    join(programs, 'bin', 'postgres'),
    ['-D', folder, '-p', String(PORT), ...settings.flatMap(([name, value]) => ['-c', `${name}=${value}`])],
    { cwd: folder, env: PLAIN_ENVIRONMENT, detached: true, stdio: ['ignore', output.fd, output.fd], ...account },
  )
  let failure: string | null = null
  child.once('error', (error) => {
    failure = error.message
  })
  child.once('exit', (code, signal) => {
    failure = `postgres ended with ${code ?? signal}`
  })
  child.unref()
  await output.close()
  return {
    ended: async () => failure && `${failure}: ${(await readFile(log)).subarray(from).toString().trim()}`,
  }
}

/** Whether a start was refused because another server is, or was a moment ago, on the folder. */
export function metAnother(said: string): boolean {
  return /lock file "[^"]*" already exists|shared memory block .* still in use|is empty\s*$/m.test(said)
}

/** Asks for a clean end at once (connections are closed, nothing is lost) and waits until the lock file is gone. False when it is still there. */
export async function stopPostmaster(folder: string, pid: number, patience: number): Promise<boolean> {
  try {
    process.kill(pid, 'SIGINT')
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ESRCH') throw error
    return true
  }
  const until = performance.now() + patience
  while (performance.now() < until) {
    if ((await postmasterOf(folder))?.pid !== pid) return true
    await pause(10)
  }
  return false
}

/**
 * After a crash the lock file may name a number that another program has now (in a container the same small numbers come again), and then
 * PostgreSQL refuses to start. Removes the file when no process at all works in the folder: PostgreSQL's processes do, all of them.
 * Only where the system tells (Linux); elsewhere false, and PostgreSQL's own words stand.
 */
export async function removeStaleLock(folder: string): Promise<boolean> {
  const found = await postmasterOf(folder)
  if (found === null || process.platform !== 'linux') return false
  const real = await realpath(folder)
  const processes = (await readdir('/proc')).filter((name) => /^\d+$/.test(name))
  const places = await Promise.all(processes.map((pid) => readlink(`/proc/${pid}/cwd`).catch(() => null)))
  if (places.includes(real)) return false
  await rm(join(folder, 'postmaster.pid'), { force: true })
  return true
}

export function pause(milliseconds: number): Promise<void> {
  return new Promise((done) => setTimeout(done, milliseconds))
}
