/** The tables as the queries see them. Whole numbers of 8 bytes come as `number`: what is counted here stays far below 2^53. */
import type { ColumnType } from 'kysely'
import type { Role } from '../entrance/entrance.ts'

export type Tables = {
  /** One row: how far this record has been written. Whoever appends holds it until the end of the transaction. */
  record_log: { id: ColumnType<number, number, never>; lineage: string; last: number }
  /** Every entry, at its place in the order in which the shop kept it: 1, 2, 3 … without a gap. */
  record_entry: {
    position: number
    id: string
    unit: string
    device: string
    seq: number
    hash: string
    /** The whole entry as canonical JSON: what was hashed, letter by letter. */
    entry: string
  }
  /** The last entry of each device about each unit; `position`: where the log was when it had been kept, or shortly after. */
  record_head: { unit: string; device: string; seq: number; hash: string; position: number }
  /** One row: whoever changes who may come in moves `turn` on, and holds the row until the end of the transaction. */
  entrance_shop: { id: number; turn: number }
  /** `stands_for`: the person who wrote under this id on a device that was not paired yet; null for people themselves. */
  entrance_person: {
    id: string
    name: string
    role: Role
    since: number
    left_at: number | null
    stands_for: ColumnType<string | null, string | null | undefined>
  }
  entrance_device: { id: string; name: string; secret_hash: string; since: number }
  /** Every person who was ever paired on a device; never deleted, so that what waits on the device may still be sent. */
  entrance_pairing: { device: string; person: string; since: number }
  /** Sessions that have not been ended; one that is ended is deleted. */
  entrance_session: { id: string; token_hash: string; person: string; device: string; since: number; last_used: number }
  /** Open codes: for a `person` who is there, or for a new one by `name` and `role`; the owner code has no end, no name and no maker. */
  entrance_code: {
    hash: string
    expires: number | null
    person: string | null
    name: string | null
    role: Role | null
    made_by: string | null
    wrong_tries: number
  }
  /** Photographs that are kept; `sha256`, `small_1280`, `small_320`: of the kept file and its smaller pictures, by which they are named in their place. */
  photograph_kept: {
    photograph: string
    sha256: string
    bytes: number
    width: number
    height: number
    small_1280: string
    small_320: string
    at: number
  }
  /** Photographs on their way: bytes that have come of how many, and when the last piece came. */
  photograph_upload: { photograph: string; device: string; total: number; received: number; last_at: number }
  photograph_piece: { photograph: string; device: string; from_byte: number; bytes: Buffer }
  /** One row: the key that the shop signs archives and backups with, Ed25519; the public one as 64 hex digits, the private one as PEM. */
  shop_key: { id: number; public_key: string; private_key: string }
  /** One row while a restore has begun and not been proven: the hash of the manifest that is being put back. */
  shop_restore: { id: number; manifest: string }
}
