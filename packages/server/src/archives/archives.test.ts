import { createWriteStream } from 'node:fs'
import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { buffer } from 'node:stream/consumers'
import { pipeline } from 'node:stream/promises'
import { canonical, fold, hashOf, knowledgeOf, nextEntry, stateHash } from '@gripbook/record'
import { afterAll, beforeAll, expect, test } from 'vitest'
import yazl from 'yazl'
import { sha256 } from '../sha256.ts'
import { chainOf } from '../testing/chains.ts'
import { type Full, fill } from '../testing/fullShop.ts'
import { seeded } from '../testing/seeded.ts'
import { type SignedIn, type TestShop, testShop } from '../testing/testShop.ts'
import { shopKey } from './signature.ts'
import { takeInArchive, unitFiles } from './unitArchive.ts'
import { openZip } from './zipIn.ts'
import { zipOf } from './zipOut.ts'

let here: TestShop
let there: TestShop
let full: Full
let archive: Buffer
beforeAll(async () => {
  ;[here, there] = await Promise.all([testShop(), testShop()])
  full = await fill(here)
  archive = (await here.owner.ask('GET', `/api/units/${full.units[0]}/archive`)).rawPayload
})
afterAll(() => Promise.all([here.close(), there.close()]))

const post = (shop: TestShop, { cookie }: SignedIn, payload: Buffer, type = 'application/zip') =>
  shop.app.inject({
    method: 'POST',
    url: '/api/archives',
    headers: { host: 'localhost', cookie, 'content-type': type },
    payload,
  })

/** The files of a zip by name. */
async function filesIn(bytes: Buffer): Promise<Map<string, Buffer>> {
  const path = join(here.folder, 'looked-at.zip')
  await writeFile(path, bytes)
  const zip = await openZip(path, { files: 1_000, bytes: 1e9 })
  const files = new Map<string, Buffer>()
  for (const name of zip.names) files.set(name, await zip.read(name, 1e9))
  zip.close()
  return files
}

async function zipOfFiles(files: Iterable<[string, Buffer]>, mode = 0o100600): Promise<Buffer> {
  const zip = new yazl.ZipFile()
  for (const [name, bytes] of files) zip.addBuffer(bytes, name, { mode })
  zip.end()
  const path = join(here.folder, 'made.zip')
  await pipeline(zip.outputStream, createWriteStream(path))
  return readFile(path)
}

const written = async (shop: TestShop): Promise<string> => JSON.stringify(await shop.store.since(null, 5_000))

test('a unit goes to another shop with nothing lost, and once more changes nothing', async () => {
  const [unit] = full.units as [string]
  const first = await post(there, there.owner, archive)
  const entries = await here.store.ofUnit(unit)
  expect([first.statusCode, first.json()]).toEqual([
    200,
    {
      unit,
      added: entries.length,
      known: 0,
      photographs: { added: 1, known: 0 },
      absent: 1,
      signed: 'by another shop',
      key: await shopKey(here.shop.db),
    },
  ])
  const arrived = await there.store.ofUnit(unit)
  expect(arrived).toEqual(entries)
  expect(stateHash(fold(unit, arrived), sha256)).toBe(stateHash(fold(unit, entries), sha256))
  const [sentOne, arrivedOne] = await Promise.all(
    [here, there].map(({ shop }) => shop.photographs.read(full.photographs[0]!, 'full')),
  )
  expect(sentOne).not.toBeNull()
  expect(arrivedOne).toEqual(sentOne)
  expect((await post(there, there.owner, archive)).json()).toMatchObject({
    added: 0,
    known: entries.length,
    photographs: { added: 0, known: 1 },
  })
  expect((await post(here, here.owner, archive)).json()).toMatchObject({ added: 0, signed: 'by this shop' })
  const back = await filesIn((await there.owner.ask('GET', `/api/units/${unit}/archive`)).rawPayload)
  const sent = await filesIn(archive)
  for (const name of ['entries.ndjson', 'unit.json']) expect(back.get(name)).toEqual(sent.get(name))
})

test('the same record gives the same archive, byte for byte but for the time', async () => {
  const at = '2026-03-02T10:00:00.000Z'
  const [one, two] = await Promise.all(
    [1, 2].map(async () => buffer(zipOf((await unitFiles(here.shop, full.units[0]!, at))!))),
  )
  expect(one).toEqual(two)
})

