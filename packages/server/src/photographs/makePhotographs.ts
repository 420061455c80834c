/**
 * Photographs on the database and a place for bytes. Files are named by the hash of their own content and written before the row that speaks of them:
 * a row means that its bytes are durable, and two processes that keep the same photograph at once cannot exchange each other's files.
 */
import type { Kysely } from 'kysely'
import { Refused } from '../app/faults.ts'
import type { Tables } from '../database/tables.ts'
import { sha256 } from '../sha256.ts'
import { again } from '../store/again.ts'
import { durably } from '../store/durably.ts'
import { type Arrival, Damaged, type KeptPhotograph, type Part, type Photographs, type Size } from './photographs.ts'
import { cleaned, oneAtATime, type Picture, proven, smaller } from './pictures.ts'
import type { Place } from './place.ts'
import { dropAll, dropUpload, gathered, keepPiece, receivedOf } from './uploads.ts'

/** `clock`: ms since 1970. */
export type Given = { db: Kysely<Tables>; place: Place; clock: () => number }

type Row = Tables['photograph_kept']

const PAGE = 200
const COLUMN = { full: 'sha256', '1280': 'small_1280', '320': 'small_320' } as const satisfies Record<Size, keyof Row>

const fileName = (hash: string): string => `${hash}.jpg`

export function makePhotographs({ db, place, clock }: Given): Photographs {
  async function rowOf(photograph: string): Promise<Row | null> {
    const row = db.selectFrom('photograph_kept').selectAll().where('photograph', '=', photograph)
    return (await again(() => row.executeTakeFirst())) ?? null
  }

  async function put(bytes: Buffer): Promise<string> {
    const hash = sha256(bytes)
    await place.put(fileName(hash), bytes)
    return hash
  }

  /** The file with this hash, or what is wrong with it. */
  async function sound(hash: string): Promise<Buffer | 'gone' | 'changed'> {
    const bytes = await place.get(fileName(hash))
    if (bytes === null) return 'gone'
    return sha256(bytes) === hash ? bytes : 'changed'
  }

  async function full({ photograph, sha256: hash }: Row): Promise<Buffer> {
    const bytes = await sound(hash)
    if (typeof bytes === 'string') throw new Damaged(photograph, fileName(hash), place.where, bytes)
    return bytes
  }

  /** The bytes of a picture and of the smaller ones, durable, as the row that is to speak of them. */
  async function shelved(photograph: string, picture: Picture, at: number): Promise<Row> {
    const { bytes, width, height } = picture
    const hash = await put(bytes)
    const small_1280 = await put(await smaller(picture, 1280))
    const small_320 = await put(await smaller(picture, 320))
    return { photograph, sha256: hash, bytes: bytes.length, width, height, small_1280, small_320, at }
  }

  /** False when it was kept already: then the row that is there stays. */
  function keep(row: Row): Promise<boolean> {
    return durably(db, async (trx) => {
      const added = await trx
        .insertInto('photograph_kept')
        .values(row)
        .onConflict((conflict) => conflict.column('photograph').doNothing())
        .executeTakeFirst()
      await dropAll(trx, row.photograph)
      return (added.numInsertedOrUpdatedRows ?? 0n) > 0n
    })
  }

  /** All pieces are there: whatever they are, they are dropped when this has been answered. */
  function complete(part: Part): Promise<Arrival & { added: boolean }> {
    const { device, photograph } = part
    return oneAtATime(async () => {
      const before = await rowOf(photograph)
      if (before !== null) return { received: 0, kept: shown(before), added: false }
      const sent = await gathered(db, part)
      if (sent === null) throw new Refused('other-offset', { received: await receivedOf(db, device, photograph) })
      try {
        if (sha256(sent) !== photograph) throw new Refused('not-that-photograph')
        const row = await shelved(photograph, await cleaned(sent), clock())
        const added = await keep(row)
        return { received: 0, kept: shown(added ? row : ((await rowOf(photograph)) ?? row)), added }
      } catch (error) {
        if (error instanceof Refused) await dropUpload(db, device, photograph)
        throw error
      }
    })
  }

  /** A smaller picture that is damaged or gone is made anew from the kept one. */
  function mended(row: Row, size: Exclude<Size, 'full'>): Promise<Buffer> {
    return oneAtATime(async () => {
      const { width, height } = row
      const bytes = await smaller({ bytes: await full(row), width, height }, Number(size))
      const hash = await put(bytes)
      const set = db.updateTable('photograph_kept').set({ [COLUMN[size]]: hash })
      await again(() => set.where('photograph', '=', row.photograph).execute())
      return bytes
    })
  }

  return {
    async find(photograph) {
      const row = await rowOf(photograph)
      return row && shown(row)
    },

    async read(photograph, size) {
      const row = await rowOf(photograph)
      if (row === null) return null
      if (size === 'full') return full(row)
      const bytes = await sound(row[COLUMN[size]])
      return typeof bytes === 'string' ? mended(row, size) : bytes
    },

    async received(device, photograph) {
      const row = await rowOf(photograph)
      if (row !== null) return { received: 0, kept: shown(row) }
      return { received: await receivedOf(db, device, photograph), kept: null }
    },

    async receive(part) {
      const row = await rowOf(part.photograph)
      if (row !== null) return { received: 0, kept: shown(row), added: false }
      const received = await keepPiece(db, part, clock())
      return part.complete ? complete(part) : { received, kept: null, added: false }
    },

    takeIn(kept, bytes) {
      const { photograph } = kept
      return oneAtATime(async () => {
        if (!isTold(kept) || bytes.length !== kept.bytes || sha256(bytes) !== kept.sha256)
          throw new Refused('bad-photograph', { photograph })
        const before = await rowOf(photograph)
        if (before !== null && typeof (await sound(before.sha256)) !== 'string') return 'known'
        const picture = await proven(bytes).catch((error) => {
          throw error instanceof Refused ? new Refused(error.code, { photograph }) : error
        })
        if (picture.width !== kept.width || picture.height !== kept.height)
          throw new Refused('bad-photograph', { photograph })
        const row = await shelved(photograph, picture, Date.parse(kept.at))
        if (before === null) return (await keep(row)) ? 'added' : 'known'
        await durably(db, (trx) =>
          trx.updateTable('photograph_kept').set(row).where('photograph', '=', photograph).execute(),
        )
        return 'known'
      })
    },

    async *all() {
      let after = ''
      for (;;) {
        const page = db.selectFrom('photograph_kept').selectAll().where('photograph', '>', after)
        const rows = await again(() => page.orderBy('photograph').limit(PAGE).execute())
        yield* rows.map(shown)
        if (rows.length < PAGE) return
        after = rows.at(-1)!.photograph
      }
    },
  }
}

/** What an archive says of a photograph was written elsewhere: a name that is no hash, or a time that is none, is not taken over. */
function isTold({ photograph, at }: KeptPhotograph): boolean {
  return /^[0-9a-f]{64}$/.test(photograph) && !Number.isNaN(Date.parse(at))
}

function shown({ photograph, sha256, bytes, width, height, at }: Row): KeptPhotograph {
  return { photograph, sha256, bytes, width, height, at: new Date(at).toISOString() }
}
