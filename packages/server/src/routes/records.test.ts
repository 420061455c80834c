import { noteWritten, recordHash, unitReleased } from '@gripbook/record'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { shopKey } from '../archives/signature.ts'
import { knownWords } from '../records/knownRecord.ts'
import type { ForPaper } from '../records/paper.ts'
import { checkPaper } from '../seals/paperSeal.ts'
import { sha256 } from '../sha256.ts'
import { chainOf } from '../testing/chains.ts'
import { type Full, fill } from '../testing/fullShop.ts'
import { type TestShop, testShop } from '../testing/testShop.ts'

let shop: TestShop
let full: Full
let given: ForPaper | undefined
beforeAll(async () => {
  shop = await testShop()
  shop.shop.address = 'https://shop.local:7480'
  shop.shop.paper = async (content) => {
    given = content
    return Buffer.from('%PDF-1.7\nnot much of one\n%%EOF\n')
  }
  full = await fill(shop)
})
afterAll(() => shop.close())

const NOBODY = '00000000-0000-4000-8000-000000000000'

test('the build record of a unit is made from all of its entries and photographs, and sealed by the shop', async () => {
  const [unit] = full.units as [string]
  const viewer = await shop.signIn('viewer')
  const answer = await viewer.ask('GET', `/api/units/${unit}/record`)
  expect([answer.statusCode, answer.headers['content-type']]).toEqual([200, 'application/pdf'])
  const events = await shop.store.ofUnit(unit)
  expect(checkPaper(answer.rawPayload)).toEqual({
    unit,
    entries: events.length,
    record: recordHash(events, sha256),
    key: await shopKey(shop.shop.db),
    faults: [],
  })
  expect(given).toMatchObject({ unit, events, shop: { address: 'https://shop.local:7480' } })
  expect(given!.shop.key).toBe(await shopKey(shop.shop.db))
  expect([...given!.photographs.keys()]).toEqual([full.photographs[0]])
  expect(Object.values(given!.people)).toContain('Owner')
})

test('an unknown unit, and a server that prints nothing, have no build record', async () => {
  expect((await shop.owner.ask('GET', `/api/units/${NOBODY}/record`)).statusCode).toBe(404)
  const { paper } = shop.shop
  delete shop.shop.paper
  expect((await shop.owner.ask('GET', `/api/units/${full.units[0]}/record`)).statusCode).toBe(404)
  if (paper !== undefined) shop.shop.paper = paper
  const stranger = await shop.app.inject({
    method: 'GET',
    url: `/api/units/${full.units[0]}/record`,
    headers: { host: 'localhost' },
  })
  expect(stranger.statusCode).toBe(401)
})

test('the address of the QR code says whether the hash is of the present record, of an earlier one, or of none', async () => {
  const chain = chainOf(shop.owner)
  const first = chain.some(5)
  const released = chain.next(unitReleased({ heads: { [shop.owner.device]: 5 }, record: recordHash(first, sha256) }))
  await shop.owner.ask('POST', '/api/entries', { entries: [...first, released] })
  const ask = async (hash: string, accept = 'application/json') =>
    shop.owner.ask('GET', `/api/units/${chain.unit}/record/${hash}`, undefined, { accept })
  const whole = recordHash([...first, released], sha256)
  expect((await ask(whole)).json()).toEqual({ is: 'present', entries: 6, released: true })
  expect((await ask(recordHash(first, sha256))).json()).toEqual({ is: 'earlier', entries: 5, since: 1, released: true })
  expect((await ask(recordHash(first.slice(0, 3), sha256))).json()).toEqual({
    is: 'earlier',
    entries: 3,
    since: 3,
    released: false,
  })
  expect((await ask('0'.repeat(64))).json()).toEqual({ is: 'unknown' })
  await shop.owner.ask('POST', '/api/entries', { entries: [chain.next(noteWritten({ text: 'asked for the oil' }))] })
  expect((await ask(whole)).json()).toEqual({ is: 'earlier', entries: 6, since: 1, released: true })

  const inWords = await ask(whole, 'text/html,application/xhtml+xml')
  expect([inWords.headers['content-type'], inWords.body]).toEqual([
    'text/plain; charset=utf-8',
    `${knownWords({ is: 'earlier', entries: 6, since: 1, released: true })}\n`,
  ])
  expect((await ask('0'.repeat(64), 'text/html')).body).toMatch(/^NOT THIS SHOP’S RECORD/)
  expect((await ask('none')).statusCode).toBe(400)
  expect((await shop.owner.ask('GET', `/api/units/${NOBODY}/record/${whole}`)).statusCode).toBe(404)
})
