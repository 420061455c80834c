import { request } from 'node:http'
import { connect } from 'node:net'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { temporaryFolder } from '../testing/folders.ts'
import { type Authority, shopCertificates } from './shopCertificates.ts'
import { TRUST_POLICY, trustPage } from './trustPage.ts'
import { type TrustServer, trustServer } from './trustServer.ts'

let authority: Authority
let server: TrustServer
let port: number
let remove: () => Promise<void>
beforeAll(async () => {
  const made = await temporaryFolder()
  remove = made.remove
  ;({ authority } = await shopCertificates({ folder: made.folder, names: [], addresses: [], now: new Date() }))
  server = trustServer(authority, 7480)
  port = await server.listen(0)
})
afterAll(async () => {
  await server.close()
  await remove()
})

type Answer = { status: number; headers: Record<string, unknown>; body: Buffer }

function ask(path: string, { method = 'GET', host = 'bench.local' } = {}): Promise<Answer> {
  return new Promise((done, fail) => {
    const sent = request({ host: '127.0.0.1', port, path, method, headers: { host } }, (response) => {
      const parts: Buffer[] = []
      response.on('data', (part) => parts.push(part))
      response.on('end', () =>
        done({ status: response.statusCode!, headers: response.headers, body: Buffer.concat(parts) }),
      )
    })
    sent.on('error', fail)
    sent.end()
  })
}

test('the page tells the fingerprint in lines to compare, links the certificate and the shop, and needs no script', async () => {
  const { status, headers, body } = await ask('/')
  const page = body.toString()
  expect((await ask('/trust')).body.equals(body)).toBe(true)
  expect([status, headers['content-type']]).toEqual([200, 'text/html; charset=utf-8'])
  const lines = [...page.matchAll(/<span>([^<]+)<\/span>/g)].map((found) => found[1])
  expect(lines.map((line) => line!.split(' ').length)).toEqual([8, 8, 8, 8])
  expect(lines.join(' ').replaceAll(' ', ':')).toBe(authority.fingerprint)
  expect(page).toContain('href="/authority.crt"')
  expect(page).toContain('<a href="https://bench.local:7480">')
  for (const system of ['Android', 'iPhone and iPad', 'Windows', 'macOS', 'Linux'])
    expect(page.split(system).length, system).toBeGreaterThanOrEqual(3)
  expect(page).not.toMatch(/<script|\son\w+=|\sstyle=|src=|@import|url\(/)
  expect(headers['content-security-policy']).toBe(TRUST_POLICY)
})

test('the certificate comes as browsers take one in, and is the one that signs', async () => {
  const { status, headers, body } = await ask('/authority.crt')
  expect([status, headers['content-type']]).toEqual([200, 'application/x-x509-ca-cert'])
  expect(body.equals(authority.der)).toBe(true)
})

test('nothing but these two is served, and nothing can be written', async () => {
  for (const path of [
    '/api/session',
    '/authority.pem',
    '/server.pem',
    '/%2e%2e/authority.pem',
    '//',
    '/authority.crt/x',
    '/trust/',
  ])
    expect([path, (await ask(path)).status]).toEqual([path, 404])
  for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS']) {
    const { status, headers } = await ask('/', { method })
    expect([status, headers.allow]).toEqual([405, 'GET, HEAD'])
  }
  const head = await ask('/authority.crt', { method: 'HEAD' })
  expect([head.status, head.headers['content-length'], head.body.length]).toEqual([200, `${authority.der.length}`, 0])
})

test('a host name that someone made up, or that the authority cannot stand for, does not get into the page', async () => {
  for (const host of [
    '"><script>alert(1)</script>',
    'a b',
    "x'y",
    '[::1',
    'bench.local:7480:x',
    'x'.repeat(300),
    'shop.example',
    '192.0.2.2',
  ]) {
    const page = (await ask('/', { host })).body.toString()
    expect(page).toContain('the address of the shop that the terminal names')
    expect(page).not.toContain('alert')
  }
  expect((await ask('/', { host: '[fd00::20]:7481' })).body.toString()).toContain('href="https://[fd00::20]:7480"')
  expect(trustPage({ fingerprint: '<b>', address: 'https://"><i>' })).not.toMatch(/<b><\/span>|"><i>/)
})

test('a port that is taken is told by the system’s own code, and a server that is closed gives the port back', async () => {
  await expect(trustServer(authority).listen(port)).rejects.toMatchObject({ code: 'EADDRINUSE' })
  const other = trustServer(authority)
  const its = await other.listen(0)
  const idle = connect(its, '127.0.0.1')
  idle.on('error', () => {})
  await new Promise((done) => idle.once('connect', done))
  await other.close()
  const third = trustServer(authority)
  expect(await third.listen(its)).toBe(its)
  await third.close()
})
