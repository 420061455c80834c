import { expect, test } from 'vitest'
import { memoryStore } from './memoryStore.ts'
import { sha256OfText } from './sha256.ts'
import { storeSuite } from './storeSuite.ts'

for (const { title, run } of storeSuite(async () => memoryStore(sha256OfText))) test(`memory: ${title}`, run)

test('a changed answer changes nothing in the store', async () => {
  const store = memoryStore(sha256OfText)
  const page = await store.since(null, 5)
  page.events.push({} as never)
  expect((await store.since(null, 5)).events).toEqual([])
})
