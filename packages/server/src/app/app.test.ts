import { afterAll, beforeAll, expect, test } from 'vitest'
import { type TestShop, testShop } from '../testing/testShop.ts'
import { buildApp } from './app.ts'

let shop: TestShop
beforeAll(async () => {
  shop = await testShop()
})
afterAll(() => shop.close())

const hosts = () => ['localhost']

test('the server describes itself: every route with its summary, in OpenAPI 3.1', async () => {
  const { openapi, paths } = (
    await shop.app.inject({ url: '/api/openapi.json', headers: { host: 'localhost' } })
  ).json()
  expect(openapi).toBe('3.1.0')
  const described = Object.entries(paths as Record<string, Record<string, { summary?: string }>>).flatMap(
    ([path, methods]) =>
      Object.entries(methods).map(([method, { summary }]) => [`${method} ${path}`, summary] as const),
  )
  for (const [route, summary] of described) expect(summary, route).toMatch(/\w/)
  const routes = described.map(([route]) => route)
  for (const route of ['post /api/entries', 'get /api/live', 'post /api/pairing', 'get /api/units/{unit}'])
    expect(routes).toContain(route)
})

test('a route that does not say who may call it keeps the server from being built', async () => {
  const app = await buildApp(shop.shop, { hosts, requestsPerMinute: 0 })
  expect(() => app.get('/api/forgotten', async () => 'open to all')).toThrow('does not say who may call it')
  await app.close()
})

test('every route but those for strangers refuses who is not signed in', async () => {
  const open = ['POST /api/pairing', 'GET /api/health', 'GET /api/metrics', 'GET /api/openapi.json', 'GET /trust']
  const { paths } = (await shop.app.inject({ url: '/api/openapi.json', headers: { host: 'localhost' } })).json()
  let asked = 0
  for (const [path, methods] of Object.entries(paths as Record<string, object>))
    for (const method of Object.keys(methods).map((name) => name.toUpperCase())) {
      if (open.includes(`${method} ${path}`)) continue
      const url = path.replace(/\{\w+\}/g, 'x')
      const answer = await shop.app.inject({ method: method as 'GET', url, headers: { host: 'localhost' } })
      expect([`${method} ${path}`, answer.statusCode]).toEqual([`${method} ${path}`, 401])
      asked++
    }
  expect(asked).toBeGreaterThan(10)
})

test('a name that the server does not have, and a page of another site, are turned away', async () => {
  const ask = (headers: Record<string, string>, method: 'GET' | 'POST' = 'POST') =>
    shop.app.inject({
      method,
      url: '/api/entries',
      headers: { host: 'localhost', cookie: shop.owner.cookie, ...headers },
      payload: { entries: [{}] },
    })
  for (const host of ['elsewhere.example', 'localhost.elsewhere.example', '127.0.0.1.elsewhere.example:7480'])
    expect((await ask({ host })).statusCode, host).toBe(421)
  for (const headers of [
    { origin: 'https://elsewhere.example' },
    { origin: 'null' },
    { 'sec-fetch-site': 'cross-site' },
    { 'sec-fetch-site': 'same-site' },
  ])
    expect((await ask(headers as Record<string, string>)).statusCode, JSON.stringify(headers)).toBe(403)
  expect((await ask({ origin: 'http://localhost', 'sec-fetch-site': 'same-origin' })).statusCode).toBe(422)
})

test('answers carry the headers that keep a browser strict', async () => {
  const { headers } = await shop.app.inject({ url: '/api/health', headers: { host: 'localhost' } })
  expect(headers['content-security-policy']).toContain("default-src 'none'")
  expect(headers['content-security-policy']).not.toContain('unsafe-inline')
  expect(headers).toMatchObject({
    'x-content-type-options': 'nosniff',
    'referrer-policy': 'no-referrer',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
  })
  expect(headers['x-powered-by']).toBeUndefined()
  expect(headers['strict-transport-security'], 'not on plain HTTP').toBeUndefined()
})

test('too many requests of one address are slowed down, and told so', async () => {
  const app = await buildApp(shop.shop, { hosts, requestsPerMinute: 5 })
  const ask = (remoteAddress: string) =>
    app.inject({ url: '/api/health', headers: { host: 'localhost' }, remoteAddress })
  const answers = []
  for (let i = 0; i < 7; i++) answers.push(await ask('192.168.7.7'))
  expect(answers.map(({ statusCode }) => statusCode)).toEqual([200, 200, 200, 200, 200, 429, 429])
  expect(answers.at(-1)!.json().code).toBe('too-often')
  expect(answers.at(-1)!.headers['retry-after']).toBeDefined()
  expect((await ask('192.168.7.8')).statusCode, 'another one is not').toBe(200)
  await app.close()
})

test('figures are for the owner and for this machine', async () => {
  const ask = (remoteAddress: string, cookie = '') =>
    shop.app.inject({ url: '/api/metrics', remoteAddress, headers: { host: 'localhost', cookie } })
  expect((await ask('192.168.7.7')).statusCode).toBe(403)
  expect((await ask('192.168.7.7', (await shop.signIn('builder')).cookie)).statusCode).toBe(403)
  const answer = await ask('192.168.7.7', shop.owner.cookie)
  expect(answer.headers['content-type']).toContain('text/plain')
  expect(answer.body).toMatch(/^gripbook_request_seconds_count\{method="GET",route="\/api\/metrics",status="403"\} 2$/m)
  expect((await ask('127.0.0.1')).statusCode).toBe(200)
})

test('a failure says nothing of the inside, and the log has its number', async () => {
  const lines: string[] = []
  const broken = {
    ...shop.shop,
    store: { ...shop.store, heads: () => Promise.reject(new Error('select secret from record_entry')) },
  }
  const app = await buildApp(broken, {
    hosts,
    requestsPerMinute: 0,
    logger: { level: 'error', stream: { write: (line: string) => lines.push(line) } } as never,
  })
  const { cookie } = shop.owner
  const answer = await app.inject({
    url: '/api/units/00000000-0000-4000-8000-000000000001/heads',
    headers: { host: 'localhost', cookie },
  })
  expect(answer.statusCode).toBe(500)
  expect(answer.body).not.toContain('secret')
  const logged = lines.map((line) => JSON.parse(line) as { reqId: string; err: { message: string } })
  expect(logged.find(({ reqId }) => reqId === answer.json().number)?.err.message).toContain('secret')
  expect(lines.join(''), 'no cookie stands in the log').not.toContain(cookie.split('=')[1])
  await app.close()
})
