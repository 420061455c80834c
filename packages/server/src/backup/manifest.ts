/** What stands in a backup's manifest: the hash of everything else, and what each unit was. */
import { canonical } from '@gripbook/record'
import * as z from 'zod/mini'
import { sha256Hex, uuid } from '../entrance/shapes.ts'

export const BACKUP_FILES = {
  manifest: 'manifest.json',
  entries: 'entries.ndjson',
  people: 'people.json',
  signature: 'signature.json',
} as const

/** What a backup may hold at most, and how many bytes may come out of it while it is read several times. */
export const BACKUP_LIMITS = { files: 2_000_000, bytes: 10_000_000_000_000 }

const whole = z.number().check(z.int(), z.gte(0), z.lte(Number.MAX_SAFE_INTEGER))
const time = z.iso.datetime({ precision: 3 })
const text = (most: number) => z.string().check(z.maxLength(most))

/** A photograph's file lies under this name. */
export const backupPhotograph = (photograph: string): string => `photographs/${photograph}.jpg`

/** `heads`: the number of each device's last entry; `record` and `state`: hashes of the entries and of the unit folded from them. */
const unitSchema = z.strictObject({ heads: z.record(uuid, whole), entries: whole, record: sha256Hex, state: sha256Hex })

export const backupSchema = z.strictObject({
  gripbook: z.literal('backup/1'),
  /** The version of Gripbook that made it: the state of a unit is compared by the same one. */
  version: text(40),
  at: time,
  entries: whole,
  units: z.record(uuid, unitSchema),
  files: z.strictObject({ [BACKUP_FILES.entries]: sha256Hex, [BACKUP_FILES.people]: sha256Hex }),
  photographs: z.array(
    z.strictObject({ photograph: sha256Hex, sha256: sha256Hex, bytes: whole, width: whole, height: whole, at: time }),
  ),
  /** Photographs that entries speak of and that never arrived. */
  absent: z.array(sha256Hex),
  /** SHA-256 of the canonical JSON of all the other fields. */
  hash: sha256Hex,
})
export type BackupManifest = z.infer<typeof backupSchema>

export const peopleSchema = z.strictObject({
  people: z.array(
    z.strictObject({
      id: uuid,
      name: text(200),
      role: z.enum(['owner', 'builder', 'checker', 'viewer']),
      since: whole,
      left_at: z.nullable(whole),
      /** Not in backups from before there was such. */
      stands_for: z.optional(z.nullable(uuid)),
    }),
  ),
  devices: z.array(z.strictObject({ id: uuid, name: text(200), secret_hash: sha256Hex, since: whole })),
  pairings: z.array(z.strictObject({ device: uuid, person: uuid, since: whole })),
})
export type BackupPeople = z.infer<typeof peopleSchema>

export function backupHash({ hash: _, ...rest }: BackupManifest, sha256: (text: string) => string): string {
  return sha256(canonical(rest as never))
}
