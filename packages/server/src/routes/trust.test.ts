import { createHash } from 'node:crypto'
import { join } from 'node:path'
import type { FastifyInstance } from 'fastify'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { buildApp } from '../app/app.ts'
import { type Authority, shopCertificates } from '../certificates/shopCertificates.ts'
import { type TestShop, testShop } from '../testing/testShop.ts'

let shop: TestShop
let authority: Authority
let app: FastifyInstance
beforeAll(async () => {
  shop = await testShop()
  const given = { folder: join(shop.folder, 'certificates'), names: [], addresses: [], now: new Date() }
  ;({ authority } = await shopCertificates(given))
  app = await buildApp({ ...shop.shop, authority }, { hosts: () => ['shop.local'], requestsPerMinute: 0 })
})
afterAll(async () => {
  await app?.close()
  await shop?.close()
})

const ask = (url: string) => app.inject({ url, headers: { host: 'shop.local:7480' } })

test('anyone reads how to trust the shop, under a policy that lets in the page’s own style and nothing else', async () => {
  const answer = await ask('/trust')
  expect([answer.statusCode, answer.headers['content-type']]).toEqual([200, 'text/html; charset=utf-8'])
  expect(answer.body).toContain('href="http://shop.local:7480"')
  const style = /<style>([\s\S]*)<\/style>/.exec(answer.body)![1]!
  const hash = createHash('sha256').update(style).digest('base64')
  expect(answer.headers['content-security-policy']).toBe(
    `default-src 'none'; style-src 'sha256-${hash}'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`,
  )
  expect(answer.headers['x-content-type-options']).toBe('nosniff')
})

test('the certificate of the authority is handed out, and never its key', async () => {
  const answer = await ask('/authority.crt')
  expect([answer.statusCode, answer.headers['content-type']]).toEqual([200, 'application/x-x509-ca-cert'])
  expect(answer.rawPayload.equals(authority.der)).toBe(true)
})

test('where there is no authority of the shop’s own there is no such page', async () => {
  for (const url of ['/trust', '/authority.crt']) {
    const answer = await shop.app.inject({ url, headers: { host: 'localhost' } })
    expect(answer.json()).toMatchObject({ status: 404, code: 'not-found' })
  }
})
