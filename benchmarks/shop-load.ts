/**
 * The whole server as a shop runs it (`gripbook serve`, its own process, embedded PostgreSQL), over HTTP on this machine: how long a big unit takes to open, what
 * fifty devices that send at once wait for, and what memory it takes.
 */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fold, type Happening, knowledgeOf, learn, nextEntry, photographed, unitTakenIn } from '@gripbook/record'
import { SAMPLES } from '../packages/record/src/testing/samples.ts'
import { seeded } from '../packages/record/src/unitFile/testing/random.ts'
import { sha256 } from '../packages/server/src/sha256.ts'
import { childrenOf } from '../packages/server/src/testing/killTree.ts'
import { placeFor, type Spot } from '../trials/kill/places.ts'
import { build, rightBody, type Served, startServed } from '../trials/kill/served.ts'
import { type Event, uuid } from './recordEntries.ts'
import { median, short, table } from './table.ts'

const DEVICES = 50
const SENDINGS = 40
const ENTRIES = 10_000
const PHOTOGRAPHS = 500
const OPENINGS = 7

type Phone = { device: string; who: string; cookie: string }

export async function shopLoad(print: (line: string) => void): Promise<void> {
  build()
  const place = await placeFor('embedded')
  const served = startServed(place.spot)
  try {
    const { ownerCode } = await served.open
    const idle = memoryOf(served, place.spot)
    const phones: Phone[] = []
    // One address may pair so many devices in a minute: these few send for all fifty.
    for (let i = 0; i < 8; i++) phones.push(await paired(served, i, phones[0]?.cookie, ownerCode!))
    await openings(served, phones.slice(0, 3), print)
    const opened = memoryOf(served, place.spot)
    await sendings(served, phones, print)
    print(
      table(
        ['memory of the server, MB', 'idle', 'a big unit opened', 'after all'],
        [
          ['Gripbook', idle.gripbook, opened.gripbook, memoryOf(served, place.spot).gripbook],
          ['PostgreSQL, all its processes', idle.database, opened.database, memoryOf(served, place.spot).database],
        ],
      ),
    )
    await served.stop()
  } finally {
    served.kill()
    await served.gone
    await place.remove()
  }
}

async function paired(served: Served, n: number, owner: string | undefined, ownerCode: string): Promise<Phone> {
  const device = uuid(4, n)
  const made =
    owner === undefined
      ? { code: ownerCode }
      : rightBody<{ code: string }>(
          await served.ask({
            method: 'POST',
            path: '/api/codes',
            cookie: owner,
            body: { name: `Builder ${n}`, role: 'builder' },
          }),
          'a code',
        )
  const body = { code: made.code, name: 'Owner', device: { id: device, secret: sha256(device), name: `phone ${n}` } }
  const answer = await served.ask({ method: 'POST', path: '/api/pairing', body })
  const { person } = rightBody<{ person: { id: string } }>(answer, 'pairing')
  return { device, who: person.id, cookie: String(answer.headers['set-cookie']).split(';')[0]! }
}

