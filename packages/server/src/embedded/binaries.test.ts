import { chmod, cp, lstat, mkdir, readdir, readFile, rm } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { temporaryFolder } from '../testing/folders.ts'
import { blockedAt } from './account.ts'
import { installed, usable } from './binaries.ts'

const NOBODY = { uid: 65534, gid: 65534 }
let folder = ''
let remove: () => Promise<void>
beforeEach(async () => {
  ;({ folder, remove } = await temporaryFolder())
})
afterEach(() => remove())

/** The libraries of the package without its links, as an install without scripts leaves them; the programs are not needed here. */
async function withoutLinks(): Promise<{ native: string; links: string[] }> {
  const { native: whole } = await installed()
  const native = join(folder, 'native')
  await mkdir(join(native, 'bin'), { recursive: true })
  await cp(join(whole, 'lib'), join(native, 'lib'), { recursive: true, verbatimSymlinks: true })
  await cp(join(whole, 'pg-symlinks.json'), join(native, 'pg-symlinks.json'))
  const listed = JSON.parse(await readFile(join(native, 'pg-symlinks.json'), 'utf8')) as { target: string }[]
  const links = listed.map(({ target }) => basename(target))
  for (const link of links) await rm(join(native, 'lib', link), { force: true })
  return { native, links }
}

test('the installed programs are used where they are', async () => {
  const { native, version } = await installed()
  expect(await usable(native, version, folder, null)).toEqual({ folder: native, major: '17' })
})

test('links that were left out because install scripts were off are made', async () => {
  const { native, links } = await withoutLinks()
  expect(links).toContain('libicui18n.so.60')
  expect(await usable(native, '17.1', folder, null)).toEqual({ folder: native, major: '17' })
  for (const link of links) expect((await lstat(join(native, 'lib', link))).isSymbolicLink(), link).toBe(true)
})

test('programs that the database’s user cannot reach are copied beside the data, links and all, once', async () => {
  const { native, links } = await withoutLinks()
  await chmod(native, 0o700)
  const data = join(folder, 'data')
  await mkdir(data)
  const account = process.getuid?.() === 0 ? NOBODY : { uid: 1, gid: 1 }
  expect(await blockedAt(join(native, 'bin'), account)).toBe(native)
  const copy = await usable(native, '17.1', data, account)
  expect(copy).toEqual({ folder: join(data, 'postgres-programs-17.1'), major: '17' })
  expect(await blockedAt(join(copy.folder, 'lib'), account)).toBe(null)
  const there = await readdir(join(copy.folder, 'lib'))
  for (const link of links) expect(there).toContain(link)
  expect(await readdir(data)).toEqual(['postgres-programs-17.1'])
  expect(await usable(native, '17.1', data, account)).toEqual(copy)
})
