import type { Hash } from '../chain.ts'
import { entryText } from '../entryText.ts'
import type { Event } from '../events/event.ts'
import { fold } from '../fold.ts'
import { inOrder } from '../inOrder.ts'
import { recordHash } from '../proof.ts'
import { unitFileOf } from '../toUnitFile.ts'
import { writeUnitFile } from '../unitFile/write.ts'
import {
  ENTRIES_FILE,
  MANIFEST_FILE,
  type Manifest,
  manifestHash,
  type PackedPhotograph,
  UNIT_FILE,
} from './manifest.ts'

export type TextFile = { name: string; text: string }

/** `unit` and its entries; `photographs`: those whose bytes go into the archive; `at`: now. */
export type ToPack = {
  unit: string
  events: readonly Event[]
  photographs: readonly PackedPhotograph[]
  at: string
}

/** The text files of an archive, the manifest last. The same entries give the same entries file and unit file, byte for byte. */
export function packUnit({ unit, events, photographs, at }: ToPack, hash: Hash): TextFile[] {
  const folded = fold(unit, events)
  const entries = entriesText(folded.entries)
  const { unit: file } = unitFileOf(folded)
  const unitText = file === null ? null : writeUnitFile(file)
  const here = new Set(photographs.map(({ photograph }) => photograph))
  const unhashed: Manifest = {
    gripbook: 'archive/1',
    unit,
    at,
    heads: folded.heads,
    record: recordHash(folded.entries, hash),
    entries: folded.entries.length,
    files: { [ENTRIES_FILE]: hash(entries), [UNIT_FILE]: unitText === null ? null : hash(unitText) },
    photographs: photographs.toSorted((a, b) => (a.photograph < b.photograph ? -1 : 1)),
    absent: photographsOf(folded.entries).filter((photograph) => !here.has(photograph)),
    hash: '',
  }
  const manifest: Manifest = { ...unhashed, hash: manifestHash(unhashed, hash) }
  return [
    { name: ENTRIES_FILE, text: entries },
    ...(unitText === null ? [] : [{ name: UNIT_FILE, text: unitText }]),
    { name: MANIFEST_FILE, text: `${JSON.stringify(manifest, null, 2)}\n` },
  ]
}

/** Entries as text: one to a line as canonical JSON, in the order of the record. */
export function entriesText(events: readonly Event[]): string {
  return events
    .toSorted(inOrder)
    .map((event) => `${entryText(event).whole}\n`)
    .join('')
}

/** Hashes of all photographs that entries speak of, sorted; also of entries that this version does not understand. */
export function photographsOf(events: readonly Event[]): string[] {
  const found = events.flatMap(({ body: { photograph } }) =>
    typeof photograph === 'string' && /^[0-9a-f]{64}$/.test(photograph) ? [photograph] : [],
  )
  return [...new Set(found)].sort()
}
