/** Backup, restore and check as a shop runs them: processes on a folder that another process serves. */
import { randomBytes, randomUUID } from 'node:crypto'
import { chmod, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { checkRecord, openShop } from '@gripbook/server'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { type PairedDevice, pairedDevice, run, type ServedShop, serve } from './testing/served.ts'

/** A number from 0 up to 1, the same series for the same seed. */
function seeded(seed: number): () => number {
  let state = seed
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return state / 2 ** 32
  }
}

const UNIT = randomUUID()
let folder = ''
let shop: ServedShop
let device: PairedDevice
const data = (name: string) => join(folder, name)
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'gb-keeping-'))
  await chmod(folder, 0o711)
  shop = await serve(['--data', data('shop')])
  device = await pairedDevice(shop, shop.code!, UNIT)
  for (let i = 0; i < 5; i++) expect(await device.send(1_500)).toBe(200)
})
afterAll(async () => {
  await shop?.stop()
  await rm(folder, { recursive: true, force: true })
})

test('a shop is backed up while it is served, restored elsewhere, and proven', async () => {
  const file = data('shop.backup')
  const made = await run(['backup', '-o', file, '--data', data('shop')])
  expect([made.status, made.err]).toEqual([0, ''])
  expect(made.out).toMatch(/1 unit, 7500 entries, 0 photographs, \d+ bytes\. Read again, and whole\./)
  const signed = /Signed with the key [0-9a-f]{64}\./.exec(made.out)![0]
  expect(await device.send(3), 'it still serves').toBe(200)
  const checked = await run(['check', file, '--json'])
  expect([checked.status, JSON.parse(checked.out)]).toMatchObject([
    0,
    { gripbook: 'check/1', what: 'backup', whole: true, faults: [] },
  ])

  const restored = await run(['restore', file, '--data', data('elsewhere')])
  expect([restored.status, restored.err]).toEqual([0, ''])
  expect(restored.out).toContain(signed)
  expect(restored.out).toContain('Proven: every unit was folded again from what is kept now')
  expect(restored.out).toContain('gripbook serve --another-owner')
  const whole = await run(['check', '--data', data('elsewhere')])
  expect([whole.status, whole.out]).toEqual([0, expect.stringContaining('The record is whole.\n1 unit, 7500 entries')])
  const again = await run(['restore', file, '--data', data('elsewhere')])
  expect([again.status, again.err]).toEqual([
    2,
    expect.stringContaining('There is a record here already: nothing was touched'),
  ])
})

test('a restore that is killed at any moment says so, and ends well when it is started again', async () => {
  const file = data('shop.backup')
  const into = data('killed')
  // Open here too, so that the database is not started anew for each round.
  const open = await openShop({
    env: {},
    dataFolder: into,
    secure: false,
    clock: Date.now,
    random: randomBytes,
    failed: () => {},
  })
  const { db } = open.shop
  const empty = async () => {
    for (const table of [
      'record_entry',
      'record_head',
      'entrance_pairing',
      'entrance_device',
      'entrance_person',
    ] as const)
      await db.deleteFrom(table).execute()
    await db.updateTable('record_log').set({ last: 0 }).execute()
  }
  const begun = performance.now()
  expect((await run(['restore', file, '--data', into])).status).toBe(0)
  let whole = performance.now() - begun
  await empty()
  const random = seeded(2026)
  let unfinished = 0
  // A busy machine takes longer than it did at first, or a shorter time: the moments go after what was found, until one lies in the middle.
  for (let round = 0; round < 10 || (unfinished === 0 && round < 60); round++) {
    const { status } = await run(['restore', file, '--data', into], whole * (0.4 + 0.6 * random()))
    const { faults, entries } = await checkRecord(open.shop)
    if (status === 0) whole *= 0.8
    else if (faults.length === 0 && entries === 0) whole *= 1.2
    if (faults.length > 0) {
      unfinished++
      expect(faults.map(({ words }) => words)).toEqual([
        'A restore was begun here and not ended. Start it again with the same backup.',
      ])
    } else {
      expect([0, 7_500]).toContain(entries)
      if (entries > 0) await empty()
    }
  }
  expect(unfinished, 'some of them were killed in the middle').toBeGreaterThan(0)
  if ((await checkRecord(open.shop)).faults.length > 0)
    expect(await run(['backup', '-o', data('half.backup'), '--data', into])).toMatchObject({
      status: 2,
      err: expect.stringContaining('gripbook restore again'),
    })
  const last = await run(['restore', file, '--data', into, '--json'])
  expect([last.status, JSON.parse(last.out)]).toMatchObject([
    0,
    { gripbook: 'restore/1', what: 'backup', units: 1, entries: 7_500, absent: 0, statesCompared: true },
  ])
  expect(await checkRecord(open.shop)).toMatchObject({ faults: [], units: 1, entries: 7_500 })
  await open.close()
})

