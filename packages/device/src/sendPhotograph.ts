/** One piece of a photograph to the shop; what the shop has of it decides where it goes on. */
import { bytesOf, PIECE, photographRefused, photographTaken } from './album.ts'
import { type Answer, type Ask, isObject, wasTooMuch } from './ask.ts'
import type { Database, PhotographRow } from './database.ts'
import { DeviceFault } from './faults.ts'
import type { Place } from './place.ts'
import { isOfWhatWasSent, MOVED, type Step, strange } from './sendEntries.ts'

const SMALLEST_PIECE = 16_384

/** How far a photograph has come, as the shop said last. */
type Upload = { received: number; restarts: number }

/** What a tab knows of the photographs that it sends. */
export type Pieces = {
  /** How far each has come; one that is not here is asked for first, so an upload that was cut goes on where it was. */
  uploads: Map<string, Upload>
  /** Bytes of the next piece. */
  size: number
  /** Larger ones are refused by something on the way. */
  largest: number
  /** ms since 1970. */
  clock: () => number
  /** A piece that took no longer than this, in ms, says that twice as much would come through too. */
  quick: number
}

export function pieces({ clock, patience }: Pick<Place, 'clock' | 'patience'>): Pieces {
  return { uploads: new Map(), size: PIECE, largest: PIECE, clock, quick: patience.answer / 4 }
}

/** The shop keeps a piece only when it has come whole: one that is too large for a slow or broken link is sent in halves. */
export async function sendPiece(db: Database, ask: Ask, row: PhotographRow, pieces: Pieces): Promise<Step> {
  const { uploads, clock } = pieces
  const name = row.sha256
  const path = `/photographs/${name}/upload`
  const upload = uploads.get(name)
  if (upload === undefined) {
    const answer = await ask({ method: 'GET', path })
    return goOn(answer, { received: 0, restarts: 0 })
  }
  const to = Math.min(upload.received + pieces.size, row.bytes)
  let body: Uint8Array<ArrayBuffer>
  try {
    body = await bytesOf(db, row, Math.min(upload.received, to), to)
  } catch (error) {
    if (!(error instanceof DeviceFault)) throw error
    await photographRefused(db, name, { code: 'lost-here', facts: { ...error.facts } })
    return MOVED
  }
  const headers = {
    'upload-offset': String(upload.received),
    'upload-length': String(row.bytes),
    'upload-complete': to === row.bytes ? '?1' : '?0',
  }
  const asked = clock()
  const answer = await ask({ method: 'PATCH', path, body, headers })
  if (!answer.ok && wasTooMuch(answer)) pieces.size = Math.max(Math.floor(body.length / 2), SMALLEST_PIECE)
  else if (answer.ok && body.length >= pieces.size && clock() - asked <= pieces.quick)
    pieces.size = Math.min(pieces.size * 2, pieces.largest)
  return goOn(answer, upload)

  async function goOn(answer: Answer, before: Upload): Promise<Step> {
    if (answer.ok) {
      const said = arrivalIn(answer.body)
      if (said === null) return strange(answer.status)
      if (said.kept) {
        await photographTaken(db, name)
        uploads.delete(name)
        return MOVED
      }
      return from(said.received, before)
    }
    if (answer.why !== 'refused') {
      // How far it came is not known then: asked for when the shop answers again.
      uploads.delete(name)
      return { moved: false, answer }
    }
    if (answer.code === 'other-offset' && typeof answer.facts.received === 'number')
      return from(answer.facts.received, { ...before, restarts: before.restarts + 1 })
    if (answer.code === 'too-large' && pieces.size > SMALLEST_PIECE) {
      pieces.size = Math.max(Math.floor(pieces.size / 2), SMALLEST_PIECE)
      pieces.largest = pieces.size
      return MOVED
    }
    // What arrived was spoilt on the way, perhaps: once more from the beginning tells.
    if (answer.code === 'not-that-photograph' && before.restarts === 0) return from(0, { ...before, restarts: 1 })
    if (!isOfWhatWasSent(answer)) return { moved: false, answer }
    await photographRefused(db, name, { code: answer.code, facts: answer.facts })
    uploads.delete(name)
    return MOVED
  }

  /** A shop that says again and again that it is elsewhere, or has all bytes and does not finish, is asked later. */
  function from(received: number, before: Upload): Step {
    if (received < 0 || received > row.bytes || before.restarts > 5) {
      uploads.delete(name)
      return strange(200)
    }
    const stuck = upload !== undefined && received <= upload.received ? 1 : 0
    uploads.set(name, { ...before, received, restarts: before.restarts + stuck })
    return MOVED
  }
}

function arrivalIn(body: unknown): { received: number; kept: boolean } | null {
  if (!isObject(body) || !Number.isInteger(body.received)) return null
  if (body.kept !== null && !isObject(body.kept)) return null
  return { received: Number(body.received), kept: body.kept !== null }
}
