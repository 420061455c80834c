/** A shop with something in it: units by several devices, every kind of entry, photographs that came and one that did not. */
import { photographed } from '@gripbook/record'
import sharp from 'sharp'
import { SAMPLES } from '../../../record/src/testing/samples.ts'
import { seeded } from '../../../record/src/unitFile/testing/random.ts'
import { type Chain, chainOf, sha256 } from './chains.ts'
import type { SignedIn, TestShop } from './testShop.ts'

/** Photographs are spoken of on purpose, below. */
const NOT_AT_RANDOM = ['undone', 'clash-settled', 'photographed', 'face-photographed']
const VOUCHING = ['unit-released', 'face-released', 'step-signed']

/** Of the units the first speaks of the first photograph and of the `absent` one. */
export type Full = { units: string[]; photographs: string[]; absent: string; people: SignedIn[]; chains: Chain[] }

/** `each`: entries of every device about every unit. */
export async function fill(shop: TestShop, units = 2, each = 40, seed = 2026): Promise<Full> {
  const people = [shop.owner, await shop.signIn('builder'), await shop.signIn('checker')]
  const random = seeded(seed)
  const photographs: string[] = []
  for (const background of ['#975', '#579']) {
    const bytes = await sharp({ create: { width: 90, height: 60, channels: 3, background } })
      .jpeg()
      .toBuffer()
    photographs.push(await sendPhotograph(shop, people[1]!, bytes))
  }
  const absent = sha256('never sent')
  const all = Object.keys(SAMPLES) as (keyof typeof SAMPLES)[]
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
      const may = all.filter(
        (type) => !NOT_AT_RANDOM.includes(type) && (person !== people[1] || !VOUCHING.includes(type)),
      )
      const entries = Array.from({ length: each }, () => {
        const type = may[Math.floor(random() * may.length)]!
        return chain.next({ type, version: 1, body: plain(SAMPLES[type](random)) })
      })
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

function plain(body: object): { [name: string]: never } {
  return JSON.parse(JSON.stringify(body))
}
