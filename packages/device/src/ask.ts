/** Asking the shop: what an answer means, told apart once for everything that asks. */
import type { Place } from './place.ts'

export type Question = {
  method: 'GET' | 'POST' | 'PATCH' | 'DELETE'
  path: string
  /** JSON as text, or bytes. */
  body?: string | Uint8Array<ArrayBuffer>
  headers?: Record<string, string>
}

export type Answer =
  | { ok: true; status: number; body: unknown }
  /** Nothing came, or not in time: the shop may or may not have done what was asked. */
  | { ok: false; why: 'no-answer' }
  /** Something answered that is not the shop: a hotspot's page, a proxy. */
  | { ok: false; why: 'strange-answer'; status: number }
  /** The shop cannot at the moment. `after`: ms that it asks to wait. */
  | { ok: false; why: 'later'; status: number; after: number }
  /** The shop says no; `code` is its own. */
  | { ok: false; why: 'refused'; status: number; code: string; facts: Record<string, unknown> }

/** What each answer tells of the shop beside what was asked. */
export type Heard = {
  /** The shop's clock minus the device's, in ms; null when the answer does not tell. */
  ahead: number | null
}

export type Ask = (question: Question) => Promise<Answer>

/** A round trip longer than this says too little about the shop's clock, in ms. */
const USEFUL_TRIP = 10_000

/** `ending`: a device that is closed does not wait for an answer; whatever it asked for counts as not answered. */
export function asker(
  place: Pick<Place, 'base' | 'fetch' | 'clock' | 'patience'>,
  ending: AbortSignal,
  heard: (heard: Heard) => void,
): Ask {
  return async ({ method, path, body, headers = {} }) => {
    if (ending.aborted) return { ok: false, why: 'no-answer' }
    const patience = new AbortController()
    const giveUp = () => patience.abort()
    const timer = setTimeout(giveUp, place.patience.answer)
    ending.addEventListener('abort', giveUp)
    const asked = place.clock()
    try {
      const type = typeof body === 'string' ? 'application/json' : 'application/octet-stream'
      const response = await place.fetch(place.base + path, {
        method,
        headers: { accept: 'application/json', ...(body === undefined ? {} : { 'content-type': type }), ...headers },
        ...(body === undefined ? {} : { body }),
        credentials: 'same-origin',
        cache: 'no-store',
        redirect: 'error',
        signal: patience.signal,
      })
      const answer = meaningOf(response, await response.text(), place.clock())
      if (answer.ok || answer.why !== 'strange-answer')
        heard({ ahead: aheadOf(response.headers.get('date'), asked, place.clock()) })
      return answer
    } catch {
      return { ok: false, why: 'no-answer' }
    } finally {
      clearTimeout(timer)
      ending.removeEventListener('abort', giveUp)
    }
  }
}

/** Whether less at once might have come through: on a slow link a large request is never answered in time, however often it is sent. */
export function wasTooMuch(answer: Answer & { ok: false }): boolean {
  return answer.why === 'no-answer' || (answer.why === 'later' && answer.status === 408)
}

/** An answer is the shop's only if it is JSON (or says nothing, with 204), and a refusal only if it names its code. */
export function meaningOf(
  { status, headers }: { status: number; headers: { get(name: string): string | null } },
  text: string,
  now: number,
): Answer {
  if (status === 204) return { ok: true, status, body: null }
  const body = jsonOf(text)
  if (status >= 200 && status < 300)
    return isObject(body) ? { ok: true, status, body } : { ok: false, why: 'strange-answer', status }
  if (status === 408 || status === 429 || status >= 500)
    return { ok: false, why: 'later', status, after: waitOf(headers.get('retry-after'), now) }
  if (isObject(body) && typeof body.code === 'string') {
    const { code, status: _, title: __, ...facts } = body
    return { ok: false, why: 'refused', status, code, facts }
  }
  // A proxy between has its own limit and says so without a code; what was sent is too large all the same.
  if (status === 413) return { ok: false, why: 'refused', status, code: 'too-large', facts: {} }
  return { ok: false, why: 'strange-answer', status }
}

/** `Retry-After` in ms: seconds, or a date. */
function waitOf(text: string | null, now: number): number {
  if (text === null) return 0
  const wait = /^\d+$/.test(text) ? Number(text) * 1000 : Date.parse(text) - now
  return Number.isFinite(wait) ? Math.min(Math.max(wait, 0), 3_600_000) : 0
}

/** `Date` is cut to the second, so the middle of it is taken, and so is the middle of the round trip. */
function aheadOf(date: string | null, asked: number, answered: number): number | null {
  const there = date === null ? Number.NaN : Date.parse(date)
  const trip = answered - asked
  return Number.isNaN(there) || trip < 0 || trip > USEFUL_TRIP ? null : there + 500 - (asked + answered) / 2
}

export function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

export function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}
