/** Phones append and send photographs, and at a random moment what serves them is killed with SIGKILL: Gripbook, PostgreSQL, or both. Again and again, on the same record. */

import { randomBytes } from 'node:crypto'
import sharp from 'sharp'
import { seeded } from '../../packages/server/src/testing/seeded.ts'
import { acknowledge, askHowFar, newTruth, nextBatch, type Phone, sendPiece, type Truth } from './phones.ts'
import { type Kind, type Place, placeFor, type Spot } from './places.ts'
import { build, rightBody, type Served, startServed, Unserved } from './served.ts'
import { nothingSeen, type Reader, verify, verifyAll } from './verify.ts'

export type Outcome = {
  kills: number
  killed: Record<Victim, number>
  /** Kills before the database was open, those of a first start among them. */
  whileOpening: number
  entries: number
  acknowledged: number
  photographs: number
  /** Entries that were kept though nobody had been told: sent again, they are there once. */
  keptUntold: number
  /** Milliseconds from starting the process to an open database, after a kill. */
  reopened: { median: number; most: number }
}

type Victim = 'gripbook' | 'database' | 'first process of the database' | 'both'
const VICTIMS: readonly Victim[] = ['gripbook', 'database', 'first process of the database', 'both']

const DEVICES = 4
/** One kill in so many hits the very first start on an empty folder or database. */
const FIRST_START_EVERY = 12
/** And so many, where it can be, a Gripbook that is just opening the record again. */
const OPENING_EVERY = 5
/** Milliseconds. */
const LONGEST_APPENDING = 150
const LONGEST_OPENING = 1_500
/** And so many kills everything is read again from the beginning. */
const ALL_EVERY = 10
const BACK_WITHIN = 60_000

/** Throws with words at the first thing that is wrong; `say` is told how it goes. */
export async function killTrial(
  kind: Kind,
  kills: number,
  seed: number,
  say: (line: string) => void,
): Promise<Outcome> {
  build()
  const random = seeded(seed)
  const place = await placeFor(kind)
  const seen = nothingSeen()
  const times: number[] = []
  const outcome: Outcome = {
    kills: 0,
    killed: { gripbook: 0, database: 0, 'first process of the database': 0, both: 0 },
    whileOpening: 0,
    entries: 0,
    acknowledged: 0,
    photographs: 0,
    keptUntold: 0,
    reopened: { median: 0, most: 0 },
  }
  const started = new Set<Served>()
  const start = (spot: Spot): Served => {
    const served = startServed(spot)
    started.add(served)
    return served
  }
  const open = async (spot: Spot): Promise<{ served: Served; ownerCode: string | null }> => {
    const from = performance.now()
    const served = start(spot)
    const { ownerCode } = await served.open
    times.push(performance.now() - from)
    return { served, ownerCode }
  }
  try {
    let { served, ownerCode } = await open(place.spot)
    const truth = await newTruth(served, ownerCode!, random, DEVICES)
    const reader = (): Reader => readerOf(served, truth.phones[0]!.cookie)
    while (outcome.kills < kills) {
      outcome.kills++
      if (outcome.kills % FIRST_START_EVERY === 0) {
        outcome.whileOpening++
        const spot = await place.fresh()
        await killWhileOpening(start(spot), place, spot, random)
        await mustServe(await open(spot), random)
        continue
      }
      const victim = VICTIMS[Math.floor(random() * VICTIMS.length)]!
      outcome.killed[victim]++
      await killWhileSending(served, place, truth, victim, random)
      if (victim === 'gripbook' || victim === 'both') {
        if (outcome.kills < kills && outcome.kills % OPENING_EVERY === 0) {
          outcome.kills++
          outcome.whileOpening++
          await killWhileOpening(start(place.spot), place, place.spot, random)
        }
        served = (await open(place.spot)).served
      }
      await whenItServes(() => verify(reader(), truth, seen))
      if (outcome.kills % ALL_EVERY === 0) await whenItServes(() => verifyAll(reader(), truth))
      outcome.keptUntold += [...seen.ids].filter((id) => !truth.acknowledged.has(id)).length
      say(
        `${outcome.kills}: ${victim} killed; ${truth.acknowledged.size} acknowledged, ${seen.ids.size} kept, ${truth.photographs.size} photographs`,
      )
    }
    await whenItServes(() => verifyAll(reader(), truth))
    await served.stop()
    return {
      ...outcome,
      entries: seen.ids.size,
      acknowledged: truth.acknowledged.size,
      photographs: truth.photographs.size,
      reopened: summary(times),
    }
  } finally {
    for (const served of started) served.kill()
    await Promise.all([...started].map(({ gone }) => gone))
    await place.remove()
  }
}