test('an archive is for whoever is paired, taking one in for the owner alone', async () => {
  const builder = await here.signIn('builder')
  expect((await builder.ask('GET', `/api/units/${full.units[1]}/archive`)).headers['content-type']).toBe(
    'application/zip',
  )
  expect((await post(here, builder, archive)).statusCode).toBe(403)
  expect((await post(here, here.owner, archive, 'application/octet-stream')).statusCode).toBe(415)
  expect((await here.owner.ask('GET', '/api/units/00000000-0000-4000-8000-000000000000/archive')).statusCode).toBe(404)
})

test('every file of an archive that is changed, cut, taken out or added is named, and nothing is taken in', async () => {
  const shop = await testShop()
  const files = await filesIn(archive)
  const before = await written(shop)
  let tried = 0
  for (const [name, bytes] of files) {
    const middle = Math.floor(bytes.length / 2)
    const changed = Buffer.from(bytes)
    changed[middle] = changed[middle]! ^ 1
    const doubled = await post(shop, shop.owner, await zipOfFiles([...files, [name, bytes]]))
    expect([doubled.statusCode, doubled.json().faults[0]]).toEqual([
      422,
      expect.stringContaining(`"${name}" is there twice`),
    ])
    for (const damage of [changed, bytes.subarray(0, middle), null]) {
      // Without a signature it is an archive that nobody signed: that is told, not refused.
      if (name === 'signature.json' && damage === null) continue
      const damaged = new Map(files)
      if (damage === null) damaged.delete(name)
      else damaged.set(name, damage)
      const answer = await post(shop, shop.owner, await zipOfFiles(damaged))
      expect([name, answer.statusCode, answer.json().code]).toEqual([name, 422, 'bad-archive'])
      expect(answer.json().faults.join(' ')).toMatch(
        name === 'signature.json' ? /signature/ : new RegExp(`${name}|manifest|Line|entry`),
      )
      tried++
    }
  }
  expect(tried).toBeGreaterThan(10)
  const more = await post(shop, shop.owner, await zipOfFiles([...files, ['more.txt', Buffer.from('x')]]))
  expect(more.json().faults).toEqual(['more.txt is not named in the manifest.'])
  expect(await written(shop)).toBe(before)
  const unsigned = new Map(files)
  unsigned.delete('signature.json')
  expect((await post(shop, shop.owner, await zipOfFiles(unsigned))).json().signed).toBe('not at all')
  await shop.close()
})

test('a flipped bit anywhere in an archive is refused, or is where nothing is read', async () => {
  const random = seeded(11)
  const before = await written(here)
  let refused = 0
  for (let i = 0; i < 60; i++) {
    const flipped = Buffer.from(archive)
    const at = Math.floor(random() * archive.length)
    flipped[at] = flipped[at]! ^ (1 << Math.floor(random() * 8))
    const answer = await post(here, here.owner, flipped)
    if (answer.statusCode === 200) expect(answer.json()).toMatchObject({ added: 0, signed: 'by this shop' })
    else expect([at, answer.statusCode, answer.json().code]).toEqual([at, 422, 'bad-archive'])
    if (answer.statusCode !== 200) refused++
  }
  expect(refused).toBeGreaterThan(50)
  expect(await written(here)).toBe(before)
})

test('more than 500 MB is refused before it is taken, and a record that is half restored takes nothing', async () => {
  const headers = { host: 'localhost', cookie: here.owner.cookie, 'content-type': 'application/zip' }
  const large = await here.app.inject({
    method: 'POST',
    url: '/api/archives',
    headers: { ...headers, 'content-length': '500000001' },
    payload: archive,
  })
  expect([large.statusCode, large.json().code]).toEqual([413, 'too-large'])
  const { db } = here.shop
  await db.insertInto('shop_restore').values({ id: 1, manifest: 'x' }).execute()
  await expect(takeInArchive(here.shop, join(here.folder, 'none.zip'))).rejects.toThrow('being put back here')
  await db.deleteFrom('shop_restore').execute()
})

