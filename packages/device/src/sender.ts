/**
 * What goes to the shop, step by step: who is signed in, entries, what the shop has of them, photographs. After each step the most urgent is
 * looked for anew, so an entry written while a photograph is on its way goes before the photograph's next piece.
 */
import { makeRoom, nextPhotograph } from './album.ts'
import { type Answer, type Ask, isObject, type Question } from './ask.ts'
import type { Database, Self } from './database.ts'
import type { NewsDesk } from './news.ts'
import type { Place } from './place.ts'
import { batchesOf, MOVED, photographsOfLost, type Step, sendBatch, strange } from './sendEntries.ts'
import { pieces, sendPiece } from './sendPhotograph.ts'
import { compare, unitsToSend, unitsWritten } from './waiting.ts'

export type Person = { id: string; name: string; role: string }

export type Refusing = Answer & { ok: false }

export type Sender = {
  /** Sends all that can be sent, or until it is to stop. Null when nothing is left to do, else what the shop said last that stands in the way. */
  round(stop: AbortSignal): Promise<Refusing | null>
  /** What the shop has is not known any more: it is asked again in the next round. */
  lookAgain(): void
}

type Around = {
  db: Database
  self: Self
  place: Pick<Place, 'cacheBytes' | 'clock' | 'patience'>
  ask: Ask
  news: NewsDesk
  /** Called when the shop has said who is signed in. */
  signedIn: (person: Person) => void
  /** Called when something went through and nothing stands in the way of this round so far. */
  goesOn: () => void
  /** The shop has entries of this device that the device lacks: it was set back itself. */
  fetchMissing: (unit: string) => Promise<unknown>
}

/** The shop answers that nobody is signed in, or that it takes this device for another one. */
export const NOT_SIGNED_IN: Refusing = { ok: false, why: 'refused', status: 401, code: 'not-signed-in', facts: {} }

export function sender(around: Around): Sender {
  const { db, self, place, ask, news } = around
  /** Units whose entries the shop has to be asked about; null before the shop has answered. */
  let unchecked: Set<string> | null = null
  /** How often it was forgotten: that may happen while something is waited for. */
  let forgotten = 0
  const batches = batchesOf(place)
  const sending = pieces(place)

  async function step(aside: Set<string>): Promise<Step | null> {
    if (unchecked === null) return connect()
    const unit = (await unitsToSend(db)).find((one) => !aside.has(one))
    if (unit !== undefined) return withAside(aside, unit, await send(unit))
    if (unchecked === null) return MOVED
    const [old] = unchecked
    if (old !== undefined) return check(old)
    const photograph = await nextPhotograph(db, aside)
    if (photograph === undefined) return null
    const sent = await sendPiece(db, ask, photograph, sending)
    const now = await db.photographs.get(photograph.sha256)
    if (now?.state === 'sent') await makeRoom(db, place.cacheBytes)
    if (now?.state !== 'waiting') news.tell({ of: 'photographs' })
    return withAside(aside, photograph.sha256, sent)
  }

  async function connect(): Promise<Step> {
    const before = forgotten
    const answer = await ask({ method: 'GET', path: '/session' })
    if (!answer.ok) return { moved: false, answer }
    const { person, device } = answer.body as { person?: unknown; device?: unknown }
    if (!isPerson(person) || !isObject(device)) return strange(answer.status)
    // A cookie that outlived the device's database belongs to another device: it has to be paired anew.
    if (device.id !== self.id) return { moved: false, answer: NOT_SIGNED_IN }
    around.signedIn(person)
    const written = await unitsWritten(db)
    if (forgotten === before) unchecked = new Set(written)
    return MOVED
  }

  async function send(unit: string): Promise<Step> {
    const sent = await sendBatch(db, askAsThisDevice, unit, batches)
    if (sent.moved) news.tell({ of: 'units', units: [unit] })
    return sent
  }

  /** 'other-device' may mean the entry or the session: the session is looked at first, so that no entry is refused for a wrong cookie. */
  async function askAsThisDevice(question: Question): Promise<Answer> {
    const answer = await ask(question)
    if (answer.ok || answer.why !== 'refused' || answer.code !== 'other-device') return answer
    const connected = await connect()
    return connected.moved ? answer : connected.answer
  }

  async function check(unit: string): Promise<Step> {
    const answer = await ask({ method: 'GET', path: `/units/${unit}/heads` })
    if (!answer.ok) {
      if (answer.why !== 'refused' || answer.status === 401) return { moved: false, answer }
      unchecked?.delete(unit)
      return MOVED
    }
    const { heads } = answer.body as { heads?: unknown }
    if (!Array.isArray(heads) || !heads.every(isHead)) return strange(answer.status)
    const { lost, found, shopHasMore } = await compare(db, self, unit, heads)
    await photographsOfLost(db, lost)
    if (shopHasMore) await around.fetchMissing(unit)
    if (lost.length > 0 || found > 0) news.tell({ of: 'units', units: [unit] })
    unchecked?.delete(unit)
    return MOVED
  }

  return {
    async round(stop) {
      const aside = new Set<string>()
      let last: Refusing | null = null
      while (!stop.aborted) {
        const done = await step(aside)
        if (done === null) return last
        if (done.moved) {
          if (last === null) around.goesOn()
          continue
        }
        last = done.answer
        if (!done.aside) return last
      }
      return last
    },
    lookAgain() {
      forgotten++
      unchecked = null
    },
  }
}

/** What the shop fails at is set aside for this round, so that the rest goes on. */
function withAside(aside: Set<string>, what: string, done: Step): Step {
  if (done.moved || done.answer.why !== 'later' || done.answer.status !== 500) return done
  aside.add(what)
  return { ...done, aside: true }
}

export function isPerson(value: unknown): value is Person {
  return isObject(value) && [value.id, value.name, value.role].every((text) => typeof text === 'string')
}

function isHead(value: unknown): value is { device: string; seq: number; hash: string } {
  return (
    isObject(value) && typeof value.device === 'string' && Number.isInteger(value.seq) && typeof value.hash === 'string'
  )
}
