/**
 * What others do on the units that are looked at. On every connection all that is missing is asked for by what the device has, so a stream
 * needs to go on from nowhere: a shop that was set back, or a position that it has forgotten, makes no difference.
 */
import { type Ask, isObject, jsonOf } from './ask.ts'
import type { Database, Self } from './database.ts'
import { pauseAfter } from './pause.ts'
import type { Place } from './place.ts'
import { eventStream } from './stream.ts'
import { knowledgeHere, type Stored } from './writing.ts'

const PAGE = 1_000
/** Streams in a row that ended before anything came: something on the way holds streams back, so from then on the shop is asked. */
const SILENT_STREAMS = 2
/** Questions in a row before a stream is tried again. */
const POLLS = 60

type Around = {
  db: Database
  self: Self
  place: Pick<Place, 'base' | 'fetch' | 'random' | 'patience' | 'onSeen'>
  ask: Ask
  store: (entries: readonly unknown[]) => Promise<Stored>
  /** The shop was reached again after it had not been, or after a stream had ended: it may have been started anew, on an older state. */
  reached: () => void
}

export type Follower = {
  follow(unit: string): () => void
  /** Brings what the shop has of a unit and the device lacks; false when it has to be asked again. */
  fetchMissing(unit: string): Promise<boolean>
  /** Signed in anew, or the network is back: tries at once. */
  wake(): void
  stop(): void
}

export function follower({ db, self, place, ask, store, reached }: Around): Follower {
  const followed = new Map<string, number>()
  let stopped = false
  let seen = true
  let running = false
  let cutShort: (() => void) | null = null
  let stream: AbortController | null = null

  const stopWatching = place.onSeen((now) => {
    seen = now
    if (seen) wake()
    else stream?.abort()
  })

  async function fetchMissing(unit: string): Promise<boolean> {
    for (;;) {
      const { seq, seen: others } = await knowledgeHere(db, self, unit)
      const have = { ...others, ...(seq > 0 ? { [self.id]: seq } : {}) }
      const body = JSON.stringify({ have, limit: PAGE })
      const answer = await ask({ method: 'POST', path: `/units/${unit}/missing`, body })
      // A unit that the shop will not speak of does not keep the others from going on.
      if (!answer.ok) return answer.why === 'refused' && answer.status !== 401
      const { entries, more } = answer.body as { entries?: unknown; more?: unknown }
      if (!Array.isArray(entries) || typeof more !== 'boolean') return false
      const { added } = await store(entries)
      // A page of which nothing could be stored would come again for ever.
      if (!more || added === 0) return true
    }
  }

  async function fetchAll(): Promise<boolean> {
    for (const unit of [...followed.keys()]) if (!(await fetchMissing(unit))) return false
    return true
  }

  /** One stream as long as it lasts; true when something came through it. */
  async function listen(): Promise<boolean> {
    const ending = new AbortController()
    stream = ending
    let came = false
    let patience = setTimeout(() => ending.abort(), place.patience.silence)
    try {
      const response = await place.fetch(`${place.base}/live`, {
        headers: { accept: 'text/event-stream' },
        credentials: 'same-origin',
        cache: 'no-store',
        signal: ending.signal,
      })
      const isStream = response.headers.get('content-type')?.startsWith('text/event-stream') === true
      if (!response.ok || response.body === null || !isStream) return false
      // What was kept between the last question and the beginning of the stream. Where that fails, the stream would go on with a gap before it.
      const caughtUp = wholly(fetchAll(), ending)
      for await (const { name, data } of eventStream(response.body)) {
        clearTimeout(patience)
        patience = setTimeout(() => ending.abort(), place.patience.silence)
        came = true
        if (name === 'entries') await take(data)
        if (name === 'stopping') break
      }
      await caughtUp
      return came
    } catch {
      return came
    } finally {
      clearTimeout(patience)
      ending.abort()
      stream = null
    }
  }

  async function take(data: string): Promise<void> {
    const said = jsonOf(data)
    if (!isObject(said) || !Array.isArray(said.entries)) return
    const wanted = said.entries.filter((entry) => isObject(entry) && followed.has(String(entry.unit)))
    if (wanted.length > 0) await store(wanted)
  }

  async function run(): Promise<void> {
    if (running) return
    running = true
    let failures = 0
    let silent = 0
    let again = false
    while (!stopped && seen && followed.size > 0) {
      try {
        const answered = await fetchAll()
        if (answered && again) reached()
        failures = answered ? 0 : failures + 1
        again = !answered
        if (answered && silent < SILENT_STREAMS) {
          again = await listen()
          silent = again ? 0 : silent + 1
        } else if (answered && ++silent > SILENT_STREAMS + POLLS) silent = 0
      } catch {
        // The database did not take it; the next time asks for the same again.
        failures++
      }
      if (stopped || !seen) break
      await pause(
        failures > 0 || silent < SILENT_STREAMS
          ? pauseAfter(failures + 1, place.patience, place.random)
          : place.patience.poll,
      )
    }
    running = false
  }

  function pause(time: number): Promise<void> {
    return new Promise((done) => {
      const timer = setTimeout(done, time)
      cutShort = () => {
        clearTimeout(timer)
        done()
      }
    })
  }

  function wake(): void {
    cutShort?.()
    void run()
  }

  return {
    fetchMissing,
    wake,
    follow(unit) {
      followed.set(unit, (followed.get(unit) ?? 0) + 1)
      if (running) void wholly(fetchMissing(unit), stream)
      else void run()
      let on = true
      return () => {
        if (!on) return
        on = false
        const left = followed.get(unit)! - 1
        if (left > 0) followed.set(unit, left)
        else followed.delete(unit)
        if (followed.size === 0) {
          stream?.abort()
          cutShort?.()
        }
      }
    },
    stop() {
      stopped = true
      stopWatching()
      stream?.abort()
      cutShort?.()
    },
  }
}

/** Ends the stream unless all that was asked for came: then it is begun anew, and all is asked for again. */
function wholly(fetching: Promise<boolean>, stream: AbortController | null): Promise<void> {
  return fetching
    .catch(() => false)
    .then((all) => {
      if (!all) stream?.abort()
    })
}