test('one unit goes as an archive into another shop, and a damaged file is refused in words', async () => {
  const file = data('unit.zip')
  const made = await run(['backup', '-o', file, '--unit', UNIT, '--data', data('shop'), '--json'])
  const key = expect.stringMatching(/^[0-9a-f]{64}$/)
  expect(JSON.parse(made.out)).toEqual({ gripbook: 'backup/1', file, what: 'archive', unit: UNIT, key })
  const taken = await run(['restore', file, '--data', data('other')])
  expect([taken.status, taken.out]).toEqual([
    0,
    expect.stringMatching(/7503 new entries, 0 known.* Signed by another shop, with the key [0-9a-f]{64}\./),
  ])
  expect(JSON.parse((await run(['restore', file, '--data', data('other'), '--json'])).out)).toEqual({
    gripbook: 'restore/1',
    what: 'archive',
    unit: UNIT,
    added: 0,
    known: 7_503,
    photographs: { added: 0, known: 0 },
    absent: 0,
    signed: 'by another shop',
    key,
  })
  const bytes = await readFile(file)
  bytes[Math.floor(bytes.length / 2)]! ^= 4
  await writeFile(file, bytes)
  const checked = await run(['check', file])
  expect([checked.status, checked.out]).toEqual([1, expect.stringContaining('The archive is not whole:\n  ✗ ')])
  const refused = await run(['restore', file, '--data', data('third')])
  expect([refused.status, refused.out]).toEqual([2, ''])
  expect(refused.err).toMatch(/damaged|changed|no entry/)
  const unknown = await run(['backup', '-o', data('none.zip'), '--unit', randomUUID(), '--data', data('shop')])
  expect([unknown.status, unknown.err]).toEqual([2, expect.stringContaining('There is no unit')])
})

test('what is not there, and what is asked wrongly, is told in words', async () => {
  for (const [args, words] of [
    [['check', data('nothing.backup')], /There is no such file/],
    [['restore'], /Which file/],
    [['backup'], /Which file/],
    [['restore', 'a', 'b'], /One file at a time/],
    [['check', '--dta', 'x'], /Did you mean --data/],
    [['check', '--data', data('mistyped')], /There is no record in .*mistyped/],
    [['backup', '-o', data('none'), '--data', data('mistyped')], /There is no record in .*mistyped/],
  ] as [string[], RegExp][]) {
    const { status, err } = await run(args)
    expect([args, status]).toEqual([args, 2])
    expect(err).toMatch(words)
  }
  expect((await readdir(folder)).filter((name) => name === 'mistyped' || name === 'none')).toEqual([])
  const none = await run(['check', join(import.meta.dirname, '../../../demo/side-cover.json')])
  expect([none.status, none.out, none.err]).toEqual([2, '', expect.stringContaining('this is a text, no backup')])
  await writeFile(data('noise'), Buffer.from([0x50, 0x4b, 0, 0x80, 0xff]))
  const { status, out } = await run(['check', data('noise')])
  expect([status, out]).toEqual([1, expect.stringContaining('cannot be read as a zip file')])
})
