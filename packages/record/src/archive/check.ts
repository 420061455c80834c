import { type ChainFault, chainFaults, type Hash, movedFaults } from '../chain.ts'
import { type Event, readEvent } from '../events/event.ts'
import { fold } from '../fold.ts'
import { inOrder } from '../inOrder.ts'
import { recordHash } from '../proof.ts'
import { unitFileOf } from '../toUnitFile.ts'
import { withoutWork } from '../unitFile/earlier.ts'
import { writeUnitFile } from '../unitFile/write.ts'
import {
  ENTRIES_FILE,
  MANIFEST_FILE,
  type Manifest,
  manifestHash,
  manifestSchema,
  photographName,
  SIGNATURE_FILE,
  UNIT_FILE,
} from './manifest.ts'

/** What is wrong with an archive, as data; `archiveFaultText` has the words. */
export type ArchiveFault =
  | { code: 'file-missing'; name: string }
  /** A file that no manifest names. */
  | { code: 'file-unknown'; name: string }
  | { code: 'file-changed'; name: string }
  | { code: 'manifest-unreadable'; path: string }
  /** An archive of another format than this Gripbook reads. */
  | { code: 'other-format'; found: string }
  | { code: 'manifest-changed' }
  | { code: 'line-unreadable'; line: number; path: string }
  | { code: 'other-unit'; line: number; unit: string }
  | { code: 'out-of-order'; line: number; event: string }
  | { code: 'chain'; fault: ChainFault }
  | { code: 'record-differs'; entries: number; expected: number }
  /** The entries are whole, but fold to another unit file than the one that lies beside them. */
  | { code: 'unit-differs' }

export type Unpacked = {
  /** Text files by name. */
  texts: ReadonlyMap<string, string>
  /** Every other file by name, with the SHA-256 of its bytes and how many they are. */
  others: ReadonlyMap<string, { sha256: string; bytes: number }>
}

export type CheckedArchive =
  | { ok: true; manifest: Manifest; events: Event[] }
  | { ok: false; faults: [ArchiveFault, ...ArchiveFault[]] }

/**
 * Whether an archive is whole: every file there and unchanged, every entry whole and in its chain, nothing cut off, and the entries fold to the
 * unit file beside them. All faults are told. Never throws for any content. Where entries are of types or versions that only a later Gripbook understands, the
 * unit file is not compared: it holds what they say.
 */
export function checkArchive({ texts, others }: Unpacked, hash: Hash): CheckedArchive {
  const manifest = readManifest(texts.get(MANIFEST_FILE))
  if ('code' in manifest) return { ok: false, faults: [manifest] }
  const faults: ArchiveFault[] = []
  if (manifestHash(manifest, hash) !== manifest.hash) faults.push({ code: 'manifest-changed' })
  faults.push(...fileFaults(manifest, { texts, others }, hash))
  const { events, unreadable } = readLines(texts.get(ENTRIES_FILE) ?? '', manifest.unit)
  faults.push(...unreadable)
  const sorted = events.toSorted(inOrder)
  const moved = new Set(movedFaults(events).map(({ event }) => event))
  events.forEach((event, i) => {
    if (moved.has(event.id) || (moved.size === 0 && event !== sorted[i] && event.id !== sorted[i]?.id))
      faults.push({ code: 'out-of-order', line: i + 1, event: event.id })
  })
  faults.push(...chainFaults(events, hash, manifest.heads).map((fault): ArchiveFault => ({ code: 'chain', fault })))
  if (events.length !== manifest.entries || recordHash(events, hash) !== manifest.record)
    faults.push({ code: 'record-differs', entries: events.length, expected: manifest.entries })
  if (faults.length === 0 && !givesUnit(manifest.unit, events, texts.get(UNIT_FILE)))
    faults.push({ code: 'unit-differs' })
  const [first, ...more] = faults
  return first === undefined ? { ok: true, manifest, events } : { ok: false, faults: [first, ...more] }
}

function readManifest(text: string | undefined): Manifest | ArchiveFault {
  if (text === undefined) return { code: 'file-missing', name: MANIFEST_FILE }
  const value = parsed(text)
  const format = typeof value === 'object' && value !== null ? (value as { gripbook?: unknown }).gripbook : undefined
  if (typeof format === 'string' && format !== 'archive/1') return { code: 'other-format', found: format }
  const read = manifestSchema.safeParse(value)
  if (read.success) return read.data
  return { code: 'manifest-unreadable', path: (read.error.issues[0]?.path ?? []).join('.') }
}

function fileFaults(manifest: Manifest, { texts, others }: Unpacked, hash: Hash): ArchiveFault[] {
  const faults: ArchiveFault[] = []
  for (const name of [ENTRIES_FILE, UNIT_FILE] as const) {
    const text = texts.get(name)
    const expected = manifest.files[name]
    if (expected === null) {
      if (text !== undefined) faults.push({ code: 'file-unknown', name })
    } else if (text === undefined) faults.push({ code: 'file-missing', name })
    else if (hash(text) !== expected) faults.push({ code: 'file-changed', name })
  }
  const named = new Set(manifest.photographs.map(({ photograph }) => photographName(photograph)))
  for (const { photograph, sha256, bytes } of manifest.photographs) {
    const name = photographName(photograph)
    const found = others.get(name)
    if (found === undefined) faults.push({ code: 'file-missing', name })
    else if (found.sha256 !== sha256 || found.bytes !== bytes) faults.push({ code: 'file-changed', name })
  }
  const known = new Set([MANIFEST_FILE, ENTRIES_FILE, UNIT_FILE, SIGNATURE_FILE, ...named])
  for (const name of [...texts.keys(), ...others.keys()])
    if (!known.has(name)) faults.push({ code: 'file-unknown', name })
  return faults
}

function readLines(text: string, unit: string): { events: Event[]; unreadable: ArchiveFault[] } {
  const events: Event[] = []
  const unreadable: ArchiveFault[] = []
  const lines = text.endsWith('\n') ? text.slice(0, -1).split('\n') : text.split('\n')
  if (text === '') return { events, unreadable }
  lines.forEach((line, i) => {
    const read = readEvent(parsed(line))
    if (!read.ok) unreadable.push({ code: 'line-unreadable', line: i + 1, path: read.path })
    else if (read.value.unit !== unit) unreadable.push({ code: 'other-unit', line: i + 1, unit: read.value.unit })
    else events.push(read.value)
  })
  return { events, unreadable }
}

function givesUnit(unit: string, events: readonly Event[], text: string | undefined): boolean {
  const folded = fold(unit, events)
  if (folded.notUnderstood.length > 0) return true
  const { unit: file } = unitFileOf(folded)
  if (file === null) return text === undefined
  return [file, withoutWork(file)].some((one) => writeUnitFile(one) === text)
}

/** A text as JSON, or undefined. */
function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}
