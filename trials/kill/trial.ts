/** Phones append, and at a random moment what serves them is killed with SIGKILL: Gripbook, PostgreSQL, or both. Again and again, on the same record. */

import { acknowledge, newTruth, nextBatch, type Phone, seeded, type Truth } from './phones.ts'
import { type Kind, type Place, placeFor } from './places.ts'
import { nothingSeen, verify, verifyAll } from './verify.ts'
import { build, startWorker, Unserved, type Worker } from './worker.ts'

export type Outcome = {
  kills: number
  killed: Record<Victim, number>
  /** Kills before the database was open, those of a first start among them. */
  whileOpening: number
  entries: number
  acknowledged: number
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
  const truth = newTruth(random, DEVICES)
  const seen = nothingSeen()
  const times: number[] = []
  const outcome: Outcome = {
    kills: 0,
    killed: { gripbook: 0, database: 0, 'first process of the database': 0, both: 0 },
    whileOpening: 0,
    entries: 0,
    acknowledged: 0,
    keptUntold: 0,
    reopened: { median: 0, most: 0 },
  }
  const started = new Set<Worker>()
  const start = (where: string): Worker => {
    const worker = startWorker(kind, where)
    started.add(worker)
    return worker
  }
  const open = async (where: string): Promise<Worker> => {
    const from = performance.now()
    const worker = start(where)
    await worker.open
    times.push(performance.now() - from)
    return worker
  }
  try {
    let worker = await open(place.where)
    while (outcome.kills < kills) {
      outcome.kills++
      if (outcome.kills % FIRST_START_EVERY === 0) {
        outcome.whileOpening++
        const where = await place.fresh()
        await killWhileOpening(start(where), place, where, random)
        await mustServe(await open(where), random)
        continue
      }
      const victim = VICTIMS[Math.floor(random() * VICTIMS.length)]!
      outcome.killed[victim]++
      await killWhileAppending(worker, place, truth, victim, random)
      if (victim === 'gripbook' || victim === 'both') {
        if (outcome.kills < kills && outcome.kills % OPENING_EVERY === 0) {
          outcome.kills++
          outcome.whileOpening++
          await killWhileOpening(start(place.where), place, place.where, random)
        }
        worker = await open(place.where)
      }
      const serving = worker
      await whenItServes(() => verify(serving, truth, seen))
      outcome.keptUntold += [...seen.ids].filter((id) => !truth.acknowledged.has(id)).length
      say(`${outcome.kills}: ${victim} killed; ${truth.acknowledged.size} acknowledged, ${seen.ids.size} kept`)
    }
    const last = worker
    await whenItServes(() => verifyAll(last, truth))
    await last.ask({ what: 'close' })
    return {
      ...outcome,
      entries: seen.ids.size,
      acknowledged: truth.acknowledged.size,
      reopened: summary(times),
    }
  } finally {
    for (const worker of started) worker.kill()
    await Promise.all([...started].map(({ gone }) => gone))
    await place.remove()
  }
}

/** All phones append at once, the victim is killed at a random moment, and PostgreSQL is brought back where nobody else does so. */
async function killWhileAppending(
  worker: Worker,
  place: Place,
  truth: Truth,
  victim: Victim,
  random: () => number,
): Promise<void> {
  let killed = false
  const sending = truth.phones.map((phone) => send(worker, truth, phone, random, () => killed))
  await pause(2 + random() * LONGEST_APPENDING)
  killed = true
  if (victim === 'gripbook' || victim === 'both') worker.kill()
  if (victim !== 'gripbook') {
    await place.killDatabase(place.where, victim !== 'first process of the database')
    await place.restart()
  }
  await Promise.all(sending)
  if (victim === 'gripbook' || victim === 'both') await worker.gone
}

/** Sends batch after batch as they are acknowledged, until the kill; a refusal, or a failure before the kill, ends the trial. */
async function send(
  worker: Worker,
  truth: Truth,
  phone: Phone,
  random: () => number,
  killed: () => boolean,
): Promise<void> {
  while (!killed()) {
    const batch = nextBatch(truth, phone, random)
    try {
      await worker.ask({ what: 'append', events: batch })
    } catch (error) {
      if (!killed() || (error as Error).message.startsWith('refused')) throw error
      return
    }
    acknowledge(truth, phone, batch)
  }
}

async function killWhileOpening(worker: Worker, place: Place, where: string, random: () => number): Promise<void> {
  await pause(random() * LONGEST_OPENING)
  worker.kill()
  if (random() < 0.5) {
    await place.killDatabase(where, random() < 0.5)
    await place.restart()
  }
  await worker.gone
}

/** A place whose first start was killed takes entries as if nothing had happened. */
async function mustServe(worker: Worker, random: () => number): Promise<void> {
  const truth = newTruth(random, 1)
  const [phone] = truth.phones
  const batch = nextBatch(truth, phone!, random)
  await worker.ask({ what: 'append', events: batch })
  acknowledge(truth, phone!, batch)
  await verifyAll(worker, truth)
  await worker.ask({ what: 'close' })
  worker.kill()
  await worker.gone
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
