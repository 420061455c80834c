import { randomUUID } from 'node:crypto'
import { type Event, gateOverridden, stepSigned, unitReleased } from '@gripbook/record'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { sha256 } from '../sha256.ts'
import { chainOf } from '../testing/chains.ts'
import { type TestShop, testShop } from '../testing/testShop.ts'

let shop: TestShop
beforeAll(async () => {
  shop = await testShop()
})
afterAll(() => shop.close())

const kept = async (unit: string): Promise<Event[]> => shop.store.ofUnit(unit)

test('[RE4] a batch is kept whole, and sent again it is known', async () => {
  const builder = await shop.signIn('builder')
  const chain = chainOf(builder)
  const entries = chain.some(5)
  const first = await builder.ask('POST', '/api/entries', { entries })
  expect([first.statusCode, first.json()]).toEqual([200, { added: 5, known: 0 }])
  const again = await builder.ask('POST', '/api/entries', { entries: [...entries, chain.next()] })
  expect(again.json()).toEqual({ added: 1, known: 5 })
  expect((await kept(chain.unit)).length).toBe(6)
})

test('a gap is refused with the number to send from, and nothing is kept', async () => {
  const builder = await shop.signIn('builder')
  const chain = chainOf(builder)
  const entries = chain.some(4)
  const answer = await builder.ask('POST', '/api/entries', { entries: entries.slice(2) })
  expect(answer.statusCode).toBe(409)
  expect(answer.headers['content-type']).toContain('application/problem+json')
  expect(answer.json()).toMatchObject({
    code: 'refused-entries',
    refusals: [{ index: 0, id: entries[2]!.id, code: 'missing-before', expected: 1 }],
  })
  expect(await kept(chain.unit)).toEqual([])
})

test('an entry whose body is not what its type says is refused with the path, and so is one that is none', async () => {
  const builder = await shop.signIn('builder')
  const chain = chainOf(builder)
  const wrongBody = chain.next({ type: 'note-written', version: 1, body: { text: 7 } })
  const answer = await builder.ask('POST', '/api/entries', { entries: [wrongBody] })
  expect([answer.statusCode, answer.json()]).toMatchObject([422, { code: 'bad-entry', index: 0, path: 'text' }])
  const good = chainOf(builder).next()
  const { seq: _, ...cut } = good
  for (const [entry, path] of [
    [cut, 'seq'],
    [{ ...good, more: 1 }, ''],
    [{ ...good, device: 7 }, 'device'],
  ]) {
    const refused = await builder.ask('POST', '/api/entries', { entries: [entry] })
    expect([refused.statusCode, refused.json()]).toMatchObject([422, { code: 'bad-entry', index: 0, path }])
  }
  expect(await kept(chain.unit)).toEqual([])
})

test('entries of a type that this version does not know are kept: a newer device made them', async () => {
  const builder = await shop.signIn('builder')
  const chain = chainOf(builder)
  const entries = [chain.next({ type: 'thread-repaired', version: 3, body: { insert: 'M6' } })]
  expect((await builder.ask('POST', '/api/entries', { entries })).json()).toEqual({ added: 1, known: 0 })
})

test('nobody sends entries of another device, or for a person who is not paired on this one', async () => {
  const [one, other] = [await shop.signIn('builder'), await shop.signIn('builder')]
  for (const forged of [
    { device: other.device, person: one.person },
    { device: one.device, person: other.person },
    { device: one.device, person: 'nobody' },
  ]) {
    const chain = chainOf(forged)
    const answer = await one.ask('POST', '/api/entries', { entries: chain.some(2) })
    expect([answer.statusCode, answer.json().code]).toEqual([403, 'other-device'])
    expect(await kept(chain.unit)).toEqual([])
  }
})

test('a viewer writes nothing, a builder does not sign as checker or release', async () => {
  const viewer = await shop.signIn('viewer')
  const looked = await viewer.ask('POST', '/api/entries', { entries: chainOf(viewer).some(1) })
  expect([looked.statusCode, looked.json().code]).toEqual([403, 'not-allowed'])
  const builder = await shop.signIn('builder')
  const checker = await shop.signIn('checker')
  const asChecker = stepSigned({ step: 'final pass', as: 'checker' })
  const release = unitReleased({ heads: {}, record: sha256('') })
  for (const happening of [asChecker, release]) {
    const refused = await builder.ask('POST', '/api/entries', { entries: [chainOf(builder).next(happening)] })
    expect([refused.statusCode, refused.json().code]).toEqual([403, 'not-allowed'])
    const taken = await checker.ask('POST', '/api/entries', { entries: [chainOf(checker).next(happening)] })
    expect(taken.json()).toEqual({ added: 1, known: 0 })
  }
  const asBuilder = chainOf(builder).next(stepSigned({ step: 'final pass', as: 'builder' }))
  expect((await builder.ask('POST', '/api/entries', { entries: [asBuilder] })).statusCode).toBe(200)
  const override = chainOf(builder).next(gateOverridden({ gate: 'hand-start', reason: 'one at a time' }))
  expect((await builder.ask('POST', '/api/entries', { entries: [override] })).statusCode).toBe(200)
})

test('reading goes on from a position, page by page; a position of another record is refused', async () => {
  const builder = await shop.signIn('builder')
  const end = await shop.store.end()
  const entries = chainOf(builder).some(7)
  await builder.ask('POST', '/api/entries', { entries })
  const read: unknown[] = []
  for (let position = end, more = true; more; ) {
    const query = position === null ? '' : `&after=${position}`
    const page = (await builder.ask('GET', `/api/entries?limit=3${query}`)).json()
    read.push(...page.entries)
    position = page.position
    more = page.more
  }
  expect(read).toEqual(entries)
  const foreign = await builder.ask('GET', `/api/entries?after=${randomUUID()}.3`)
  expect([foreign.statusCode, foreign.json().code]).toEqual([410, 'unknown-position'])
})

test('what is asked wrongly is told with its place', async () => {
  const builder = await shop.signIn('builder')
  for (const [url, body] of [
    ['/api/entries', { entries: [] }],
    ['/api/entries', { entries: 'all' }],
    ['/api/entries', { entries: [1] }],
    ['/api/entries', {}],
    ['/api/entries', { entries: [{}], more: 1 }],
  ] as const) {
    const answer = await builder.ask('POST', url, body)
    expect([answer.statusCode, answer.json().code]).toEqual([400, 'wrong-request'])
    expect(answer.json().at).toMatch(/^body/)
  }
  for (const query of ['limit=0', 'limit=1e9', 'limit=x', 'more=1'])
    expect((await builder.ask('GET', `/api/entries?${query}`)).statusCode, query).toBe(400)
})
