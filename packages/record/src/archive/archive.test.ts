import type { Unit } from '@gripbook/engine'
import { expect, test } from 'vitest'
import { canonical } from '../canonical.ts'
import { hashOf } from '../chain.ts'
import { knowledgeOf, nextEntry } from '../entry.ts'
import type { Event } from '../events/event.ts'
import type { Json } from '../events/json.ts'
import { fold } from '../fold.ts'
import { memoryStore } from '../memoryStore.ts'
import { stateHash } from '../proof.ts'
import { sha256OfText } from '../sha256.ts'
import { history, UNIT, uuid } from '../testing/bench.ts'
import { withoutWork } from '../unitFile/earlier.ts'
import { seeded } from '../unitFile/testing/random.ts'
import { writeUnitFile } from '../unitFile/write.ts'
import { type CheckedArchive, checkArchive, type Unpacked } from './check.ts'
import { ENTRIES_FILE, MANIFEST_FILE, photographName, UNIT_FILE } from './manifest.ts'
import { entriesText, packUnit, photographsOf } from './pack.ts'
import { archiveFaultText } from './words.ts'

const hash = sha256OfText
const PHOTO = 'a'.repeat(64)
const AT = '2026-03-02T10:00:00.000Z'
/** What is kept of a photograph is another file than the one that was sent. */
const KEPT = 'e'.repeat(64)
const PACKED = { photograph: PHOTO, sha256: KEPT, bytes: 1234, width: 40, height: 30, at: AT }
/** A history whose unit has a file and a photograph. */
const SEED = [...Array(200).keys()].find((seed) => {
  const { made } = history(seed, 60)
  return photographsOf(made).includes(PHOTO) && packed(made).texts.has(UNIT_FILE)
})!
const MADE = history(SEED, 60).made

function packed(
  events: readonly Event[],
): Unpacked & { texts: Map<string, string>; others: Map<string, { sha256: string; bytes: number }> } {
  const files = packUnit({ unit: UNIT, events, photographs: [PACKED], at: AT }, hash)
  return {
    texts: new Map(files.map(({ name, text }) => [name, text])),
    others: new Map([[photographName(PHOTO), { sha256: KEPT, bytes: 1234 }]]),
  }
}

const codes = (checked: CheckedArchive): string[] => (checked.ok ? [] : checked.faults.map(({ code }) => code))
const words = (checked: CheckedArchive): string[] => (checked.ok ? [] : checked.faults.map(archiveFaultText))
const lineOf = (event: Event): string => `${canonical(event as unknown as Json)}\n`

test('an archive that was packed checks, and gives back every entry and the same state', async () => {
  const checked = checkArchive(packed(MADE), hash)
  expect(words(checked)).toEqual([])
  if (!checked.ok) return
  expect(entriesText(checked.events)).toBe(entriesText(MADE))
  const store = memoryStore(hash)
  const bySeq = checked.events.toSorted((a, b) => a.seq - b.seq)
  expect(await store.append(bySeq)).toEqual({ ok: true, added: MADE.length, known: 0 })
  expect(stateHash(fold(UNIT, await store.ofUnit(UNIT)), hash)).toBe(stateHash(fold(UNIT, MADE), hash))
})

test('the same entries in any order are packed into the same bytes', () => {
  expect(packed(MADE.toReversed()).texts).toEqual(packed(MADE).texts)
})

test('photographs that nobody had are told as absent', () => {
  const files = packUnit({ unit: UNIT, events: MADE, photographs: [], at: AT }, hash)
  const manifest = JSON.parse(files.at(-1)!.text) as { absent: string[] }
  expect(manifest.absent).toEqual(photographsOf(MADE))
})

test('one changed byte anywhere in a text file is found', () => {
  const random = seeded(31)
  for (const [name, text] of packed(MADE).texts) {
    for (let i = 0; i < 60; i++) {
      const files = packed(MADE)
      const at = Math.floor(random() * text.length)
      const changed = `${text.slice(0, at)}${text[at] === 'x' ? 'y' : 'x'}${text.slice(at + 1)}`
      files.texts.set(name, changed)
      expect(codes(checkArchive(files, hash)).length, `${name} at ${at}`).toBeGreaterThan(0)
    }
  }
})

test('a cut-off file is found at every tenth of it', () => {
  for (const [name, text] of packed(MADE).texts) {
    for (let tenth = 0; tenth < 10; tenth++) {
      const files = packed(MADE)
      files.texts.set(name, text.slice(0, Math.floor((text.length * tenth) / 10)))
      expect(codes(checkArchive(files, hash)).length, `${name}, ${tenth} tenths`).toBeGreaterThan(0)
    }
  }
})

test('a missing file, a photograph with another content, and a file too many are named', () => {
  for (const name of [MANIFEST_FILE, ENTRIES_FILE, UNIT_FILE]) {
    const files = packed(MADE)
    files.texts.delete(name)
    expect(words(checkArchive(files, hash))).toContain(`${name} is missing.`)
  }
  const files = packed(MADE)
  files.others.set(photographName(PHOTO), { sha256: 'b'.repeat(64), bytes: 1234 })
  files.others.set('../../passwords', { sha256: PHOTO, bytes: 1 })
  expect(words(checkArchive(files, hash))).toEqual([
    `photographs/${PHOTO}.jpg was changed or damaged.`,
    '../../passwords is not named in the manifest.',
  ])
  const without = packed(MADE)
  without.others.clear()
  expect(codes(checkArchive(without, hash))).toEqual(['file-missing'])
})

