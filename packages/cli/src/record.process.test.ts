/** The build record as a shop prints it, and as anybody checks it: a process on a data folder, then processes that have none. */
import { createHash, randomBytes } from 'node:crypto'
import { chmod, copyFile, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Event, holeMarked, knowledgeOf, nextEntry, noteWritten, recordHash, unitTakenIn } from '@gripbook/record'
import { checkPaper, openShop } from '@gripbook/server'
import sharp from 'sharp'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { main } from './main.ts'
import { processWorld } from './processWorld.ts'
import { repacked } from './testing/repacked.ts'
import { run } from './testing/served.ts'

const sha256 = (bytes: string | Uint8Array): string => createHash('sha256').update(bytes).digest('hex')
const ROOT = join(import.meta.dirname, '../../..')
const PAN = '1'.repeat(64)
const WORLD = processWorld(process)
const SMALL = '00000000-0000-4000-8000-00000000005a'

let folder = ''
let finished: Event[] = []
const at = (name: string) => join(folder, name)

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'gb-record-'))
  await chmod(folder, 0o711)
  const lines = await readFile(join(ROOT, 'demo/finished-unit.ndjson'), 'utf8')
  finished = lines
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Event)
  const open = await openShop({
    env: {},
    dataFolder: at('shop'),
    secure: false,
    clock: Date.now,
    random: randomBytes,
    failed: () => {},
  })
  const { db, store, photographs } = open.shop
  await store.append(finished)
  await store.append(few())
  for (const [id, name] of [
    ['a1f0c0de-0000-4000-8000-0000000000b1', 'Ane Builder'],
    ['a1f0c0de-0000-4000-8000-0000000000c2', 'Bo Checker'],
  ] as const)
    await db
      .insertInto('entrance_person')
      .values({ id, name, role: 'builder', since: Date.now(), left_at: null })
      .execute()
  const bytes = await sharp({ create: { width: 1600, height: 1000, channels: 3, background: '#8a8f92' } })
    .jpeg()
    .toBuffer()
  const kept = { photograph: PAN, sha256: sha256(bytes), bytes: bytes.length, width: 1600, height: 1000 }
  await photographs.takeIn({ ...kept, at: '2026-03-02T10:00:00.000Z' }, bytes)
  await open.close()
  const address = ['--address', 'https://shop.local:7480']
  for (const [unit, name, more] of [
    [finished[0]!.unit, 'r.pdf', address],
    [SMALL, 'small.pdf', []],
  ] as const)
    expect(await here(['record', unit, '-o', at(name), '--data', at('shop'), ...more])).toMatchObject({
      status: 0,
      err: '',
    })
})
afterAll(() => rm(folder, { recursive: true, force: true }))

/** A command in this process, on the real disk: a process of its own takes seconds to start. */
async function here(args: string[]): Promise<{ status: number; out: string; err: string }> {
  const said = { out: '', err: '' }
  const status = await main(args, {
    ...WORLD,
    env: {},
    out: (text) => {
      said.out += text
    },
    err: (text) => {
      said.err += text
    },
  })
  return { status, ...said }
}

const SMALL_STORY = [
  unitTakenIn({ name: 'small pump' }),
  noteWritten({ text: 'note 1' }),
  holeMarked({ face: 'pan', hole: '1', thread: 'M6' }),
]

/** A unit of few entries, for trying each byte. */
function few(): Event[] {
  const entries: Event[] = []
  for (let i = 0; i < SMALL_STORY.length; i++) {
    const happening = SMALL_STORY[i]!
    const given = { id: `00000000-0000-4000-a000-00000000000${i}`, at: '2026-03-01T09:00:00.000Z', who: 'builder' }
    entries.push(
      nextEntry(
        knowledgeOf(SMALL, '00000000-0000-4000-8000-0000000000d1', entries),
        { ...given, ...happening },
        sha256,
      ),
    )
  }
  return entries
}

