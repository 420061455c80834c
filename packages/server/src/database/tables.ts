/** The tables as the queries see them. Whole numbers of 8 bytes come as `number`: what is counted here stays far below 2^53. */
import type { ColumnType } from 'kysely'

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
}
