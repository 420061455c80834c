/** Pairing, people and sessions as requests. */
import { randomBytes } from 'node:crypto'
import type { FastifyInstance } from 'fastify'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { type AppOptions, buildApp } from '../app/app.ts'
import { newsOf } from '../app/news.ts'
import type { Shop } from '../app/shop.ts'
import { connect, type Database } from '../database/connect.ts'
import type { Asking } from '../entrance/entrance.ts'
import { sqlStore } from '../store/sqlStore.ts'
import { temporaryFolder } from '../testing/folders.ts'
import { newDevice, type TestEntrance, testEntrance } from '../testing/testEntrance.ts'

let database: Database
let remove: () => Promise<void>
let entered: TestEntrance
let app: FastifyInstance
beforeAll(async () => {
  const made = await temporaryFolder()
  remove = made.remove
  database = await connect({}, `${made.folder}/shop`)
})
afterAll(async () => {
  await database?.close()
  await remove?.()
})
beforeEach(async () => {
  entered = await testEntrance(database.db)
  app = await appOf({})
})
afterEach(() => app.close())

function appOf(shop: Partial<Shop>, options: Partial<AppOptions> = {}): Promise<FastifyInstance> {
  const store = sqlStore(database.db)
  const { entrance } = entered
  const given = {
    db: database.db,
    store,
    entrance,
    news: newsOf(store, () => {}),
    secure: false,
    clock: Date.now,
    random: randomBytes,
  }
  return buildApp({ ...given, ...shop } as Shop, { hosts: () => ['shop.local'], requestsPerMinute: 0, ...options })
}

const ask = (method: 'GET' | 'POST' | 'PATCH' | 'DELETE', url: string, token: string | null, payload?: object) =>
  app.inject({
    method,
    url: `/api${url}`,
    headers: { host: 'shop.local:8080', ...(token === null ? {} : { cookie: `gripbook=${token}` }) },
    ...(payload === undefined ? {} : { payload }),
  })
const pairWith = (code: string, device: Asking, token: string | null = null) =>
  ask('POST', '/pairing', token, { code, device })
const codeFor = async (whom: object) => (await ask('POST', '/codes', entered.owner.token, whom)).json()