test('[PR11] a shop prints the record of a unit by its name, signed, the signed archive beside it; made again it has the same bytes', async () => {
  const asked = ['record', 'gearbox of yard loader 7', '-o', at('again.pdf'), '--address', 'https://shop.local:7480/']
  const made = await run([...asked, '--data', at('shop')])
  expect([made.status, made.err]).toEqual([0, ''])
  const key = /again\.pdf: the build record, of 182 entries\. Signed with the key ([0-9a-f]{64})\./.exec(made.out)?.[1]
  expect(made.out).toContain(`again.zip: the archive that it was made from. Signed with the key ${key}.`)
  const bytes = await readFile(at('again.pdf'))
  expect(checkPaper(bytes)).toEqual({
    unit: finished[0]!.unit,
    entries: 182,
    record: recordHash(finished, sha256),
    key,
    faults: [],
  })
  expect(bytes.equals(await readFile(at('r.pdf')))).toBe(true)
})

test('a unit is found by its job too, Letter is another paper, and what was written is told as JSON', async () => {
  const made = await here([
    'record',
    '2026-014',
    '-o',
    at('letter.pdf'),
    '--data',
    at('shop'),
    '--paper',
    'letter',
    '--json',
  ])
  const key = expect.stringMatching(/^[0-9a-f]{64}$/)
  expect([made.status, JSON.parse(made.out)]).toEqual([
    0,
    {
      gripbook: 'record/1',
      file: at('letter.pdf'),
      unit: finished[0]!.unit,
      entries: 182,
      hash: recordHash(finished, sha256),
      key,
      archive: { file: at('letter.zip'), key },
    },
  ])
  expect((await readFile(at('letter.pdf'))).includes('[0 0 612 792]')).toBe(true)
})

test('anybody checks the PDF and the archive without a record of their own', async () => {
  const paper = await run(['check', at('r.pdf'), '--data', at('nowhere')])
  expect([paper.status, paper.out]).toEqual([
    0,
    expect.stringMatching(
      /^The build record is whole\.\nUnit 5b1f6c1e.*182 entries, hash [0-9a-f]{64}\. Signed with the key [0-9a-f]{64}\.\nIt fits the archive beside it/,
    ),
  ])
  const archive = await run(['check', at('r.zip'), '--data', at('nowhere')])
  expect([archive.status, archive.out]).toEqual([0, expect.stringContaining('The archive is whole.')])
  const json = await here(['check', at('r.pdf'), '--json'])
  expect(JSON.parse(json.out)).toMatchObject({ what: 'build record', whole: true, faults: [] })
  expect(await readdir(folder)).not.toContain('nowhere')
})

test('of an archive that was sent, the record is printed elsewhere: unsigned there, and the names of people are not in it', async () => {
  const made = await here(['record', at('r.zip'), '-o', at('elsewhere.pdf'), '--paper', 'letter'])
  expect([made.status, made.err]).toEqual([0, ''])
  expect(made.out).toContain('elsewhere.pdf: the build record, of 182 entries. Nobody signed it.')
  expect((await readFile(at('elsewhere.zip'))).equals(await readFile(at('r.zip')))).toBe(true)
  expect((await here(['check', at('elsewhere.pdf')])).out).toContain('It fits the archive beside it')
  const named = await here(['record', at('r.zip'), '-o', at('named.pdf'), '--data', at('shop')])
  expect(named.out).toMatch(/named\.pdf: the build record, of 182 entries\. Signed with the key/)
})

test('a paper beside the archive of another unit is told, and one without its archive too', async () => {
  await copyFile(at('r.pdf'), at('mixed.pdf'))
  await copyFile(at('small.zip'), at('mixed.zip'))
  const mixed = await here(['check', at('mixed.pdf')])
  expect([mixed.status, mixed.out]).toEqual([1, expect.stringContaining('holds other entries than this was made from')])
  await rm(at('mixed.zip'))
  expect((await here(['check', at('mixed.pdf')])).out).toContain('is not beside it')
})

test('a unit file makes a paper that says it holds no story, without an archive', async () => {
  const made = await here(['record', join(ROOT, 'demo/yard-loader.json'), '-o', at('file.pdf')])
  expect([made.status, made.err]).toEqual([0, ''])
  expect(made.out).toContain('A unit file holds no story')
  expect(await readdir(folder)).not.toContain('file.zip')
  expect((await here(['check', at('file.pdf')])).out).toMatch(
    /^The build record is whole\.\nOf the unit file yard-loader\.json,/,
  )
})