test('an entry that was taken out, changed or moved is named, also when the file’s hash is put right', () => {
  const lines = packed(MADE).texts.get(ENTRIES_FILE)!.split('\n').slice(0, -1)
  const check = (changed: string[]): string[] => {
    const files = packed(MADE)
    files.texts.set(ENTRIES_FILE, `${changed.join('\n')}\n`)
    return words(checkArchive(files, hash))
  }
  const victim = JSON.parse(lines[10]!) as Event
  const entry = `entry ${victim.seq} of device ${victim.device}`
  expect(check(lines.filter((_, i) => i !== 10))).toContain(
    `Entry ${victim.seq} of device ${victim.device} is missing.`,
  )
  const changed = lineOf({ ...victim, who: 'someone else' }).trim()
  expect(check(lines.map((line, i) => (i === 10 ? changed : line)))).toContain(
    `The content of ${entry} (${victim.id}) was changed after it was made.`,
  )
  expect(check([...lines.filter((_, i) => i !== 10), lines[10]!]).join(' ')).toContain(
    `(entry ${victim.id}) stands out of order`,
  )
  expect(check([...lines, lines[10]!]).join(' ')).toContain('is there twice')
})

test('an end that was cut off is found by the heads', () => {
  const files = packed(MADE)
  const lines = files.texts.get(ENTRIES_FILE)!.split('\n')
  const last = JSON.parse(lines.at(-2)!) as Event
  files.texts.set(ENTRIES_FILE, `${lines.slice(0, -2).join('\n')}\n`)
  expect(words(checkArchive(files, hash))).toContain(`Entry ${last.seq} of device ${last.device} is missing.`)
})

test('an entry of another unit, and what is no entry, are told with their line', () => {
  const files = packed(MADE)
  const other = { ...MADE[0]!, unit: uuid(0xb) }
  files.texts.set(ENTRIES_FILE, `${lineOf({ ...other, hash: hashOf(other, hash) })}{"id":1}\nnonsense\n`)
  expect(words(checkArchive(files, hash))).toEqual(
    expect.arrayContaining([
      `Line 1 of entries.ndjson belongs to another unit (${uuid(0xb)}).`,
      'Line 2 of entries.ndjson is no entry (at id).',
      'Line 3 of entries.ndjson is no entry.',
    ]),
  )
})

test('an archive of a later format is told as that', () => {
  const files = packed(MADE)
  files.texts.set(MANIFEST_FILE, '{"gripbook": "archive/2"}')
  expect(words(checkArchive(files, hash))).toEqual([
    'The archive is of the format archive/2; this Gripbook reads archive/1.',
  ])
})

/** The archive with another unit file, every hash put right. */
function withUnitFile(files: ReturnType<typeof packed>, text: string): ReturnType<typeof packed> {
  const manifest = JSON.parse(files.texts.get(MANIFEST_FILE)!) as { hash: string; files: Record<string, string> }
  manifest.files[UNIT_FILE] = hash(text)
  const { hash: _, ...rest } = manifest
  files.texts.set(UNIT_FILE, text)
  files.texts.set(MANIFEST_FILE, JSON.stringify({ ...rest, hash: hash(canonical(rest as Json)) }))
  return files
}

test('a unit file that the entries do not give is found though every hash is right', () => {
  const files = packed(MADE)
  const forged = files.texts
    .get(UNIT_FILE)!
    .replace('"gripbook": "unit/1"', '"gripbook": "unit/1",\n  "note": "forged"')
  expect(codes(checkArchive(withUnitFile(files, forged), hash))).toEqual(['unit-differs'])
})

test('[RE9] an archive from before the unit file held jobs, parts and tools is whole', () => {
  const device = MADE[0]!.device
  const part = nextEntry(
    knowledgeOf(UNIT, device, MADE),
    {
      id: uuid(0xffe),
      at: AT,
      who: 'builder',
      type: 'part-came-out',
      version: 1,
      body: { part: 'late ball', what: 'check ball' },
    },
    hash,
  )
  const files = packed([...MADE, part])
  const now = JSON.parse(files.texts.get(UNIT_FILE)!) as Unit
  expect(now.parts?.map(({ id }) => id)).toContain('late ball')
  expect(codes(checkArchive(withUnitFile(files, writeUnitFile(withoutWork(now))), hash))).toEqual([])
})

test('an archive with entries that only a later version understands is taken with the unit file that they make there', () => {
  const device = MADE[0]!.device
  const later = nextEntry(
    knowledgeOf(UNIT, device, MADE),
    { id: uuid(0xfff), at: AT, who: 'builder', type: 'from-a-later-version', version: 1, body: { a: 1 } },
    hash,
  )
  const files = packed([...MADE, later])
  const there = files.texts
    .get(UNIT_FILE)!
    .replace('"gripbook": "unit/1"', '"gripbook": "unit/1",\n  "later": "a field"')
  expect(words(checkArchive(withUnitFile(files, there), hash))).toEqual([])
})

test('a unit without entries packs and checks', () => {
  const files = packUnit({ unit: UNIT, events: [], photographs: [], at: AT }, hash)
  const texts = new Map(files.map(({ name, text }) => [name, text]))
  expect(words(checkArchive({ texts, others: new Map() }, hash))).toEqual([])
})
