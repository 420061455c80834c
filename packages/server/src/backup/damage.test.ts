import { createWriteStream } from 'node:fs'
import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { pipeline } from 'node:stream/promises'
import { canonical, type Event, hashOf } from '@gripbook/record'
import { afterAll, beforeAll, expect, test } from 'vitest'
import yazl from 'yazl'
import { openZip } from '../archives/zipIn.ts'
import { sha256 } from '../sha256.ts'
import { type Full, fill } from '../testing/fullShop.ts'
import { seeded } from '../testing/seeded.ts'
import { type TestShop, testShop } from '../testing/testShop.ts'
import { backUp } from './backup.ts'
import type { Fault } from './fault.ts'
import { BACKUP_FILES, BACKUP_LIMITS, type BackupManifest, backupHash } from './manifest.ts'
import { BadBackup, type ReadBackup, readBackup } from './readBackup.ts'
import { restore } from './restore.ts'

const VERSION = '9.9.9'
let here: TestShop
let full: Full
let file: string
let files: Map<string, Buffer>
beforeAll(async () => {
  here = await testShop()
  full = await fill(here, 2, 15)
  file = join(here.folder, 'shop.backup')
  await backUp(here.shop, file, VERSION)
  files = await filesIn(file)
})
afterAll(() => here.close())

async function filesIn(path: string): Promise<Map<string, Buffer>> {
  const zip = await openZip(path, BACKUP_LIMITS)
  const found = new Map<string, Buffer>()
  for (const name of zip.names) found.set(name, await zip.read(name, 1e9))
  zip.close()
  return found
}

async function written(given: Iterable<[string, Buffer]>): Promise<string> {
  const zip = new yazl.ZipFile()
  for (const [name, bytes] of given) zip.addBuffer(bytes, name, { mode: 0o100600 })
  zip.end()
  const path = join(here.folder, 'made.backup')
  await pipeline(zip.outputStream, createWriteStream(path))
  return path
}

/** What reading it says: all of it, or what is wrong with it. */
async function readAt(path: string): Promise<ReadBackup | { faults: readonly Fault[] }> {
  try {
    const zip = await openZip(path, BACKUP_LIMITS)
    try {
      return await readBackup(zip, VERSION)
    } finally {
      zip.close()
    }
  } catch (error) {
    if (error instanceof BadBackup) return { faults: error.faults }
    expect((error as Error).message).toMatch(
      /cannot be read as a zip|is no name|is there twice|is encrypted|no plain file|holds more|is longer/,
    )
    return { faults: [{ words: (error as Error).message }] }
  }
}

const wordsOf = (read: Awaited<ReturnType<typeof readAt>>): string =>
  'faults' in read ? read.faults.map(({ words }) => words).join('\n') : ''

test('a flipped bit anywhere is refused, or is where nothing is read', async () => {
  const bytes = await readFile(file)
  const random = seeded(7)
  const path = join(here.folder, 'flipped.backup')
  const whole = await readAt(file)
  let refused = 0
  for (let i = 0; i < 200; i++) {
    const flipped = Buffer.from(bytes)
    const at = Math.floor(random() * bytes.length)
    flipped[at] = flipped[at]! ^ (1 << Math.floor(random() * 8))
    await writeFile(path, flipped)
    const found = await readAt(path)
    // Dates, modes and sizes that a zip says twice are not read: then everything that is read is what it was.
    if ('faults' in found) refused++
    else expect({ ...found, signer: null }, `byte ${at}`).toEqual({ ...whole, signer: null })
  }
  expect(refused).toBeGreaterThan(170)
})

test('a backup that was cut off at any tenth is refused', async () => {
  const bytes = await readFile(file)
  const path = join(here.folder, 'cut.backup')
  for (let tenth = 0; tenth < 10; tenth++) {
    await writeFile(path, bytes.subarray(0, Math.floor((bytes.length * tenth) / 10)))
    expect(await readAt(path), `cut at ${tenth} tenths`).toHaveProperty('faults')
  }
})