test('an archive that was made to harm is refused before anything of it is used', async () => {
  const before = await written(here)
  const files = await filesIn(archive)
  const twice = await zipOfFiles([...files, ['manifest.json', Buffer.from('{}')]])
  const slip = Buffer.from(
    await zipOfFiles(
      [...files, ['../../../tmp/slipped', Buffer.from('x')].slice(0, 2) as [string, Buffer]].map(([name, bytes]) => [
        name.replaceAll('../', 'aa/'),
        bytes,
      ]),
    ),
  )
  for (let at = slip.indexOf('aa/aa/aa/'); at >= 0; at = slip.indexOf('aa/aa/aa/', at)) slip.write('../../../', at)
  const link = await zipOfFiles([['entries.ndjson', Buffer.from('/etc/passwd')]], 0o120777)
  const bomb = await zipOfFiles([['entries.ndjson', Buffer.alloc(450_000_000)]])
  expect(bomb.length).toBeLessThan(2_000_000)
  for (const [what, bytes, words] of [
    ['a file twice', twice, /is there twice/],
    ['a way out', slip, /cannot be read as a zip|no name that an archive has/],
    ['a link', link, /is no plain file/],
    ['a bomb', bomb, /holds more than/],
    [
      'no zip',
      Buffer.from('PK\u0003\u0004 nothing'),
      /cannot be read as a zip file .its end is not that of a zip file: cut off/,
    ],
    ['an empty zip', await zipOfFiles([]), /manifest.json is missing/],
  ] as const) {
    const answer = await post(here, here.owner, bytes)
    expect([what, answer.statusCode]).toEqual([what, 422])
    expect(answer.json().faults[0], what).toMatch(words)
  }
  expect(await written(here)).toBe(before)
})

test('an archive that contradicts what is kept is refused with the entry named', async () => {
  const [unit] = full.units as [string]
  const files = await filesIn(archive)
  const fork = await testShop()
  // The same device, gone on from an older copy, makes another history here.
  const entries = await here.store.ofUnit(unit)
  const device = entries[0]!.device
  const other = nextEntry(
    knowledgeOf(unit, device, entries.filter((event) => event.device === device).slice(0, 1)),
    {
      id: '00000000-0000-4000-8000-00000000abcd',
      at: '2026-03-01T10:00:00.000Z',
      who: entries[0]!.who,
      type: 'note-written',
      version: 1,
      body: { text: 'another' },
    },
    sha256,
  )
  await fork.store.append([entries.filter((event) => event.device === device).sort((a, b) => a.seq - b.seq)[0]!, other])
  const before = await written(fork)
  const answer = await post(fork, fork.owner, await zipOfFiles(files))
  expect(answer.statusCode).toBe(422)
  expect(answer.json().faults[0]).toBe(
    `Entry 2 of device ${device} (${entries.find((event) => event.device === device && event.seq === 2)!.id}) is another one here (${other.id}).`,
  )
  expect(await written(fork)).toBe(before)
  await fork.close()
})

test('an id that stands for another entry about another unit is found before anything is written', async () => {
  const shop = await testShop()
  const [unit] = full.units as [string]
  const last = (await here.store.ofUnit(unit)).at(-1)!
  const elsewhere = chainOf(shop.owner).next()
  const taken = { ...elsewhere, id: last.id }
  await shop.store.append([{ ...taken, hash: hashOf(taken, sha256) }])
  const before = await written(shop)
  const answer = await post(shop, shop.owner, archive)
  expect([answer.statusCode, answer.json().faults]).toEqual([
    422,
    [`The entry ${last.id} is another one here: entry 1 of device ${elsewhere.device} about unit ${elsewhere.unit}.`],
  ])
  expect(await written(shop)).toBe(before)
  expect(await shop.shop.photographs.find(full.photographs[0]!)).toBeNull()
  await shop.close()
})

test('what lies there as a photograph and is none is refused before any photograph is kept', async () => {
  const shop = await testShop()
  const files = await filesIn(archive)
  files.delete('signature.json')
  const { hash: _, ...manifest } = JSON.parse(files.get('manifest.json')!.toString())
  const bytes = Buffer.from('<script>')
  const one = { ...manifest.photographs[0], photograph: full.absent, sha256: sha256(bytes), bytes: bytes.length }
  const made = { ...manifest, photographs: [...manifest.photographs, one], absent: [] }
  files.set('manifest.json', Buffer.from(JSON.stringify({ ...made, hash: sha256(canonical(made)) })))
  files.set(`photographs/${full.absent}.jpg`, bytes)
  const answer = await post(shop, shop.owner, await zipOfFiles(files))
  expect([answer.statusCode, answer.json().faults]).toEqual([
    422,
    [`photographs/${full.absent}.jpg is not the clean picture that the manifest says.`],
  ])
  expect(await shop.shop.db.selectFrom('photograph_kept').selectAll().execute()).toEqual([])
  await shop.close()
})
