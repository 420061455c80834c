/** The server as a shop runs it: a process that is started, spoken to, stopped and started again. */
import { randomUUID } from 'node:crypto'
import { chmod, mkdtemp, rm } from 'node:fs/promises'
import { request as https } from 'node:https'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { builtPage } from './builtPage.ts'
import { main } from './main.ts'
import { processWorld } from './processWorld.ts'
import { pairedDevice, run, type ServedShop, serve } from './testing/served.ts'

let folder = ''
const shops: ServedShop[] = []
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'gb-serve-'))
  await chmod(folder, 0o711)
})
afterAll(async () => {
  await Promise.all(shops.map((shop) => shop.stop()))
  await rm(folder, { recursive: true, force: true })
})

async function started(args: string[]): Promise<ServedShop> {
  const shop = await serve(['--data', join(folder, 'shop'), ...args])
  shops.push(shop)
  return shop
}

test('the first start offers the owner a code, what was kept is there after a stop, and then there is none', async () => {
  const first = await started([])
  expect(first.url).toMatch(/^http:\/\/localhost:\d+$/)
  const page = await fetch(first.url, { headers: { accept: 'text/html' } })
  const built = (await builtPage()) !== null
  expect([
    page.status,
    first.said.includes('The page is not built'),
    first.said.includes(`/#pair=${first.code}\n`),
  ]).toEqual(built ? [200, false, true] : [404, true, false])
  const device = await pairedDevice(first, first.code!, randomUUID())
  expect(await device.send(4)).toBe(200)
  expect(await first.stop()).toBe(0)
  await expect(fetch(`${first.url}/api/health`)).rejects.toThrow()

  const second = await started([])
  expect(second.code).toBeUndefined()
  const { cookie } = device
  const session = await fetch(`${second.url}/api/session`, { headers: { cookie } })
  expect([session.status, ((await session.json()) as { person: { name: string } }).person.name]).toEqual([200, 'Owner'])
  const { entries } = (await (await fetch(`${second.url}/api/entries`, { headers: { cookie } })).json()) as {
    entries: []
  }
  expect(entries.length).toBe(4)
  expect(await second.stop()).toBe(0)
})

test('with --json one line says where it serves and how the owner comes in, and nothing else is printed', async () => {
  let out = ''
  const status = await main(['serve', '--data', join(folder, 'json'), '--port', '0', '--log', 'silent', '--json'], {
    ...processWorld(process),
    env: {},
    out: (text) => {
      out += text
    },
    stopAsked: () => Promise.resolve(),
  })
  const page = (await builtPage()) !== null
  expect([status, out.trimEnd().split('\n').length]).toEqual([0, 1])
  const { ownerCode, ...said } = JSON.parse(out)
  expect(ownerCode).toMatch(/^[0-9A-Z]{4}-[0-9A-Z]{4}-[0-9A-Z]{4}$/)
  expect(said).toEqual({
    gripbook: 'serve/1',
    addresses: [expect.stringMatching(/^http:\/\/localhost:\d+$/)],
    where: expect.any(String),
    trust: null,
    page,
    link: page ? `${said.addresses[0]}/#pair=${ownerCode}` : null,
  })
})

test('for the shop’s network it speaks HTTPS with a certificate of the shop’s own authority, which a plain page hands out', async () => {
  const shop = await started(['--shop', '--name', 'bench.local'])
  const { said } = shop
  const port = Number(/serves at https:\/\/\S+:(\d+)/.exec(said)![1])
  const page = /open (http:\/\/\S+) on it/.exec(said)![1]!
  const fingerprint = said
    .match(/^ {2}([0-9A-F]{2} ){15}[0-9A-F]{2}$/gm)!
    .join(' ')
    .replace(/\s+/g, ':')
    .replace(/^:/, '')
  const handed = page.replace(/\/\/[^:/]+/, '//127.0.0.1')
  expect((await (await fetch(handed)).text()).replace(/\s/g, '')).toContain(fingerprint.replaceAll(':', '').slice(0, 4))
  const ca = Buffer.from(await (await fetch(`${handed.replace(/\/$/, '')}/authority.crt`)).arrayBuffer())
  const pem = ca.toString().startsWith('-----')
    ? ca
    : `-----BEGIN CERTIFICATE-----\n${ca.toString('base64')}\n-----END CERTIFICATE-----`
  const ask = (name: string) =>
    new Promise<{ status: number; fingerprint: string }>((done, failed) => {
      const options = {
        host: '127.0.0.1',
        port,
        path: '/api/health',
        ca: pem,
        servername: name,
        headers: { host: name },
      }
      https(options, (answer) => {
        const { issuerCertificate } = (answer.socket as import('node:tls').TLSSocket).getPeerCertificate(true)
        answer
          .resume()
          .on('end', () => done({ status: answer.statusCode!, fingerprint: issuerCertificate.fingerprint256 }))
      })
        .on('error', failed)
        .end()
    })
  expect(await ask('bench.local')).toEqual({ status: 200, fingerprint })
  await expect(ask('elsewhere.example')).rejects.toThrow(/altnames/i)
  expect(await shop.stop()).toBe(0)
})

test('what cannot be is told in words, with status 2', async () => {
  for (const [args, words] of [
    [['--port', 'x'], /whole number/],
    [['--prot', '1'], /Did you mean --port/],
    [['--certificate', 'a.pem'], /go together/],
    [['--log', 'loud'], /is one of/],
    [['more'], /one word too many/],
  ] as [string[], RegExp][]) {
    const { status, err } = await run(['serve', ...args])
    expect([args, status]).toEqual([args, 2])
    expect(err).toMatch(words)
  }
  const other = await started([])
  const taken = await run(['serve', '--data', join(folder, 'shop'), '--port', new URL(other.url).port])
  expect([taken.status, taken.err]).toEqual([2, expect.stringContaining('listens on this port already')])
  await other.stop()
})