test('every file of a backup that is changed, cut, taken out, doubled or added is named', async () => {
  for (const [name, bytes] of files) {
    const middle = Math.floor(bytes.length / 2)
    const changed = Buffer.from(bytes)
    changed[middle] = changed[middle]! ^ 1
    const damages: [string, Iterable<[string, Buffer]>][] = [
      ['changed', new Map(files).set(name, changed)],
      ['cut', new Map(files).set(name, bytes.subarray(0, middle))],
      ['emptied', new Map(files).set(name, Buffer.alloc(0))],
      ['doubled', [...files, [name, bytes]]],
    ]
    const without = new Map(files)
    without.delete(name)
    if (name !== BACKUP_FILES.signature) damages.push(['taken out', without])
    for (const [what, given] of damages)
      expect(wordsOf(await readAt(await written(given))), `${name} ${what}`).toMatch(
        name === BACKUP_FILES.signature && what !== 'doubled' ? /signature/ : new RegExp(name),
      )
  }
  const more = await readAt(await written([...files, ['photographs/more.jpg', Buffer.from('x')]]))
  expect(wordsOf(more)).toBe('photographs/more.jpg is not named in the manifest.')
})

test('without its signature a backup is one that nobody signed, and with another content it is refused', async () => {
  const unsigned = new Map(files)
  unsigned.delete(BACKUP_FILES.signature)
  expect(await readAt(await written(unsigned))).toMatchObject({ signer: 'none' })
  const again = resealed(files, (lines) => lines)
  expect(await readAt(await written(again)), 'the same, sealed again').toMatchObject({
    signer: { key: expect.any(String) },
  })
  const other = resealed(files, (lines) => lines, { at: '2026-01-01T00:00:00.000Z' })
  expect(wordsOf(await readAt(await written(other)))).toMatch(/^The signature does not fit/)
})

/** The files with other entries, every hash of a file and of the manifest put right, and the signature as it was. */
function resealed(
  given: ReadonlyMap<string, Buffer>,
  change: (lines: string[]) => string[],
  more: Partial<BackupManifest> = {},
): Map<string, Buffer> {
  const lines = change(given.get(BACKUP_FILES.entries)!.toString().trimEnd().split('\n'))
  const entries = `${lines.join('\n')}\n`
  const manifest = JSON.parse(given.get(BACKUP_FILES.manifest)!.toString()) as BackupManifest
  const put: BackupManifest = {
    ...manifest,
    entries: lines.length,
    files: { ...manifest.files, [BACKUP_FILES.entries]: sha256(entries) },
    ...more,
  }
  return new Map(given)
    .set(BACKUP_FILES.entries, Buffer.from(entries))
    .set(BACKUP_FILES.manifest, Buffer.from(JSON.stringify({ ...put, hash: backupHash(put, sha256) })))
}