test('what is asked wrongly is told in words, and nothing is written', async () => {
  const before = await readdir(folder)
  for (const [args, words] of [
    [['record'], /Of what\?/],
    [['record', 'a', 'b'], /One unit at a time/],
    [['record', 'x'], /Where does it go/],
    [['record', 'x', '-o', at('x.zip')], /-o names the PDF/],
    [['record', 'x', '-o', at('x.pdf'), '--paper', 'A3'], /A4 or Letter/],
    [['record', 'x', '-o', at('x.pdf'), '--address', 'shop'], /--address is like/],
    [
      ['record', 'no such unit', '-o', at('x.pdf'), '--data', at('shop')],
      /no unit in this record has that id, name or job/,
    ],
    [['record', 'x', '-o', at('x.pdf'), '--data', at('mistyped')], /There is no record in .*mistyped/],
  ] as [string[], RegExp][]) {
    const { status, err } = await here(args)
    expect([args, status]).toEqual([args, 2])
    expect(err).toMatch(words)
  }
  expect(await readdir(folder)).toEqual(before)
})

test('[PR14] every byte of a small archive that is changed makes the check fail, and the place is named', async () => {
  const bytes = await readFile(at('small.zip'))
  expect((await here(['check', at('small.zip')])).status).toBe(0)
  for (let i = 0; i < bytes.length; i++) {
    bytes[i]! ^= 1 + (i % 255)
    await writeFile(at('tried.zip'), bytes)
    bytes[i]! ^= 1 + (i % 255)
    const { status, out } = await here(['check', at('tried.zip')])
    expect([i, status]).toEqual([i, 1])
    const places = [...out.matchAll(/bytes? (\d+)(?: to (\d+))?/g)].map(
      ([, a, b]) => [Number(a), Number(b ?? a)] as const,
    )
    expect(
      places.some(([from, to]) => from <= i && i <= to),
      `byte ${i}: ${out}`,
    ).toBe(true)
  }
})

test('[PR14] in an archive that was packed anew after a change, file, line and entry are named', async () => {
  const original = await readFile(at('small.zip'))
  const named = async (name: string, change: (text: string) => string) => {
    await writeFile(at('packed.zip'), await repacked(original, name, change))
    return (await here(['check', at('packed.zip')])).out
  }
  expect(await named('entries.ndjson', (text) => text.replace('note 1', 'note 7'))).toMatch(
    /entries\.ndjson was changed[\s\S]*content of entry 2 of device 00000000-0000-4000-8000-0000000000d1/,
  )
  expect(await named('entries.ndjson', (text) => text.replace('"seq":2', '"seq":x'))).toContain(
    'Line 2 of entries.ndjson',
  )
  expect(await named('unit.json', (text) => text.replace('small pump', 'large pump'))).toContain(
    'unit.json was changed',
  )
  expect(await named('manifest.json', (text) => text.replace('"entries": 3', '"entries": 4'))).toContain(
    'manifest.json was changed',
  )
  const other = (digit: string): string => (digit === '0' ? '1' : '0')
  expect(await named('signature.json', (text) => text.replace(/[0-9a-f](?="\n})/, other))).toContain(
    'The signature does not fit',
  )
})

test('[PR15] changed bytes of a printed record make the check fail, and the place is named', async () => {
  const bytes = await readFile(at('small.pdf'))
  const [first, last] = [1_024, bytes.length - 1_024]
  for (let i = 0; i < bytes.length; i += i < first || i >= last ? 1 : Math.min(7, last - i)) {
    bytes[i]! ^= 1 + (i % 255)
    const { faults } = checkPaper(bytes)
    bytes[i]! ^= 1 + (i % 255)
    const places = faults.flatMap((words) => [...words.matchAll(/bytes? (\d+)(?: to (\d+))?/g)])
    expect(
      places.some(([, from, to]) => Number(from) <= i && i <= Number(to ?? from)) ||
        /no seal of Gripbook/.test(String(faults)),
      `byte ${i}: ${faults}`,
    ).toBe(true)
  }
  bytes[5_000]! ^= 1
  await writeFile(at('changed.pdf'), bytes)
  expect(await here(['check', at('changed.pdf')])).toMatchObject({
    status: 1,
    out: expect.stringMatching(/^The build record is not whole:\n {2}✗ Changed: bytes 4096 to 5119 of the PDF/),
  })
})
