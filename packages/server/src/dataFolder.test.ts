import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { dataFolder } from './dataFolder.ts'
import { temporaryFolder } from './testing/folders.ts'

let made: Awaited<ReturnType<typeof temporaryFolder>>
beforeAll(async () => {
  made = await temporaryFolder()
})
afterAll(() => made.remove())

test('the record lies where it is said, else where the user’s data lie', () => {
  const user = { home: '/people/bench', isRoot: false }
  expect(dataFolder({ GRIPBOOK_DATA: '/srv/shop', XDG_DATA_HOME: '/data' }, user)).toBe('/srv/shop')
  expect(dataFolder({ XDG_DATA_HOME: '/data' }, user)).toBe('/data/gripbook')
  expect(dataFolder({}, user)).toBe('/people/bench/.local/share/gripbook')
})

test('root’s record lies where services keep theirs, but stays at home where it was begun', async () => {
  const root = { home: made.folder, isRoot: true }
  expect(dataFolder({}, root)).toBe('/var/lib/gripbook')
  const atHome = join(made.folder, '.local', 'share', 'gripbook')
  await mkdir(atHome, { recursive: true })
  expect(dataFolder({}, root)).toBe('/var/lib/gripbook')
  await mkdir(join(atHome, 'postgres-17'))
  expect(dataFolder({}, root)).toBe(atHome)
  expect(dataFolder({ GRIPBOOK_DATA: '/srv/shop' }, root)).toBe('/srv/shop')
})
