/** One batch of one unit's entries to the shop, and what its answer makes of them. */
import { type Event, photographsOf } from '@gripbook/record'
import { photographsAgain } from './album.ts'
import { type Answer, type Ask, isObject, wasTooMuch } from './ask.ts'
import type { Database, EntryRow } from './database.ts'
import type { ShopRefusal } from './faults.ts'
import type { Place } from './place.ts'
import { lostFrom, markRefused, markSent, nextBatch } from './waiting.ts'

const MOST_ENTRIES = 500
const MOST_BYTES = 1_000_000

/** What a step of sending came to: something moved on; or why nothing does for now, `aside` when the rest may still. */
export type Step = { moved: true } | { moved: false; answer: Answer & { ok: false }; aside?: true }

export const MOVED: Step = { moved: true }

/** Refusals that may be of one entry or photograph, so that another attempt with the same one is pointless. All others are of the connection. */
const OF_WHAT_WAS_SENT = new Set([
  'refused-entries',
  'bad-entry',
  'other-device',
  'not-allowed',
  'too-large',
  'wrong-request',
  'wrong-type',
  'not-that-photograph',
  'bad-photograph',
])

export function isOfWhatWasSent({ status, code }: { status: number; code: string }): boolean {
  return OF_WHAT_WAS_SENT.has(code) && status !== 401
}

/** What a tab knows of how many entries get through at once. */
export type Batches = {
  /** Per unit, where not all that are allowed do. */
  most: Map<string, number>
  /** ms since 1970. */
  clock: () => number
  /** Entries that took no longer than this, in ms, say that twice as many would come through too. */
  quick: number
}

export function batchesOf({ clock, patience }: Pick<Place, 'clock' | 'patience'>): Batches {
  return { most: new Map(), clock, quick: patience.answer / 4 }
}

/** The next batch of a unit. What does not come through is sent in halves, down to the one entry that it is due to. */
export async function sendBatch(db: Database, ask: Ask, unit: string, { most, clock, quick }: Batches): Promise<Step> {
  const rows = await nextBatch(db, unit, { most: most.get(unit) ?? MOST_ENTRIES, bytes: MOST_BYTES })
  if (rows.length === 0) return MOVED
  const body = `{"entries":[${rows.map(({ text }) => text).join(',')}]}`
  const asked = clock()
  const answer = await ask({ method: 'POST', path: '/entries', body })
  if (answer.ok) {
    if (!countsAll(answer.body, rows.length)) return strange(answer.status)
    await markSent(db, rows)
    const tried = most.get(unit) ?? MOST_ENTRIES
    if (clock() - asked <= quick) most.set(unit, Math.min(tried * 2, MOST_ENTRIES))
    return MOVED
  }
  if (wasTooMuch(answer)) most.set(unit, half(rows.length))
  if (answer.why !== 'refused' || !isOfWhatWasSent(answer)) return { moved: false, answer }
  const named = namedIn(answer, rows.length)
  if (named === null) {
    // Nobody said which: half as many tell more, and one alone is the one.
    if (rows.length === 1) await markRefused(db, rows[0]!, { code: answer.code, facts: answer.facts })
    else most.set(unit, half(rows.length))
    return MOVED
  }
  await settle(db, rows[named.index]!, named)
  return MOVED
}

function half(count: number): number {
  return Math.ceil(count / 2)
}

/** A batch that was kept is counted to the last entry, else it was something else that answered. */
function countsAll(body: unknown, sent: number): boolean {
  return isObject(body) && Number(body.added) + Number(body.known) === sent
}

export function strange(status: number): Step {
  return { moved: false, answer: { ok: false, why: 'strange-answer', status } }
}

type Named = ShopRefusal & { index: number }

/** The first entry that a refusal names; a unit's entries of one device are one chain, so the others only echo it. */
function namedIn({ code, facts }: { code: string; facts: Record<string, unknown> }, sent: number): Named | null {
  const listed: unknown = code === 'refused-entries' && Array.isArray(facts.refusals) ? facts.refusals[0] : null
  const { index, code: own = code, ...rest } = isObject(listed) ? listed : facts
  return Number.isInteger(index) && Number(index) >= 0 && Number(index) < sent && typeof own === 'string'
    ? { index: Number(index), code: own, facts: rest }
    : null
}

/** Entries missing before it in the shop go again, where they are still here; for any other reason the entry stays with it. */
async function settle(db: Database, row: EntryRow, { code, facts }: Named): Promise<void> {
  const { expected } = facts
  if (code === 'missing-before' && typeof expected === 'number' && expected < row.seq) {
    const lost = await lostFrom(db, row.unit, expected)
    await photographsOfLost(db, lost)
    if (lost.some(({ seq }) => seq === expected)) return
  }
  await markRefused(db, row, { code, facts })
}

/** A shop that lost entries may have lost their photographs too: those still here are offered again. */
export async function photographsOfLost(db: Database, lost: readonly EntryRow[]): Promise<void> {
  if (lost.length === 0) return
  await photographsAgain(db, photographsOf(lost.map(({ text }) => JSON.parse(text) as Event)))
}
