/**
 * An archive of one unit, in open formats: `manifest.json`, `entries.ndjson` (one entry as canonical JSON to a line, in the order of the record),
 * `unit.json` (the unit file that they make, when there is one) and `photographs/` (each under the name that entries call it by). Putting the files into
 * one and taking them out is the shell's work; what stands in them, and whether it is whole, is decided here.
 */
import * as z from 'zod/mini'
import { canonical } from '../canonical.ts'
import type { Hash } from '../chain.ts'
import type { Json } from '../events/json.ts'
import { sha256Hex, uuid, whole } from '../events/parts.ts'

export const MANIFEST_FILE = 'manifest.json'
export const ENTRIES_FILE = 'entries.ndjson'
export const UNIT_FILE = 'unit.json'
/** Who made it: whoever packs it adds this file, whoever takes it in checks it; it is no part of what the manifest names. */
export const SIGNATURE_FILE = 'signature.json'
export const photographName = (photograph: string): string => `photographs/${photograph}.jpg`

const most = Number.MAX_SAFE_INTEGER

/** `photograph`: what entries call it by, the hash of the file as the device sent it; `sha256` and `bytes` are those of the cleaned file that was kept. */
const packedPhotographSchema = z.strictObject({
  photograph: sha256Hex,
  sha256: sha256Hex,
  bytes: whole(1, most),
  width: whole(1, 100_000),
  height: whole(1, 100_000),
  /** When it was kept. */
  at: z.iso.datetime({ precision: 3 }),
})

export type PackedPhotograph = z.infer<typeof packedPhotographSchema>

export const manifestSchema = z.strictObject({
  gripbook: z.literal('archive/1'),
  unit: uuid,
  /** When it was made, by the clock of whoever made it. */
  at: z.iso.datetime({ precision: 3 }),
  /** Number of the last entry of each device, and the hash of all entries (`recordHash`). */
  heads: z.record(uuid, whole(1, most)),
  record: sha256Hex,
  entries: whole(0, most),
  /** SHA-256 of each text file, by its name. */
  files: z.record(z.enum([ENTRIES_FILE, UNIT_FILE]), z.nullable(sha256Hex)),
  /** Photographs that are in the archive. */
  photographs: z.array(packedPhotographSchema).check(z.maxLength(100_000)),
  /** Photographs that entries speak of and that whoever made the archive did not have. */
  absent: z.array(sha256Hex).check(z.maxLength(100_000)),
  /** SHA-256 of the canonical JSON of all the other fields. */
  hash: sha256Hex,
})

export type Manifest = z.infer<typeof manifestSchema>

export function manifestHash({ hash: _, ...rest }: Manifest, hash: Hash): string {
  return hash(canonical(rest as Json))
}
