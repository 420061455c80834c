/** The server as a shop runs it: a process that is started, spoken to, stopped and started again. */
import { type ChildProcess, spawn } from 'node:child_process'
import { randomUUID } from 'node:crypto'
import { chmod, mkdtemp, rm } from 'node:fs/promises'
import { request as https } from 'node:https'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, expect, test } from 'vitest'

const ROOT = fileURLToPath(new URL('../../..', import.meta.url))
let folder = ''
const children: ChildProcess[] = []
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'gb-serve-'))
  await chmod(folder, 0o711)
})
afterAll(async () => {
  for (const child of children) if (child.exitCode === null) child.kill('SIGTERM')
  await Promise.all(
    children.map((child) => new Promise((done) => (child.exitCode === null ? child.once('exit', done) : done(0)))),
  )
  await rm(folder, { recursive: true, force: true })
})

async function started(args: string[]) {
  const main = 'packages/cli/src/testing/runMain.ts'
  const child = spawn(
    process.execPath,
    [
      '--conditions=development',
      '--import',
      'tsx',
      main,
      'serve',
      '--data',
      join(folder, 'shop'),
      '--port',
      '0',
      '--log',
      'warn',
      ...args,
    ],
    { cwd: ROOT, env: { ...process.env, GRIPBOOK_DATABASE_URL: '' }, stdio: ['ignore', 'pipe', 'pipe'] },
  )
  children.push(child)
  let said = ''
  child.stderr.setEncoding('utf8').on('data', (text) => {
    said += text
  })
  await new Promise<void>((done, failed) => {
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      said += text
      if (/serves at[\s\S]*\n\n$/.test(said)) done()
    })
    child.once('exit', (code) => failed(new Error(`ended with ${code}: ${said}`)))
  })
  return {
    said: () => said,
    url: /serves at (\S+)/.exec(said)![1]!,
    code: /with the code {2}(\S+)/.exec(said)?.[1],
    async stop() {
      child.kill('SIGTERM')
      return new Promise<number | null>((done) => child.once('exit', done))
    },
  }
}

test('the first start offers the owner a code, what was kept is there after a stop, and then there is none', async () => {
  const first = await started([])
  expect(first.url).toMatch(/^http:\/\/localhost:\d+$/)
  const device = { id: randomUUID(), secret: 'a'.repeat(64), name: 'phone' }
  const paired = await fetch(`${first.url}/api/pairing`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ code: first.code, device, name: 'Owner' }),
  })
  expect(paired.status).toBe(201)
  const cookie = paired.headers.get('set-cookie')!.split(';')[0]!
  expect(await first.stop()).toBe(0)
  await expect(fetch(`${first.url}/api/health`)).rejects.toThrow()

  const second = await started([])
  expect(second.code).toBeUndefined()
  const session = await fetch(`${second.url}/api/session`, { headers: { cookie } })
  expect([session.status, ((await session.json()) as { person: { name: string } }).person.name]).toEqual([200, 'Owner'])
  expect(await second.stop()).toBe(0)
})

test('for the shop’s network it speaks HTTPS with a certificate of the shop’s own authority, which a plain page hands out', async () => {
  const shop = await started(['--shop', '--name', 'bench.local'])
  const said = shop.said()
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
  const run = (...args: string[]) =>
    new Promise<{ status: number | null; err: string }>((done) => {
      const child = spawn(
        process.execPath,
        ['--conditions=development', '--import', 'tsx', 'packages/cli/src/testing/runMain.ts', 'serve', ...args],
        {
          cwd: ROOT,
          env: { ...process.env, GRIPBOOK_DATABASE_URL: '' },
          stdio: ['ignore', 'ignore', 'pipe'],
        },
      )
      let err = ''
      child.stderr.setEncoding('utf8').on('data', (text) => {
        err += text
      })
      child.once('exit', (status) => done({ status, err }))
    })
  for (const [args, words] of [
    [['--port', 'x'], /whole number/],
    [['--prot', '1'], /Did you mean --port/],
    [['--certificate', 'a.pem'], /go together/],
    [['--log', 'loud'], /is one of/],
    [['more'], /one word too many/],
  ] as [string[], RegExp][]) {
    const { status, err } = await run(...args)
    expect([args, status]).toEqual([args, 2])
    expect(err).toMatch(words)
  }
  const other = await started([])
  const taken = await run('--data', join(folder, 'shop'), '--port', new URL(other.url).port)
  expect([taken.status, taken.err]).toEqual([2, expect.stringContaining('listens on this port already')])
  await other.stop()
})
