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
}
