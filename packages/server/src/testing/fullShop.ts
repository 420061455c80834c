/** A shop with something in it: units by several devices, every kind of entry, photographs that came and one that did not. */
import {
  faceDescribed,
  type Happening,
  holeMarked,
  noteWritten,
  photographed,
  readingTaken,
  unitTakenIn,
} from '@gripbook/record'
import sharp from 'sharp'
import { sha256 } from '../sha256.ts'
import { type Chain, chainOf } from './chains.ts'
import { seeded } from './seeded.ts'
import type { SignedIn, TestShop } from './testShop.ts'

/** What happens next; `vouches`: whether by someone who may sign and release. */
export type Happens = (random: () => number, vouches: boolean) => Happening

/** A few kinds of entry that meet each other in the same places. */
const HAPPENS: Happens = (random) => {
  const hole = String(1 + Math.floor(random() * 4))
  const value = 30 + Math.floor(random() * 5)
  const all = [
    () => unitTakenIn({ name: `gearbox ${hole}`, complaint: 'slips when warm' }),
    () => faceDescribed({ face: 'pan', torque: 8 + Math.floor(random() * 3) }),
    () => holeMarked({ face: 'pan', hole, mark: [value, value], thread: 'M6', threadDepth: 14 }),
    () =>
      readingTaken({
        of: { face: 'pan', hole, quantity: 'grip' },
        value: { value, plusMinus: 0.1 },
        instrument: { name: 'depth gauge' },
      }),
    () => noteWritten({ text: `hole ${hole} has paint on its thread` }),
  ]
  return all[Math.floor(random() * all.length)]!()
}

/** Of the units the first speaks of the first photograph and of the `absent` one. */
export type Full = { units: string[]; photographs: string[]; absent: string; people: SignedIn[]; chains: Chain[] }

/** `each`: entries of every device about every unit. */
export async function fill(shop: TestShop, units = 2, each = 40, happens = HAPPENS): Promise<Full> {
  const people = [shop.owner, await shop.signIn('builder'), await shop.signIn('checker')]
  const random = seeded(2026)
  const photographs: string[] = []
  for (const background of ['#975', '#579']) {
    const bytes = await sharp({ create: { width: 90, height: 60, channels: 3, background } })
      .jpeg()
      .toBuffer()
    photographs.push(await sendPhotograph(shop, people[1]!, bytes))
  }
  const absent = sha256('never sent')
  const chains: Chain[] = []
  const names: string[] = []
  for (let n = 0; n < units; n++) {
    const first = chainOf(people[0]!)
    names.push(first.unit)
    const pictures = [photographs[n % 2]!, ...(n === 0 ? [absent] : [])].map((photograph) =>
      first.next(photographed({ photograph, width: 90, height: 60 })),
    )
    await append(people[0]!, pictures)
    for (const person of people) {
      const chain = person === people[0] ? first : chainOf(person, first.unit)
      const entries = Array.from({ length: each }, () => chain.next(happens(random, person !== people[1])))
      await append(person, entries)
      chains.push(chain)
    }
  }
  return { units: names, photographs, absent, people, chains }
}

/** Sends a whole photograph in one piece; gives its name. */
export async function sendPhotograph({ app }: TestShop, { cookie }: SignedIn, bytes: Buffer): Promise<string> {
  const photograph = sha256(bytes)
  const upload = { 'upload-offset': '0', 'upload-length': String(bytes.length), 'upload-complete': '?1' }
  const answer = await app.inject({
    method: 'PATCH',
    url: `/api/photographs/${photograph}/upload`,
    headers: { host: 'localhost', cookie, 'content-type': 'application/octet-stream', ...upload },
    payload: bytes,
  })
  if (answer.statusCode !== 200) throw new Error(answer.body)
  return photograph
}

async function append(person: SignedIn, entries: object[]): Promise<void> {
  const answer = await person.ask('POST', '/api/entries', { entries })
  if (answer.statusCode !== 200) throw new Error(answer.body)
}
