/** Photographs on the device: kept until the shop has them, then for as long as there is room. */
import { sha256 } from '@gripbook/record'
import { Dexie } from 'dexie'
import type { Database, PhotographRow } from './database.ts'
import { DeviceFault, type ShopRefusal, storageFault } from './faults.ts'

/** Bytes of a stored piece; a request to the shop holds at most as many. */
export const PIECE = 1_048_576

/** Keeps a photograph; resolves with its SHA-256 when it is on the disk. The same one twice is kept once. */
export async function keepPhotograph(db: Database, bytes: Uint8Array, now: number): Promise<string> {
  if (bytes.length === 0) throw new DeviceFault('no-bytes')
  const name = sha256(bytes)
  await db.transaction('rw', db.photographs, db.pieces, async () => {
    const known = await db.photographs.get(name)
    if (known?.state === 'waiting') return
    const since = new Date(now).toISOString()
    await db.photographs.put({ sha256: name, bytes: bytes.length, state: 'waiting', since, used: now })
    for (let at = 0; at < bytes.length; at += PIECE)
      await db.pieces.put({ sha256: name, number: at / PIECE, bytes: bytes.slice(at, at + PIECE) })
  })
  return name
}

/** The photograph as it was taken, or null when it does not lie here. */
export async function photographHere(db: Database, name: string, now: number): Promise<Uint8Array<ArrayBuffer> | null> {
  const row = await db.photographs.get(name)
  if (row === undefined) return null
  const bytes = await bytesOf(db, row, 0, row.bytes)
  // Only for making room later: a full storage does not keep anybody from looking.
  await db.photographs.update(name, { used: now }).catch(() => {})
  return bytes
}

/** Bytes `from` to `to` (not with it) of a photograph. */
export async function bytesOf(
  db: Database,
  { sha256: name, bytes: total }: PhotographRow,
  from: number,
  to: number,
): Promise<Uint8Array<ArrayBuffer>> {
  const end = Math.min(to, total)
  const wanted = new Uint8Array(end - from)
  for (let number = Math.floor(from / PIECE); number * PIECE < end; number++) {
    const piece = await db.pieces.get([name, number])
    if (piece === undefined) throw new DeviceFault('storage-failed', { photograph: name, piece: number })
    const start = number * PIECE
    const part = piece.bytes.subarray(Math.max(from - start, 0), Math.min(end - start, piece.bytes.length))
    wanted.set(part, Math.max(start - from, 0))
  }
  return wanted
}

/** The one that waits longest. */
export async function nextPhotograph(db: Database, but: ReadonlySet<string>): Promise<PhotographRow | undefined> {
  return db.photographs
    .where('[state+used]')
    .between(['waiting', Dexie.minKey], ['waiting', Dexie.maxKey])
    .filter(({ sha256: name }) => !but.has(name))
    .first()
}

/** The shop has it: it stays while there is room, and where there is not even room to note that, it goes. */
export async function photographTaken(db: Database, name: string): Promise<void> {
  try {
    await db.photographs
      .where('sha256')
      .equals(name)
      .modify((row) => {
        row.state = 'sent'
        delete row.refusal
      })
  } catch (error) {
    if (storageFault(error).code !== 'storage-full') throw error
    await db.transaction('rw', db.photographs, db.pieces, () => drop(db, name))
  }
}

export async function photographRefused(db: Database, name: string, refusal: ShopRefusal): Promise<void> {
  await db.photographs.update(name, { state: 'refused', refusal })
}

/** Photographs that wait again: those named that were sent and still lie here, or all that were refused. */
export async function photographsAgain(db: Database, which: readonly string[] | 'refused'): Promise<number> {
  const rows =
    which === 'refused'
      ? db.photographs.where('state').equals('refused')
      : db.photographs
          .where('sha256')
          .anyOf([...which])
          .filter(({ state }) => state === 'sent')
  return rows.modify((row: PhotographRow) => {
    row.state = 'waiting'
    delete row.refusal
  })
}

/** Frees sent photographs, the one not looked at for longest first, until no more than `keep` bytes of them lie here. Returns the bytes freed; what waits is never touched. */
export async function makeRoom(db: Database, keep: number): Promise<number> {
  return db.transaction('rw', db.photographs, db.pieces, async () => {
    const sent = await db.photographs
      .where('[state+used]')
      .between(['sent', Dexie.minKey], ['sent', Dexie.maxKey])
      .toArray()
    let left = sent.reduce((sum, { bytes }) => sum + bytes, 0)
    let freed = 0
    for (const { sha256: name, bytes } of sent) {
      if (left <= keep) break
      await drop(db, name)
      left -= bytes
      freed += bytes
    }
    return freed
  })
}

async function drop(db: Database, name: string): Promise<void> {
  await db.pieces.where('[sha256+number]').between([name, 0], [name, Number.MAX_SAFE_INTEGER], true, true).delete()
  await db.photographs.delete(name)
}
