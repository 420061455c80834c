import { readdir, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { LightMyRequestResponse } from 'fastify'
import sharp from 'sharp'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { asFromCamera, noise } from '../photographs/testing/pictures.ts'
import { sha256 } from '../sha256.ts'
import { type SignedIn, type TestShop, testShop } from '../testing/testShop.ts'

let shop: TestShop
let builder: SignedIn
let viewer: SignedIn
beforeAll(async () => {
  shop = await testShop()
  builder = await shop.signIn('builder')
  viewer = await shop.signIn('viewer')
})
afterAll(() => shop?.close())

let seed = 100
const aPhotograph = (width = 60, height = 40): Promise<Buffer> => asFromCamera(noise(width, height, ++seed))

type Told = { offset: number; length: number; complete: boolean }

function sendPiece(who: SignedIn, photograph: string, bytes: Buffer, { offset, length, complete }: Told) {
  return who.ask('PATCH', `/api/photographs/${photograph}/upload`, bytes, {
    'content-type': 'application/octet-stream',
    'upload-offset': String(offset),
    'upload-length': String(length),
    'upload-complete': complete ? '?1' : '?0',
  })
}

function sendWhole(who: SignedIn, file: Buffer, photograph = sha256(file)): Promise<LightMyRequestResponse> {
  return sendPiece(who, photograph, file, { offset: 0, length: file.length, complete: true })
}

function code(answer: LightMyRequestResponse): [number, string] {
  expect(answer.headers['content-type']).toBe('application/problem+json')
  return [answer.statusCode, answer.json<{ code: string }>().code]
}

async function keptOf(file: Buffer): Promise<{ sha256: string; bytes: number; width: number; height: number }> {
  const answer = await sendWhole(builder, file)
  expect(answer.statusCode, answer.body).toBe(200)
  return answer.json().kept
}

test('a photograph is sent in pieces, asked after, and read by everyone in the shop', async () => {
  const file = await aPhotograph()
  const photograph = sha256(file)
  const upload = `/api/photographs/${photograph}/upload`
  const half = file.length >> 1
  const first = await sendPiece(builder, photograph, file.subarray(0, half), {
    offset: 0,
    length: file.length,
    complete: false,
  })
  expect([first.statusCode, first.json()]).toEqual([200, { received: half, kept: null }])
  const asked = await builder.ask('GET', upload)
  expect([asked.statusCode, asked.json()]).toEqual([200, { received: half, kept: null }])
  const head = await builder.ask('HEAD', upload)
  expect([head.statusCode, head.body]).toEqual([200, ''])
  expect(head.headers).toMatchObject({
    'upload-offset': String(half),
    'upload-complete': '?0',
    'cache-control': 'no-store',
  })
  const wrong = await sendPiece(builder, photograph, file.subarray(1), {
    offset: 1,
    length: file.length,
    complete: true,
  })
  expect(code(wrong)).toEqual([409, 'other-offset'])
  expect(wrong.json().received).toBe(half)
  const last = await sendPiece(builder, photograph, file.subarray(half), {
    offset: half,
    length: file.length,
    complete: true,
  })
  const { kept } = last.json()
  expect(last.json()).toEqual({ received: 0, kept: { sha256: kept.sha256, bytes: kept.bytes, width: 60, height: 40 } })
  expect((await builder.ask('HEAD', upload)).headers['upload-complete']).toBe('?1')
  const read = await viewer.ask('GET', `/api/photographs/${photograph}`)
  expect(read.statusCode).toBe(200)
  expect(read.headers).toMatchObject({
    'content-type': 'image/jpeg',
    'content-length': String(kept.bytes),
    'cache-control': 'private, max-age=31536000, immutable',
    'x-content-type-options': 'nosniff',
  })
  expect(sha256(read.rawPayload)).toBe(kept.sha256)
})

test('each size has a tag of its own; whoever has it gets no bytes again', async () => {
  const file = await aPhotograph(400, 300)
  await keptOf(file)
  const url = `/api/photographs/${sha256(file)}`
  const tags = new Set<string>()
  for (const [size, width] of [
    ['full', 400],
    ['1280', 400],
    ['320', 320],
  ] as const) {
    const answer = await builder.ask('GET', `${url}?size=${size}`)
    expect((await sharp(answer.rawPayload).metadata()).width).toBe(width)
    const tag = String(answer.headers.etag)
    tags.add(tag)
    for (const asked of [tag, `W/${tag}`, `"other", ${tag}`]) {
      const again = await builder.ask('GET', `${url}?size=${size}`, undefined, { 'if-none-match': asked })
      expect([again.statusCode, again.body, again.headers.etag]).toEqual([304, '', tag])
    }
    expect(
      (await builder.ask('GET', `${url}?size=${size}`, undefined, { 'if-none-match': '"other"' })).statusCode,
    ).toBe(200)
  }
  expect(tags.size).toBe(3)
  expect((await builder.ask('GET', url)).headers.etag).toBe([...tags][0])
  expect(code(await builder.ask('GET', `${url}?size=5000`))).toEqual([400, 'wrong-request'])
})

test('a viewer sends nothing, and a stranger neither sends nor sees', async () => {
  const file = await aPhotograph()
  await keptOf(file)
  const other = await aPhotograph()
  expect(code(await sendWhole(viewer, other))).toEqual([403, 'not-allowed'])
  expect(code(await viewer.ask('GET', `/api/photographs/${sha256(other)}/upload`))).toEqual([403, 'not-allowed'])
  const stranger = { host: 'localhost' }
  for (const url of [`/api/photographs/${sha256(file)}`, `/api/photographs/${sha256(file)}/upload`])
    expect(code(await shop.app.inject({ method: 'GET', url, headers: stranger }))).toEqual([401, 'not-signed-in'])
  const sent = await shop.app.inject({
    method: 'PATCH',
    url: `/api/photographs/${sha256(other)}/upload`,
    headers: { ...stranger, 'content-type': 'application/octet-stream', 'upload-offset': '0', 'upload-length': '9' },
    payload: other,
  })
  expect(code(sent)).toEqual([401, 'not-signed-in'])
  for (const role of ['checker', 'owner'] as const)
    expect(
      (await sendWhole(role === 'owner' ? shop.owner : await shop.signIn(role), await aPhotograph())).statusCode,
    ).toBe(200)
})

test('no name leads anywhere but to a photograph', async () => {
  const hash = 'a'.repeat(64)
  const names = [
    '..',
    '..%2f..%2fetc%2fpasswd',
    '%2e%2e',
    hash.toUpperCase(),
    hash.slice(1),
    `${hash}0`,
    `${hash}.jpg`,
    `${hash}%00`,
    `g${hash.slice(1)}`,
    '',
  ]
  for (const name of names)
    for (const url of [`/api/photographs/${name}`, `/api/photographs/${name}/upload`]) {
      const answer = await builder.ask('GET', url)
      expect([400, 404], `${url} ${answer.statusCode}`).toContain(answer.statusCode)
    }
  const upper = await sendWhole(builder, await aPhotograph(), hash.toUpperCase())
  expect(code(upper)).toEqual([400, 'wrong-request'])
  expect(code(await builder.ask('GET', `/api/photographs/${hash}`))).toEqual([404, 'not-found'])
})

test('headers that are missing or make no sense, too much, and other kinds of content are refused', async () => {
  const file = await aPhotograph()
  const url = `/api/photographs/${sha256(file)}/upload`
  const sound = {
    'content-type': 'application/octet-stream',
    'upload-offset': '0',
    'upload-length': String(file.length),
    'upload-complete': '?0',
  }
  const wrong: Record<string, string>[] = [
    { 'upload-offset': '-1' },
    { 'upload-offset': '1.5' },
    { 'upload-offset': '0x10' },
    { 'upload-offset': '9'.repeat(30) },
    { 'upload-length': 'many' },
    { 'upload-length': '5' },
    { 'upload-complete': 'yes' },
  ]
  for (const headers of wrong)
    expect(code(await builder.ask('PATCH', url, file, { ...sound, ...headers })), JSON.stringify(headers)).toEqual([
      400,
      'wrong-request',
    ])
  for (const missing of ['upload-offset', 'upload-length', 'upload-complete']) {
    const { [missing]: _, ...rest } = sound as Record<string, string>
    expect(code(await builder.ask('PATCH', url, file, rest))).toEqual([400, 'wrong-request'])
  }
  const large = Buffer.alloc(1_048_577)
  expect(code(await builder.ask('PATCH', url, large, { ...sound, 'upload-length': '9000000' }))).toEqual([
    413,
    'too-large',
  ])
  expect(code(await builder.ask('PATCH', url, file, { ...sound, 'upload-length': '40000001' }))).toEqual([
    413,
    'too-large',
  ])
  expect(code(await builder.ask('PATCH', url, file, { ...sound, 'content-type': 'image/jpeg' }))).toEqual([
    415,
    'wrong-type',
  ])
  expect(code(await builder.ask('PATCH', url, {}, { ...sound, 'content-type': 'application/json' }))).toEqual([
    415,
    'wrong-type',
  ])
  expect((await builder.ask('GET', url)).json()).toEqual({ received: 0, kept: null })
})

test('what is not that photograph, or none, is refused in words', async () => {
  const file = await aPhotograph()
  expect(code(await sendWhole(builder, file, sha256(Buffer.from('another'))))).toEqual([422, 'not-that-photograph'])
  expect(code(await sendWhole(builder, Buffer.from('<html></html>')))).toEqual([422, 'bad-photograph'])
})

test('a last piece may be empty, with and without a kind of content', async () => {
  for (const kind of [{ 'content-type': 'application/octet-stream' }, {}]) {
    const file = await aPhotograph()
    const { length } = file
    await sendPiece(builder, sha256(file), file, { offset: 0, length, complete: false })
    const headers = {
      'upload-offset': String(length),
      'upload-length': String(length),
      'upload-complete': '?1',
      ...kind,
    }
    const empty = 'content-type' in kind ? Buffer.alloc(0) : undefined
    const answer = await builder.ask('PATCH', `/api/photographs/${sha256(file)}/upload`, empty, headers)
    expect([answer.statusCode, answer.json().kept?.width]).toEqual([200, 60])
  }
})

test('a photograph is counted once, however often it is sent', async () => {
  const counted = async () => (await shop.app.figures.photographsKept.get()).values[0]!.value
  const before = await counted()
  const file = await aPhotograph()
  for (const who of [builder, builder, shop.owner]) expect((await sendWhole(who, file)).json().kept.width).toBe(60)
  expect(await counted()).toBe(before + 1)
})

test('a damaged file is told as such, and a folder that cannot be used as a reason to send again', async () => {
  const file = await aPhotograph()
  const kept = await keptOf(file)
  const photographs = join(shop.folder, 'shop', 'photographs')
  const path = join(photographs, kept.sha256.slice(0, 2), `${kept.sha256}.jpg`)
  await writeFile(path, 'damaged')
  const damaged = await builder.ask('GET', `/api/photographs/${sha256(file)}`)
  expect(code(damaged)).toEqual([500, 'damaged-photograph'])
  expect(damaged.json().photograph).toBe(sha256(file))
  expect(damaged.body).not.toContain(shop.folder)
  expect(damaged.headers['cache-control'] ?? 'none').not.toContain('immutable')

  await rm(photographs, { recursive: true })
  await writeFile(photographs, 'a file where the folder was')
  const next = await aPhotograph()
  expect(code(await sendWhole(builder, next))).toEqual([503, 'no-place'])
  await rm(photographs)
  expect((await sendWhole(builder, next)).json().kept.width).toBe(60)
  expect((await readdir(photographs)).length).toBeGreaterThan(1)
})
