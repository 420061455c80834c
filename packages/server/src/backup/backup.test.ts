import { readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { fold, recordHash, stateHash } from '@gripbook/record'
import { sql } from 'kysely'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { shopKey } from '../archives/signature.ts'
import { openZip } from '../archives/zipIn.ts'
import { sha256 } from '../sha256.ts'
import { chainOf } from '../testing/chains.ts'
import { type Full, fill } from '../testing/fullShop.ts'
import { type TestShop, testShop } from '../testing/testShop.ts'
import { backUp, NotWhole } from './backup.ts'
import { checkRecord } from './check.ts'
import { BACKUP_LIMITS } from './manifest.ts'
import { readBackup } from './readBackup.ts'
import { NotEmpty, restore } from './restore.ts'

const VERSION = '9.9.9'
let here: TestShop
let full: Full
let file: string
beforeAll(async () => {
  here = await testShop()
  full = await fill(here)
  file = join(here.folder, 'shop.backup')
  await backUp(here.shop, file, VERSION)
})
afterAll(() => here.close())

const stateOf = async ({ store }: Pick<TestShop, 'store'>) =>
  Promise.all(
    (await store.units()).map(async (unit) => {
      const events = await store.ofUnit(unit)
      return [unit, recordHash(events, sha256), stateHash(fold(unit, events), sha256)]
    }),
  )

test('[RE10] a shop that was restored is the shop that was backed up, proven unit by unit', async () => {
  const there = await testShop({}, { paired: false })
  const restored = await restore(there.shop, file, VERSION)
  expect(restored).toMatchObject({
    units: 2,
    photographs: 2,
    absent: 1,
    key: await shopKey(here.shop.db),
    statesCompared: true,
  })
  expect(await stateOf(there)).toEqual(await stateOf(here))
  expect((await there.store.since(null, 5_000)).events).toEqual((await here.store.since(null, 5_000)).events)
  for (const photograph of full.photographs)
    expect(await there.shop.photographs.read(photograph, 'full')).toEqual(
      await here.shop.photographs.read(photograph, 'full'),
    )
  expect(await checkRecord(there.shop)).toMatchObject({ faults: [], absent: [full.absent], strangers: [] })
  expect(await there.shop.db.selectFrom('entrance_person').selectAll().orderBy('id').execute()).toEqual(
    await here.shop.db.selectFrom('entrance_person').selectAll().orderBy('id').execute(),
  )
  expect(
    await there.shop.db.selectFrom('entrance_session').selectAll().execute(),
    'nobody comes in with a backup',
  ).toEqual([])
  expect(await there.shop.entrance.ownerCode(), 'the shop has its owner').toBeNull()
  const position = await here.store.end()
  await expect(there.store.since(position, 1), 'a position of the old record').rejects.toThrow(
    'has not given the position',
  )
  await there.close()
})

test('a record that is not empty is left as it is', async () => {
  const before = await stateOf(here)
  await expect(restore(here.shop, file, VERSION)).rejects.toThrow(NotEmpty)
  expect(await stateOf(here)).toEqual(before)
})

test('another version of Gripbook compares the entries alone, and says so', async () => {
  const there = await testShop({}, { paired: false })
  expect(await restore(there.shop, file, '10.0.0')).toMatchObject({ statesCompared: false, version: VERSION })
  await there.close()
})

test('a backup is of one moment, while others append', async () => {
  const owner = full.people[0]!
  const chain = full.chains[0]!
  let stop = false
  const appending = (async () => {
    while (!stop) await owner.ask('POST', '/api/entries', { entries: chain.some(5) })
  })()
  const path = join(here.folder, 'meanwhile.backup')
  for (let i = 0; i < 3; i++) {
    await backUp(here.shop, path, VERSION)
    const zip = await openZip(path, BACKUP_LIMITS)
    const { manifest } = await readBackup(zip, VERSION)
    const kept = (await here.store.since(null, 5_000)).events.slice(0, manifest.entries)
    for (const [unit, { record, entries }] of Object.entries(manifest.units)) {
      const ofUnit = kept.filter((event) => event.unit === unit)
      expect([ofUnit.length, recordHash(ofUnit, sha256)]).toEqual([entries, record])
    }
    zip.close()
  }
  stop = true
  await appending
})

test('a check names what was changed behind the record’s back', async () => {
  const shop = await testShop()
  const { units, photographs, people } = await fill(shop, 1, 10)
  const { db } = shop.shop
  expect(await checkRecord(shop.shop)).toMatchObject({ units: 1, photographs: 2, faults: [] })
  const [third] = await db.selectFrom('record_entry').selectAll().where('position', '=', 3).execute()
  const planted: [string, () => Promise<unknown>, RegExp][] = [
    [
      'an entry’s text',
      () =>
        sql`update record_entry set entry = replace(entry, '"width":90', '"width":91') where position = 1`.execute(db),
      /The content of entry 1 .* was changed/,
    ],
    [
      'an entry that is gone',
      () => db.deleteFrom('record_entry').where('position', '=', 3).execute(),
      new RegExp(`Entry 3 of device ${third!.device} is missing|some are missing`),
    ],
    [
      'a head',
      () => sql`update record_head set seq = seq + 1 where device = ${people[1]!.device}`.execute(db),
      /is said to end at|missing/,
    ],
    [
      'a row’s own name',
      () => sql`update record_entry set hash = ${'0'.repeat(64)} where position = 5`.execute(db),
      /kept under another name/,
    ],
    [
      'what is no entry',
      () => sql`update record_entry set entry = '{"a":1}' where position = 6`.execute(db),
      /position 6, is no entry/,
    ],
  ]
  let before = 0
  for (const [what, damage, words] of planted) {
    await damage()
    const { faults } = await checkRecord(shop.shop)
    expect(
      faults.some((fault) => words.test(fault.words) && (fault.unit === units[0] || fault.words.includes('log'))),
      `${what}: ${faults.map((fault) => fault.words).join(' | ')}`,
    ).toBe(true)
    expect(faults.length).toBeGreaterThan(before)
    before = faults.length
  }
  const { sha256: kept } = (await shop.shop.photographs.find(photographs[0]!))!
  const path = join(shop.folder, 'shop', 'photographs', kept.slice(0, 2), `${kept}.jpg`)
  const bytes = await readFile(path)
  bytes[bytes.length - 20] = bytes[bytes.length - 20]! ^ 1
  await writeFile(path, bytes)
  expect((await checkRecord(shop.shop)).faults.filter(({ photograph }) => photograph === photographs[0]).length).toBe(1)
  await shop.close()
})

test('what cannot be written leaves the file that was there, and no half one', async () => {
  const path = join(here.folder, 'kept.backup')
  await writeFile(path, 'an older backup')
  const broken = { ...here.shop.photographs, read: () => Promise.reject(new Error('the disk is gone')) }
  await expect(backUp({ ...here.shop, photographs: broken }, path, VERSION)).rejects.toThrow('the disk is gone')
  expect(await readFile(path, 'utf8')).toBe('an older backup')
  expect((await readdir(here.folder)).filter((name) => name.endsWith('.part'))).toEqual([])
})

test('a record that is not whole is not backed up, and what is wrong is told', async () => {
  const shop = await testShop()
  const { units } = await fill(shop, 1, 5)
  const { db } = shop.shop
  const path = join(shop.folder, 'shop.backup')
  const kept = await db.selectFrom('record_entry').selectAll().where('position', '=', 3).executeTakeFirstOrThrow()
  const put = (entry: string) => db.updateTable('record_entry').set({ entry }).where('position', '=', 3).execute()
  for (const [what, damage, mend, words] of [
    [
      'changed',
      () => put(kept.entry.replace('"who":"', '"who":"x')),
      () => put(kept.entry),
      `(${kept.id}) was changed`,
    ],
    ['no entry', () => put('x'), () => put(kept.entry), 'Line 3 of entries.ndjson is no entry'],
    [
      'gone',
      () => db.deleteFrom('record_entry').where('position', '=', 3).execute(),
      () => db.insertInto('record_entry').values(kept).execute(),
      'The entries kept at 3 to 3 are missing.',
    ],
    [
      'a head that is ahead',
      () => sql`update record_head set seq = seq + 1 where device = ${kept.device}`.execute(db),
      () => sql`update record_head set seq = seq - 1 where device = ${kept.device}`.execute(db),
      'is missing',
    ],
    [
      'a log that is ahead',
      () => sql`update record_log set last = last + 1`.execute(db),
      () => sql`update record_log set last = last - 1`.execute(db),
      'The log ends at',
    ],
  ] as [string, () => Promise<unknown>, () => Promise<unknown>, string][]) {
    await damage()
    const refused = await backUp(shop.shop, path, VERSION).then(
      () => null,
      (error: Error) => error,
    )
    expect(refused, what).toBeInstanceOf(NotWhole)
    expect(refused!.message, what).toContain(words)
    const { faults } = await checkRecord(shop.shop)
    expect(faults.length, what).toBeGreaterThan(0)
    await mend()
  }
  expect((await readdir(shop.folder)).filter((name) => name.includes('backup'))).toEqual([])
  expect((await checkRecord(shop.shop)).faults).toEqual([])
  await db.deleteFrom('record_head').where('unit', '=', units[0]!).where('device', '=', kept.device).execute()
  expect((await checkRecord(shop.shop)).faults).toMatchObject([
    { unit: units[0], device: kept.device, entry: expect.any(String) },
  ])
  await shop.close()
})

test('a record that is half restored is neither backed up nor taken for whole, and takes only its own backup', async () => {
  const there = await testShop({}, { paired: false })
  const { db } = there.shop
  await db
    .insertInto('shop_restore')
    .values({ id: 1, manifest: '0'.repeat(64) })
    .execute()
  await expect(backUp(there.shop, join(there.folder, 'half'), VERSION)).rejects.toThrow('being put back here')
  await expect(restore(there.shop, file, VERSION)).rejects.toThrow('A restore of another backup was begun here')
  expect((await checkRecord(there.shop)).faults.map(({ words }) => words)).toEqual([
    'A restore was begun here and not ended. Start it again with the same backup.',
  ])
  await there.close()
})

test('a check while others append finds nothing wrong, and names who was never paired here', async () => {
  const shop = await testShop()
  const { chains } = await fill(shop, 1, 5)
  const stranger = chainOf({ device: '00000000-0000-4000-8000-0000000000d9', person: 'a builder of another shop' })
  const first = stranger.next()
  await shop.store.append([first])
  let stop = false
  const appending = (async () => {
    while (!stop) await shop.store.append(chains[0]!.some(3))
  })()
  for (let i = 0; i < 5; i++)
    expect(await checkRecord(shop.shop)).toMatchObject({
      faults: [],
      strangers: [{ who: 'a builder of another shop', device: first.device, entries: 1, first: first.id }],
    })
  stop = true
  await appending
  await shop.close()
})