function readerOf(served: Served, cookie: string): Reader {
  const read = async <T>(path: string) => rightBody<T>(await served.ask({ method: 'GET', path, cookie }), path)
  return {
    after: (position) => read(`/api/entries?limit=2000${position === null ? '' : `&after=${position}`}`),
    heads: async (unit) =>
      (await read<{ heads: Awaited<ReturnType<Reader['heads']>> }>(`/api/units/${unit}/heads`)).heads,
    async photograph(name) {
      const answer = await served.ask({ method: 'GET', path: `/api/photographs/${name}?size=full`, cookie })
      return answer.status === 200 ? answer.bytes : null
    },
  }
}

/** All phones send at once, the victim is killed at a random moment, and PostgreSQL is brought back where nobody else does so. */
async function killWhileSending(
  served: Served,
  place: Place,
  truth: Truth,
  victim: Victim,
  random: () => number,
): Promise<void> {
  let killed = false
  const sending = truth.phones.flatMap((phone) => [
    untilKilled(
      () => sendEntries(served, truth, phone, random),
      () => killed,
    ),
    untilKilled(
      () => sendPhotograph(served, truth, phone),
      () => killed,
    ),
  ])
  await pause(2 + random() * LONGEST_APPENDING)
  killed = true
  if (victim === 'gripbook' || victim === 'both') served.kill()
  if (victim !== 'gripbook') {
    await place.killDatabase(place.spot, victim !== 'first process of the database')
    await place.restart()
  }
  await Promise.all(sending)
  if (victim === 'gripbook' || victim === 'both') await served.gone
}

/** Works on until the kill; a refusal, or no answer before the kill, ends the trial. */
async function untilKilled(work: () => Promise<void>, killed: () => boolean): Promise<void> {
  while (!killed()) {
    try {
      await work()
    } catch (error) {
      if (!killed() || !(error instanceof Unserved)) throw error
      return
    }
  }
}

async function sendEntries(served: Served, truth: Truth, phone: Phone, random: () => number): Promise<void> {
  const batch = nextBatch(truth, phone, random)
  const ask = { method: 'POST', path: '/api/entries', cookie: phone.cookie, body: { entries: batch } } as const
  rightBody(await served.ask(ask), 'a batch')
  acknowledge(truth, phone, batch)
}

async function sendPhotograph(served: Served, truth: Truth, phone: Phone): Promise<void> {
  await askHowFar(served, truth, phone)
  await sendPiece(served, truth, phone, picture)
}

/** Noise: a file of some 20 kB, another one each time. */
function picture(): Promise<Buffer> {
  const [width, height] = [120, 80]
  return sharp(randomBytes(width * height * 3), { raw: { width, height, channels: 3 } })
    .jpeg({ quality: 95 })
    .toBuffer()
}

async function killWhileOpening(served: Served, place: Place, spot: Spot, random: () => number): Promise<void> {
  await pause(random() * LONGEST_OPENING)
  served.kill()
  if (random() < 0.5) {
    await place.killDatabase(spot, random() < 0.5)
    await place.restart()
  }
  await served.gone
}

/** A place whose first start was killed takes entries as if nothing had happened. */
async function mustServe(
  { served, ownerCode }: { served: Served; ownerCode: string | null },
  random: () => number,
): Promise<void> {
  if (ownerCode === null) throw new Error('a shop whose first start was killed has no owner and offers no code')
  const truth = await newTruth(served, ownerCode, random, 1)
  await sendEntries(served, truth, truth.phones[0]!, random)
  await verifyAll(readerOf(served, truth.phones[0]!.cookie), truth)
  await served.stop()
}

/** A Gripbook that outlived its database may fail until the database is back, and not for longer; what is found wrong is never tried again. */
async function whenItServes(work: () => Promise<void>): Promise<void> {
  const until = performance.now() + BACK_WITHIN
  for (;;) {
    try {
      return await work()
    } catch (error) {
      if (!(error instanceof Unserved) || performance.now() > until) throw error
      await pause(20)
    }
  }
}

function summary(times: readonly number[]): Outcome['reopened'] {
  const sorted = [...times].sort((a, b) => a - b)
  return { median: Math.round(sorted[sorted.length >> 1] ?? 0), most: Math.round(sorted.at(-1) ?? 0) }
}

function pause(milliseconds: number): Promise<void> {
  return new Promise((done) => setTimeout(done, milliseconds))
}