test('an entry that was taken out, changed, moved, doubled or added is named, also when every hash was put right', async () => {
  const lines = files.get(BACKUP_FILES.entries)!.toString().trimEnd().split('\n')
  const events = lines.map((line) => JSON.parse(line) as Event)
  const at = events.findIndex(({ seq }) => seq === 5)
  const { id, unit, device } = events[at]!
  const altered = { ...events[at]!, at: '2026-02-01T10:00:00.000Z' }
  const remade = canonical({ ...altered, hash: hashOf(altered, sha256) } as never)
  const stray = { ...events[at]!, unit: '00000000-0000-4000-8000-00000000abcd' }
  const next = events.findIndex((event) => event.unit === unit && event.device === device && event.seq === 6)
  const swapped = (all: string[]) => {
    const other = [...all]
    ;[other[at], other[next]] = [other[next]!, other[at]!]
    return other
  }
  const named = { unit, device }
  for (const [what, change, words, about] of [
    ['taken out', (all) => all.toSpliced(at, 1), `Entry 5 of device ${device} is missing.`, named],
    [
      'changed',
      (all) => all.with(at, canonical(altered as never)),
      `(${id}) was changed after it was made.`,
      { ...named, number: 5, entry: id },
    ],
    ['made again', (all) => all.with(at, remade), 'does not follow the one before it', { ...named, number: 6 }],
    ['moved', swapped, `(${id}) was moved behind a later one of its device`, { ...named, number: 5, entry: id }],
    ['doubled', (all) => [...all, all[at]!], `(${id}) is there twice.`, { ...named, entry: id }],
    [
      'of a unit that is not named',
      (all) => [...all, canonical({ ...stray, hash: hashOf(stray, sha256) } as never)],
      'which the manifest does not name',
      { unit: stray.unit },
    ],
    [
      'written otherwise',
      (all) => all.with(at, ` ${all[at]}`),
      'is not written letter by letter',
      { ...named, entry: id },
    ],
    ['no entry', (all) => all.with(at, '{"a":1}'), `Line ${at + 1} of entries.ndjson is no entry`, {}],
    ['the last one cut off', (all) => all.slice(0, -1), 'is missing.', {}],
  ] as [string, (all: string[]) => string[], string, Partial<Fault>][]) {
    const made = resealed(files, change)
    made.delete(BACKUP_FILES.signature)
    const read = await readAt(await written(made))
    expect(wordsOf(read), what).toContain(words)
    if ('faults' in read)
      expect(
        read.faults.find((fault) => fault.words.includes(words)),
        what,
      ).toMatchObject(about)
  }
})

test('a manifest that says other things of a unit or a photograph than the entries do is told', async () => {
  const manifest = JSON.parse(files.get(BACKUP_FILES.manifest)!.toString()) as BackupManifest
  const [unit] = full.units as [string]
  const other = '0'.repeat(64)
  const [gone] = manifest.photographs
  for (const [more, words] of [
    [
      { units: { ...manifest.units, [unit]: { ...manifest.units[unit]!, record: other } } },
      'not those that were backed up',
    ],
    [
      { units: { ...manifest.units, [unit]: { ...manifest.units[unit]!, state: other } } },
      'does not fold to what it was',
    ],
    [{ absent: [] }, `The photograph ${full.absent}, of which entries speak, is neither here nor told as absent.`],
    [{ gripbook: 'backup/2' }, 'The file is of the format backup/2; this Gripbook reads backup/1.'],
  ] as [Partial<BackupManifest>, string][]) {
    const made = resealed(files, (lines) => lines, more)
    made.delete(BACKUP_FILES.signature)
    expect(wordsOf(await readAt(await written(made)))).toContain(words)
  }
  const fewer = resealed(files, (lines) => lines, { photographs: manifest.photographs.slice(1) })
  fewer.delete(`photographs/${gone!.photograph}.jpg`)
  fewer.delete(BACKUP_FILES.signature)
  expect(wordsOf(await readAt(await written(fewer)))).toContain(`The photograph ${gone!.photograph}, of which`)
})

test('[RE10] a damaged backup leaves an empty record empty', async () => {
  const there = await testShop({}, { paired: false })
  const lines = (all: string[]) => all.toSpliced(Math.floor(all.length / 2), 1)
  const made = resealed(files, lines)
  made.delete(BACKUP_FILES.signature)
  await expect(restore(there.shop, await written(made), VERSION)).rejects.toThrow(BadBackup)
  const endless = await written(new Map(files).set(BACKUP_FILES.entries, Buffer.alloc(3_000_000, 'a')))
  await expect(restore(there.shop, endless, VERSION)).rejects.toThrow('longer than an entry can be')
  const { db } = there.shop
  for (const table of ['record_entry', 'entrance_person', 'photograph_kept', 'shop_restore'] as const)
    expect(await db.selectFrom(table).selectAll().execute(), table).toEqual([])
  await there.close()
})
