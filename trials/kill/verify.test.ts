/** The trial itself can fail: each kind of loss, planted, is named. */
import { type Event, memoryStore } from '@gripbook/record'
import { expect, test } from 'vitest'
import { acknowledge, newTruth, nextBatch, seeded, sha256 } from './phones.ts'
import { verifyAll } from './verify.ts'
import type { Worker } from './worker.ts'

type Damage = (events: Event[]) => Event[]

async function verified(damage: Damage): Promise<void> {
  const random = seeded(7)
  const truth = newTruth(random, 2)
  const store = memoryStore(sha256)
  for (const phone of truth.phones) {
    const batch = nextBatch(truth, phone, random)
    await store.append(batch)
    acknowledge(truth, phone, batch)
  }
  const kept = damage((await store.since(null, 1_000)).events)
  const worker: Pick<Worker, 'ask'> = {
    async ask(order) {
      if (order.what === 'since') return { to: 0, page: { events: kept, position: 'end', more: false } }
      if (order.what === 'heads') return { to: 0, heads: await store.heads(order.unit) }
      const ids = new Set(kept.map(({ id }) => id))
      return { to: 0, count: ids.size, digest: sha256(kept.map(({ hash }) => hash).join('')) }
    },
  }
  await verifyAll(worker as Worker, truth)
}

test('a whole record passes', async () => {
  await verified((events) => events)
})

const PLANTED: [string, Damage, RegExp][] = [
  ['an acknowledged entry that is gone', (events) => events.slice(0, -1), /acknowledged and lost/],
  ['an entry that is there twice', (events) => [...events, events[0]!], /twice/],
  ['an entry that was changed', ([first, ...rest]) => [{ ...first!, who: 'someone else' }, ...rest], /otherwise/],
  [
    'an entry that nobody made',
    (events) => [...events, { ...events[0]!, id: '00000000-0000-4000-8000-000000000001' }],
    /nobody made/,
  ],
]
for (const [what, damage, words] of PLANTED)
  test(`${what} fails the trial`, async () => {
    await expect(verified(damage)).rejects.toThrow(words)
  })
