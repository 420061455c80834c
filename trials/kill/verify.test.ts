/** The trial itself can fail: each kind of loss, planted, is named. */

import { type Event, knowledgeOf, memoryStore } from '@gripbook/record'
import { expect, test } from 'vitest'
import { sha256 } from '../../packages/server/src/sha256.ts'
import { seeded } from '../../packages/server/src/testing/seeded.ts'
import { acknowledge, nextBatch, type Phone, type Truth, uuid } from './phones.ts'
import { verifyAll } from './verify.ts'

type Kept = { events: Event[]; photograph: Buffer | null }

async function verified(damage: (kept: Kept) => Kept): Promise<void> {
  const random = seeded(7)
  const unit = uuid(random)
  const phones = [1, 2].map((): Phone => {
    const knowledge = knowledgeOf(unit, uuid(random), [])
    return { waiting: [], knowledge, who: 'builder 1', cookie: '', sending: null }
  })
  const picture = Buffer.from('a picture')
  const photographs = new Map([[sha256('as it was sent'), sha256(picture)]])
  const truth: Truth = { unit, phones, made: new Map(), acknowledged: new Set(), photographs }
  const store = memoryStore(sha256)
  for (const phone of phones) {
    const batch = nextBatch(truth, phone, random)
    await store.append(batch)
    acknowledge(truth, phone, batch)
  }
  const kept = damage({ events: (await store.since(null, 1_000)).events, photograph: picture })
  await verifyAll(
    {
      after: async () => ({ entries: kept.events, position: 'end', more: false }),
      heads: () => store.heads(unit),
      photograph: async () => kept.photograph,
    },
    truth,
  )
}

test('a whole record passes', async () => {
  await verified((kept) => kept)
})

const entries = (change: (events: Event[]) => Event[]) => (kept: Kept) => ({ ...kept, events: change(kept.events) })
const PLANTED: [string, (kept: Kept) => Kept, RegExp][] = [
  ['an acknowledged entry that is gone', entries((events) => events.slice(0, -1)), /acknowledged and lost/],
  ['an entry that is there twice', entries((events) => [...events, events[0]!]), /twice/],
  [
    'an entry that was changed',
    entries(([first, ...rest]) => [{ ...first!, who: 'someone else' }, ...rest]),
    /otherwise/,
  ],
  [
    'an entry that nobody made',
    entries((events) => [...events, { ...events[0]!, id: '00000000-0000-4000-8000-000000000001' }]),
    /nobody made/,
  ],
  ['a photograph that is gone', (kept) => ({ ...kept, photograph: null }), /photograph .* lost/],
  [
    'a photograph that was changed',
    (kept) => ({ ...kept, photograph: Buffer.from('another') }),
    /photograph .* otherwise/,
  ],
]
for (const [what, damage, words] of PLANTED)
  test(`${what} fails the trial`, async () => {
    await expect(verified(damage)).rejects.toThrow(words)
  })