describe('pairing', () => {
  test('a code from the owner pairs a device and signs it in by a cookie that scripts and other sites cannot use', async () => {
    const { code } = await codeFor({ name: '  Jo  ', role: 'builder' })
    const device = newDevice('Bench phone')
    const answer = await pairWith(code.toLowerCase().replaceAll('-', ' '), device)
    expect(answer.statusCode).toBe(201)
    expect(answer.json()).toMatchObject({
      person: { name: 'Jo', role: 'builder', left: null },
      device: { id: device.id, name: 'Bench phone' },
      expires: '2026-04-01T08:00:00.000Z',
    })
    expect(answer.headers['set-cookie']).toMatch(
      /^gripbook=[A-Za-z0-9_-]{43}; Max-Age=15552000; Path=\/; HttpOnly; SameSite=Strict$/,
    )
    const token = answer.cookies[0]!.value
    expect((await ask('GET', '/session', token)).json()).toMatchObject({ person: { name: 'Jo' } })
    expect((await pairWith(code, newDevice())).json()).toMatchObject({ status: 401, code: 'code-not-valid' })
  })

  test('over HTTPS the cookie is kept to this very host', async () => {
    const { code } = await codeFor({ name: 'Jo', role: 'viewer' })
    await app.close()
    app = await appOf({ secure: true })
    const answer = await pairWith(code, newDevice())
    expect(answer.headers['set-cookie']).toMatch(/^__Host-gripbook=.+; Path=\/; HttpOnly; Secure; SameSite=Strict$/)
  })

  test('a session whose cookie is overwritten by a pairing ends', async () => {
    const before = await entered.enter('builder')
    const { code } = await codeFor({ name: 'Jo', role: 'viewer' })
    expect((await pairWith(code, newDevice(), before.token)).statusCode).toBe(201)
    expect((await ask('GET', '/session', before.token)).json()).toMatchObject({ status: 401, code: 'not-signed-in' })
  })

  test('a known device with another secret is refused', async () => {
    const { asking } = await entered.enter('builder')
    const { code } = await codeFor({ name: 'Jo', role: 'viewer' })
    const answer = await pairWith(code, { ...asking, secret: '0'.repeat(64) })
    expect(answer.json()).toMatchObject({ status: 403, code: 'wrong-secret' })
  })

  test('at most twenty ids from before the pairing are taken, and the first becomes the new person’s', async () => {
    const ids = Array.from({ length: 21 }, () => newDevice().id)
    const { code } = await codeFor({ name: 'Jo', role: 'builder' })
    const pairing = (before: unknown) => ask('POST', '/pairing', null, { code, device: newDevice(), before })
    for (const wrong of [ids, ['Jo'], ids[0], null])
      expect((await pairing(wrong)).json()).toMatchObject({ status: 400, code: 'wrong-request' })
    expect((await pairing(ids.slice(1))).json()).toMatchObject({ person: { id: ids[1], name: 'Jo' } })
  })

  test('names are 1 to 80 characters that can be seen', async () => {
    const named = async (name: unknown) =>
      (await ask('POST', '/codes', entered.owner.token, { name, role: 'viewer' })).statusCode
    for (const name of ['Jo', 'Zoë Ångström', '李', '👩🏽‍🔧', 'x'.repeat(80), '🔩'.repeat(80)])
      expect(await named(name), name).toBe(201)
    for (const name of [
      '',
      '   ',
      'x'.repeat(81),
      'a\nb',
      'a\u202eb',
      'a\u0000',
      '\u001b[31m',
      '\u200b',
      '\ud800',
      7,
      null,
    ])
      expect(await named(name), JSON.stringify(name)).toBe(400)
    const { code } = await codeFor({ name: 'Jo', role: 'viewer' })
    expect((await pairWith(code, newDevice('a\u0007'))).json()).toMatchObject({
      code: 'wrong-request',
      at: 'body/device/name',
    })
  })

  test('the link carries the code after the #, by a name that other devices know, and the QR code is a drawing of that link', async () => {
    const { code, link, qr } = await codeFor({ name: 'Jo', role: 'viewer' })
    expect(link).toBe(`http://shop.local:8080/#pair=${code}`)
    expect(qr).toMatch(
      /^<svg xmlns="http:\/\/www.w3.org\/2000\/svg" viewBox="0 0 \d+ \d+"><rect [^<>]*\/><path [^<>]*\/><\/svg>$/,
    )
    await app.close()
    app = await appOf({ address: 'https://shop.local:8443' }, { hosts: () => ['shop.local', 'localhost', '[::1]'] })
    for (const [host, origin] of [
      ['localhost:8080', 'https://shop.local:8443'],
      ['[::1]:8080', 'https://shop.local:8443'],
      ['shop.local:8080', 'http://shop.local:8080'],
    ] as const) {
      const headers = { host, cookie: `gripbook=${entered.owner.token}` }
      const payload = { name: 'Jo', role: 'viewer' }
      const made = (await app.inject({ method: 'POST', url: '/api/codes', headers, payload })).json()
      expect(made.link).toBe(`${origin}/#pair=${made.code}`)
    }
  })

  test('no link is made for a host name that is not the server’s', async () => {
    const forged = await app.inject({
      method: 'POST',
      url: '/api/codes',
      headers: { host: 'elsewhere.example', cookie: `gripbook=${entered.owner.token}` },
      payload: { name: 'Jo', role: 'owner' },
    })
    expect(forged.json()).toMatchObject({ status: 421, code: 'wrong-host' })
  })

  test('an address has ten tries at a code in a minute', async () => {
    await app.close()
    app = await appOf({}, { requestsPerMinute: 1_200 })
    const tries = []
    for (let i = 0; i < 11; i++) tries.push((await pairWith('0000-0000-0000', newDevice())).statusCode)
    expect(tries).toEqual([...Array(10).fill(401), 429])
    expect((await pairWith('0000-0000-0000', newDevice())).json()).toMatchObject({ code: 'too-often' })
    expect((await ask('GET', '/session', entered.owner.token)).statusCode).toBe(200)
  })
})