/** A unit with every kind of entry, by three devices that hear of each other, 500 photographs among them. */
async function openings(served: Served, phones: readonly Phone[], print: (line: string) => void): Promise<void> {
  const unit = uuid(1, 77)
  const random = seeded(77)
  const types = (Object.keys(SAMPLES) as (keyof typeof SAMPLES)[]).filter(
    (type) =>
      !['undone', 'clash-settled', 'photographed', 'unit-released', 'face-released', 'step-signed'].includes(type),
  )
  const known = phones.map(({ device }) => knowledgeOf(unit, device, []))
  const made: Event[] = []
  const happening = (n: number): Happening => {
    if (n === 0) return unitTakenIn({ name: 'gearbox 77' })
    if (n % (ENTRIES / PHOTOGRAPHS) === 0)
      return photographed({ photograph: sha256(String(n)), width: 4_000, height: 3_000 })
    const type = types[Math.floor(random() * types.length)]!
    return { type, version: 1, body: SAMPLES[type](random) as Happening['body'] }
  }
  for (let n = 0; n < ENTRIES; n++) {
    const which = Math.floor(random() * phones.length)
    const given = { id: uuid(5, n), at: new Date(1.77e12 + n * 60_000).toISOString(), who: phones[which]!.who }
    const event = nextEntry(known[which]!, { ...given, ...happening(n) }, sha256)
    known.forEach((knowledge, i) => {
      known[i] = learn(knowledge, event)
    })
    made.push(event)
  }
  for (const { device, cookie } of phones) {
    const own = made.filter((event) => event.device === device)
    for (let at = 0; at < own.length; at += 1_000) {
      const body = { entries: own.slice(at, at + 1_000) }
      rightBody(await served.ask({ method: 'POST', path: '/api/entries', cookie, body }), 'entries')
    }
  }
  const { cookie } = phones[0]!
  const open = async (): Promise<number> => {
    const from = performance.now()
    rightBody(await served.ask({ method: 'GET', path: `/api/units/${unit}`, cookie }), 'the unit')
    return performance.now() - from
  }
  const first = await open()
  const again: number[] = []
  for (let i = 0; i < OPENINGS; i++) again.push(await open())
  const grown: number[] = []
  for (let i = 0; i < OPENINGS; i++) {
    const given = { id: uuid(6, i), at: new Date(1.8e12 + i).toISOString(), who: phones[0]!.who }
    const event = nextEntry(known[0]!, { ...given, ...happening(1) }, sha256)
    known[0] = learn(known[0]!, event)
    rightBody(
      await served.ask({ method: 'POST', path: '/api/entries', cookie, body: { entries: [event] } }),
      'one more',
    )
    grown.push(await open())
  }
  const folds = Array.from({ length: OPENINGS }, () => {
    const entries = JSON.parse(JSON.stringify(made)) as Event[]
    const from = performance.now()
    fold(unit, entries)
    return performance.now() - from
  })
  print(`A unit of ${ENTRIES} entries, ${PHOTOGRAPHS} photographs among them (goal: its state in under 200 ms):`)
  print('')
  print(
    table(
      ['milliseconds', 'median', 'most'],
      [
        ['its state, asked for the first time after a start', short(first), short(first)],
        ['again', short(median(again)), short(Math.max(...again))],
        ['after one more entry', short(median(grown)), short(Math.max(...grown))],
        ['the fold alone, here, of entries just parsed', short(median(folds)), short(Math.max(...folds))],
      ],
    ),
  )
  print('')
}

/** Fifty at once, each one entry at a time, as thumbs do: the next when the one before is acknowledged. */
async function sendings(served: Served, phones: readonly Phone[], print: (line: string) => void): Promise<void> {
  const times: number[] = []
  const from = performance.now()
  await Promise.all(
    Array.from({ length: DEVICES }, async (_, n) => {
      const { device, who, cookie } = phones[n % phones.length]!
      let knowledge = knowledgeOf(uuid(1, 1_000 + n), device, [])
      for (let i = 0; i < SENDINGS; i++) {
        const given = { id: uuid(7, n * 1_000 + i), at: new Date(1.77e12 + i).toISOString(), who }
        const event = nextEntry(knowledge, { ...given, ...unitTakenIn({ name: `gearbox ${n}` }) }, sha256)
        knowledge = learn(knowledge, event)
        const sent = performance.now()
        rightBody(
          await served.ask({ method: 'POST', path: '/api/entries', cookie, body: { entries: [event] } }),
          'an entry',
        )
        times.push(performance.now() - sent)
      }
    }),
  )
  const seconds = (performance.now() - from) / 1_000
  times.sort((a, b) => a - b)
  print(`${DEVICES} devices at once, ${SENDINGS} times one entry each, acknowledged when durable:`)
  print('')
  print(
    table(
      ['milliseconds to the acknowledgement', 'median', '99th percentile', 'most', 'a second'],
      [
        [
          'one entry',
          short(median(times)),
          short(times[Math.floor(times.length * 0.99)]!),
          short(times.at(-1)!),
          short(times.length / seconds),
        ],
      ],
    ),
  )
  print('')
}

function memoryOf({ pid }: Served, { dataFolder }: Spot): { gripbook: string; database: string } {
  const resident = (of: number) =>
    Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${of}/status`, 'utf8'))?.[1] ?? 0) / 1_024
  // Shared memory counts in each process that has touched it: what is private, and the shared part once.
  const own = (of: number) =>
    Number(/RssAnon:\s+(\d+)/.exec(readFileSync(`/proc/${of}/status`, 'utf8'))?.[1] ?? 0) / 1_024
  const first = Number.parseInt(readFileSync(join(dataFolder, 'postgres-17', 'postmaster.pid'), 'utf8'), 10)
  const all = [first, ...childrenOf(first)]
  const shared = Math.max(0, ...all.map((of) => resident(of) - own(of)))
  return { gripbook: short(resident(pid)), database: short(all.reduce((sum, of) => sum + own(of), shared)) }
}
