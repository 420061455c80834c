/** The page as a browser asks for it: a built one of a few small files. */
import { mkdir, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { brotliCompressSync } from 'node:zlib'
import type { FastifyInstance } from 'fastify'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { buildApp } from '../app/app.ts'
import { type TestShop, testShop } from '../testing/testShop.ts'

const DOCUMENT = '<!doctype html><title>Gripbook</title><script type="module" src="/assets/page-Ab3_x-9Q.js"></script>'
const SCRIPT = 'export const long = "a page of a bench book"\n'.repeat(50)
const FILES: Record<string, string | Buffer> = {
  'index.html': DOCUMENT,
  'sw.js': 'self.skipWaiting()',
  'manifest.webmanifest': '{}',
  'assets/page-Ab3_x-9Q.js': SCRIPT,
  'assets/page-Ab3_x-9Q.js.br': brotliCompressSync(SCRIPT),
  'assets/solver-C0ffee00.wasm': '\0asm',
  'assets/notes.css': 'p { color: black }',
  'demo/pan.webp': 'RIFF',
  '.hidden': 'not for anybody',
  '../outside.html': 'not for anybody',
}

let shop: TestShop
let app: FastifyInstance
beforeAll(async () => {
  shop = await testShop()
  const page = join(shop.folder, 'page')
  for (const [name, text] of Object.entries(FILES)) {
    await mkdir(dirname(join(page, name)), { recursive: true })
    await writeFile(join(page, name), text)
  }
  app = await buildApp(shop.shop, { hosts: () => ['localhost'], page })
})
afterAll(async () => {
  await app?.close()
  await shop?.close()
})

const PERSON = { accept: 'text/html,application/xhtml+xml,*/*;q=0.8' }
const ask = (url: string, headers: Record<string, string> = {}, method: 'GET' | 'HEAD' | 'POST' = 'GET') =>
  app.inject({ method, url, remoteAddress: '192.168.7.7', headers: { host: 'localhost', ...headers } })

test('every place within the page is its one document, which is asked for anew each time', async () => {
  for (const url of ['/', '/?from=home', '/index.html', '/unit/abc/face/pan', '/unit/abc/', '/apiary', '/sign/%C3%BC'])
    expect(await ask(url, PERSON), url).toMatchObject({
      statusCode: 200,
      body: DOCUMENT,
      headers: { 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-cache' },
    })
  expect((await ask('/')).statusCode, 'also for who does not say what is wanted').toBe(200)
  expect(await ask('/', PERSON, 'HEAD')).toMatchObject({ statusCode: 200, body: '' })
})

test('files have their types; what has a hash in its name is kept for a year, nothing else without asking', async () => {
  const year = 'public, max-age=31536000, immutable'
  for (const [url, type, cache] of [
    ['/sw.js', 'application/javascript; charset=utf-8', 'no-cache'],
    ['/manifest.webmanifest', 'application/manifest+json', 'no-cache'],
    ['/assets/page-Ab3_x-9Q.js', 'application/javascript; charset=utf-8', year],
    ['/assets/solver-C0ffee00.wasm', 'application/wasm', year],
    ['/assets/notes.css', 'text/css; charset=utf-8', 'no-cache'],
    ['/demo/pan.webp', 'image/webp', 'no-cache'],
  ]) {
    const { statusCode, headers } = await ask(url!)
    expect([url, statusCode, headers['content-type'], headers['cache-control']]).toEqual([url, 200, type, cache])
  }
  const { headers } = await ask('/sw.js')
  expect((await ask('/sw.js', { 'if-none-match': String(headers.etag) })).statusCode).toBe(304)
})

test('what lies there compressed already goes out so, to whoever takes it', async () => {
  const small = await ask('/assets/page-Ab3_x-9Q.js', { 'accept-encoding': 'gzip, br' })
  expect(small.headers).toMatchObject({
    'content-encoding': 'br',
    'content-type': 'application/javascript; charset=utf-8',
    'cache-control': 'public, max-age=31536000, immutable',
    vary: 'accept-encoding',
  })
  expect(small.rawPayload.length).toBeLessThan(SCRIPT.length / 4)
  const plain = await ask('/assets/page-Ab3_x-9Q.js', { 'accept-encoding': 'identity' })
  expect([plain.headers['content-encoding'], plain.body]).toEqual([undefined, SCRIPT])
  expect(await ask('/sw.js', { 'accept-encoding': 'br' })).toMatchObject({
    statusCode: 200,
    body: 'self.skipWaiting()',
  })
})

test('what is not there, not of the page, or no reading is refused as before', async () => {
  const away = { statusCode: 404, headers: { 'content-type': 'application/problem+json' } }
  for (const url of [
    '/assets/gone-Ab3_x-9Q.js',
    '/favicon.ico',
    '/unit/abc',
    '/assets',
    '/.hidden',
    '/../outside.html',
    '/%2e%2e/outside.html',
    '/assets/..%2f..%2foutside.html',
    '/assets/%5c..%5c..%5coutside.html',
    '/sw.js%00.html',
    `/${'x'.repeat(300)}.js`,
  ]) {
    const answer = await ask(url)
    expect(answer, url).toMatchObject(away)
    expect(answer.json().code, url).toBe('not-found')
    expect(answer.headers['cache-control'] ?? '', url).not.toContain('immutable')
  }
  for (const url of ['/api', '/api/', '/api/nothing', '/api/pairing'])
    expect(await ask(url, PERSON), url).toMatchObject(away)
  expect(await ask('/', PERSON, 'POST')).toMatchObject(away)
  expect((await ask('/', { host: 'elsewhere.example' })).statusCode, 'by another name').toBe(421)
})

test('a page of fifty files is loaded by twenty devices at once behind one address', async () => {
  const answers = await Promise.all(Array.from({ length: 1_000 }, () => ask('/sw.js')))
  expect(new Set(answers.map(({ statusCode }) => statusCode))).toEqual(new Set([200]))
})

test('where the page is not built there is none', async () => {
  const answer = await shop.app.inject({ url: '/', headers: { host: 'localhost', ...PERSON } })
  expect(answer.json()).toMatchObject({ status: 404, code: 'not-found' })
})