describe('people and sessions', () => {
  test('what belongs to the owner is refused to everyone else', async () => {
    const { token, session } = await entered.enter('checker')
    for (const [method, url, body] of [
      ['POST', '/codes', { name: 'X', role: 'owner' }],
      ['PATCH', `/people/${session.person.id}`, { role: 'owner' }],
    ] as const) {
      expect((await ask(method, url, token, body)).json(), url).toMatchObject({ status: 403, code: 'not-allowed' })
      expect((await ask(method, url, null, body)).json(), url).toMatchObject({ status: 401, code: 'not-signed-in' })
    }
    for (const url of ['/people', '/session', '/sessions'])
      expect((await ask('GET', url, null)).json(), url).toMatchObject({ status: 401, code: 'not-signed-in' })
  })

  test('the owner changes name and role and says who has left', async () => {
    const { token, session } = await entered.enter('builder')
    const change = (body: object) => ask('PATCH', `/people/${session.person.id}`, entered.owner.token, body)
    expect((await change({ role: 'checker', name: 'Jo' })).json()).toMatchObject({ name: 'Jo', role: 'checker' })
    expect((await ask('GET', '/session', token)).json().person).toMatchObject({ name: 'Jo', role: 'checker' })
    expect((await change({ left: true })).json().left).not.toBeNull()
    expect((await ask('GET', '/session', token)).statusCode).toBe(401)
    const { people } = (await ask('GET', '/people', entered.owner.token)).json()
    expect(people.map(({ name }: { name: string }) => name)).toEqual(expect.arrayContaining(['Owner', 'Jo']))
    expect((await change({ role: 'king' })).json()).toMatchObject({ status: 400, code: 'wrong-request' })
    const last = await ask('PATCH', `/people/${entered.owner.session.person.id}`, entered.owner.token, { left: true })
    expect(last.json()).toMatchObject({ status: 409, code: 'last-owner' })
    const nobody = await ask('PATCH', `/people/${newDevice().id}`, entered.owner.token, { name: 'X' })
    expect(nobody.json()).toMatchObject({ status: 404, code: 'not-found' })
  })

  test('everyone sees and ends their own sessions, the owner all of them', async () => {
    const { token, session } = await entered.enter('builder')
    const { session: other } = await entered.enter('builder')
    const listed = async (by: string) =>
      (await ask('GET', '/sessions', by)).json().sessions.map(({ id }: { id: string }) => id)
    expect(await listed(token)).toEqual([session.id])
    expect((await listed(entered.owner.token)).length).toBe(3)
    expect((await ask('DELETE', `/sessions/${other.id}`, token)).json()).toMatchObject({
      status: 404,
      code: 'not-found',
    })
    expect((await ask('DELETE', `/sessions/${other.id}`, entered.owner.token)).statusCode).toBe(204)
    expect((await ask('DELETE', `/sessions/${session.id}`, token)).statusCode).toBe(204)
    expect((await ask('GET', '/session', token)).statusCode).toBe(401)
  })

  test('signing out ends the session and takes the cookie away', async () => {
    const { token } = await entered.enter('builder')
    const answer = await ask('DELETE', '/session', token)
    expect([answer.statusCode, answer.headers['set-cookie'], answer.body]).toEqual([
      204,
      'gripbook=; Max-Age=0; Path=/; HttpOnly; SameSite=Strict',
      '',
    ])
    expect((await ask('GET', '/session', token)).statusCode).toBe(401)
  })

  test('every route of these is in the description of the server', async () => {
    const { paths } = (await ask('GET', '/openapi.json', null)).json()
    for (const path of [
      '/pairing',
      '/codes',
      '/people',
      '/people/{person}',
      '/session',
      '/sessions',
      '/sessions/{session}',
    ])
      expect(Object.keys(paths)).toContain(`/api${path}`)
  })
})
