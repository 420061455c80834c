/**
 * Photographs that are on their way. Their pieces lie in the database, not in a folder: the next piece may come to another process of the shop, and one
 * that was acknowledged is on the disk. Whoever adds or drops pieces holds the upload's row.
 */
import type { Kysely, Transaction } from 'kysely'
import { Refused } from '../app/faults.ts'
import type { Tables } from '../database/tables.ts'
import { again } from '../store/again.ts'
import { durably } from '../store/durably.ts'
import type { Part } from './photographs.ts'

/** Bytes of one photograph as it is sent. */
export const MOST_BYTES = 40_000_000
/** Unfinished ones of one device; when it begins more, the one that it went on with longest ago is dropped and starts from 0 when it goes on. */
const MOST_UPLOADS = 16
const MOST_WAITING_BYTES = 160_000_000
const LIFE = 7 * 24 * 3_600_000

type Upload = Tables['photograph_upload']
type Trx = Transaction<Tables>

/** Bytes that have come without a gap. */
export async function receivedOf(db: Kysely<Tables>, device: string, photograph: string): Promise<number> {
  const upload = db.selectFrom('photograph_upload').select('received')
  const row = await again(() =>
    upload.where('device', '=', device).where('photograph', '=', photograph).executeTakeFirst(),
  )
  return row?.received ?? 0
}

/** Keeps a piece and gives how many bytes there are then. `now`: ms since 1970. Throws `Refused`: other-offset, wrong-request, too-large. */
export function keepPiece(db: Kysely<Tables>, part: Part, now: number): Promise<number> {
  const { device, photograph, offset, total, bytes } = part
  mustFit(part)
  return durably(db, async (trx) => {
    const { received } = await held(trx, part, now)
    if (offset < received && (await isThere(trx, part))) return received
    if (offset !== received) throw new Refused('other-offset', { received })
    if (bytes.length === 0) return received
    await trx.insertInto('photograph_piece').values({ device, photograph, from_byte: offset, bytes }).execute()
    const after = offset + bytes.length
    await trx
      .updateTable('photograph_upload')
      .set({ received: after, last_at: now, total })
      .where('device', '=', device)
      .where('photograph', '=', photograph)
      .execute()
    return after
  })
}

function mustFit({ offset, total, bytes, complete }: Part): void {
  if (total > MOST_BYTES) throw new Refused('too-large', { most: MOST_BYTES })
  const end = offset + bytes.length
  if (total < 1 || end > total || (complete && end !== total))
    throw new Refused('wrong-request', { at: 'headers/upload-length', why: `this piece ends at ${end} of ${total}` })
}

/** The upload's row, locked; made with the first piece, and made anew when a first piece tells of another length. */
async function held(trx: Trx, part: Part, now: number): Promise<Pick<Upload, 'received'>> {
  const { device, photograph, offset, total } = part
  const found = await trx
    .selectFrom('photograph_upload')
    .select(['received', 'total'])
    .where('device', '=', device)
    .where('photograph', '=', photograph)
    .forUpdate()
    .executeTakeFirst()
  if (found?.total === total) return found
  if (offset !== 0) {
    if (found === undefined) throw new Refused('other-offset', { received: 0 })
    const why = `this photograph was begun with ${found.total} bytes`
    throw new Refused('wrong-request', { at: 'headers/upload-length', why })
  }
  if (found !== undefined) await drop(trx, [{ device, photograph }])
  await makeRoom(trx, device, total, now)
  await trx.insertInto('photograph_upload').values({ device, photograph, total, received: 0, last_at: now }).execute()
  return { received: 0 }
}

/** Whether just this piece has come before: its acknowledgement was lost. */
async function isThere(trx: Trx, { device, photograph, offset, bytes }: Part): Promise<boolean> {
  const piece = await trx
    .selectFrom('photograph_piece')
    .select('bytes')
    .where('device', '=', device)
    .where('photograph', '=', photograph)
    .where('from_byte', '=', offset)
    .executeTakeFirst()
  return piece?.bytes.equals(bytes) ?? false
}

async function makeRoom(trx: Trx, device: string, total: number, now: number): Promise<void> {
  const uploads = trx.selectFrom('photograph_upload').select(['device', 'photograph'])
  await drop(trx, await uploads.where('last_at', '<', now - LIFE).execute())
  const mine = await trx
    .selectFrom('photograph_upload')
    .select(['device', 'photograph', 'total'])
    .where('device', '=', device)
    .orderBy('last_at', 'desc')
    .execute()
  let waiting = total
  const kept = mine.filter((upload, i) => {
    waiting += upload.total
    return i + 1 < MOST_UPLOADS && waiting <= MOST_WAITING_BYTES
  })
  await drop(
    trx,
    mine.filter((upload) => !kept.includes(upload)),
  )
}

/** The row first: whoever adds a piece holds it, so no piece is left without its row. */
async function drop(trx: Trx, uploads: readonly Pick<Upload, 'device' | 'photograph'>[]): Promise<void> {
  for (const { device, photograph } of uploads)
    for (const table of ['photograph_upload', 'photograph_piece'] as const)
      await trx.deleteFrom(table).where('device', '=', device).where('photograph', '=', photograph).execute()
}

/** What has come of it is of no use: it may be sent anew. */
export function dropUpload(db: Kysely<Tables>, device: string, photograph: string): Promise<void> {
  return durably(db, (trx) => drop(trx, [{ device, photograph }]))
}

/** The photograph is kept: no device needs to send it any more. */
export async function dropAll(trx: Trx, photograph: string): Promise<void> {
  for (const table of ['photograph_upload', 'photograph_piece'] as const)
    await trx.deleteFrom(table).where('photograph', '=', photograph).execute()
}

/** All of it, piece after piece; null when a piece is not there any more. */
export async function gathered(
  db: Kysely<Tables>,
  { device, photograph, total }: Pick<Part, 'device' | 'photograph' | 'total'>,
): Promise<Buffer | null> {
  const whole = Buffer.alloc(total)
  let at = 0
  while (at < total) {
    const next = db
      .selectFrom('photograph_piece')
      .select('bytes')
      .where('device', '=', device)
      .where('photograph', '=', photograph)
      .where('from_byte', '=', at)
    const piece = await again(() => next.executeTakeFirst())
    if (piece === undefined || piece.bytes.length > total - at) return null
    piece.bytes.copy(whole, at)
    at += piece.bytes.length
  }
  return whole
}
