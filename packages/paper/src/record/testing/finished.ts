/** The finished unit of the demo as a build record, as far as its entries go, with pictures that only have the right size. */
import { readFileSync } from 'node:fs'
import { place } from '@gripbook/engine'
import {
  type BuildRecord,
  buildRecordOf,
  type Event,
  entriesFromUnit,
  fold,
  knowledgeOf,
  readUnitFile,
  sha256OfText,
  unitFileOf,
} from '@gripbook/record'
import { plainPicture } from './plainPicture.ts'

const ENTRIES = new URL('../../../../../demo/finished-unit.ndjson', import.meta.url)
const PEOPLE = {
  'a1f0c0de-0000-4000-8000-0000000000b1': 'Ane Builder',
  'a1f0c0de-0000-4000-8000-0000000000c2': 'Bo Checker',
}
const AT = '2026-01-01T00:00:00.000Z'
export const SHOP = { address: 'https://shop.local:7480', key: 'ab'.repeat(32) }

/** Of all entries, or of the first so many. */
export async function finishedRecord({
  first,
  ...more
}: {
  first?: number
  shop?: BuildRecord['shop']
  people?: Record<string, string>
} = {}): Promise<BuildRecord> {
  const lines = readFileSync(ENTRIES, 'utf8').trim().split('\n')
  const events = lines.slice(0, first).map((line) => JSON.parse(line) as Event)
  const folded = fold(events[0]!.unit, events)
  const { unit } = unitFileOf(folded)
  return buildRecordOf(folded, {
    people: PEOPLE,
    hash: sha256OfText,
    shop: SHOP,
    ...(unit === null ? {} : { answer: await place(unit, { solver: () => Promise.reject(new Error('none')) }) }),
    ...more,
  })
}

/** What a unit file alone gives. */
export function fileRecord(): BuildRecord {
  const read = readUnitFile(readFileSync(new URL('../../../../../demo/yard-loader.json', import.meta.url), 'utf8'))
  if (!read.ok) throw new Error('the demo is a unit file')
  const id = '00000000-0000-4000-8000-000000000001'
  const stamp = (i: number) => ({ id: `00000000-0000-4000-8000-${String(i).padStart(12, '0')}`, at: AT, who: 'file' })
  const entries = entriesFromUnit(read.value, knowledgeOf(id, id, []), stamp, sha256OfText)
  return buildRecordOf(fold(id, entries), { people: {}, hash: sha256OfText, stateOnly: true })
}

export function finishedPictures(): Map<string, Uint8Array> {
  const sizes: [string, number, number][] = [
    ['1', 640, 400],
    ['2', 300, 300],
    ['3', 200, 150],
    ['4', 160, 120],
  ]
  return new Map(sizes.map(([name, width, height]) => [name.repeat(64), plainPicture(width, height)]))
}
