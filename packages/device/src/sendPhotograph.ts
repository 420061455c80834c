/** One piece of a photograph to the shop; what the shop has of it decides where it goes on. */
import { bytesOf, PIECE, photographRefused, photographTaken } from './album.ts'
import { type Answer, type Ask, isObject } from './ask.ts'
import type { Database, PhotographRow } from './database.ts'
import { DeviceFault } from './faults.ts'
import { isOfWhatWasSent, MOVED, type Step, strange } from './sendEntries.ts'

const SMALLEST_PIECE = 16_384

/** How far a photograph has come, as the shop said last. */
export type Upload = { received: number; piece: number; restarts: number }

/** `uploads` remembers how far each has come; a photograph that is not in it is asked for first, so an upload that was cut goes on where it was. */
export async function sendPiece(
  db: Database,
  ask: Ask,
  row: PhotographRow,
  uploads: Map<string, Upload>,
): Promise<Step> {
  const name = row.sha256
  const path = `/photographs/${name}/upload`
  const upload = uploads.get(name)
  if (upload === undefined) {
    const answer = await ask({ method: 'GET', path })
    return goOn(answer, { received: 0, piece: PIECE, restarts: 0 })
  }
  const to = Math.min(upload.received + upload.piece, row.bytes)
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
  return goOn(await ask({ method: 'PATCH', path, body, headers }), upload)

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
    if (answer.code === 'too-large' && before.piece > SMALLEST_PIECE) {
      uploads.set(name, { ...before, piece: before.piece / 2 })
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
