/** Sends wrong requests to a whole shop and holds every answer against what must hold; nothing of the record may change. */

import { randomUUID } from 'node:crypto'
import { connect as connectTo } from 'node:net'
import { sql } from 'kysely'
import sharp from 'sharp'
import { FAULTS } from '../../packages/server/src/app/faults.ts'
import { sha256 } from '../../packages/server/src/sha256.ts'
import { chainOf } from '../../packages/server/src/testing/chains.ts'
import { seeded } from '../../packages/server/src/testing/seeded.ts'
import { type TestShop, testShop } from '../../packages/server/src/testing/testShop.ts'
import { type Target, wrongRequest } from './requests.ts'

export type Outcome = { sent: number; byStatus: Record<string, number>; rawSent: number }

/** Tables in which a refused request leaves nothing. Pieces of uploads are not among them: a piece is kept until its photograph is whole. */
const TABLES = [
  'record_entry',
  'record_head',
  'record_log',
  'entrance_person',
  'entrance_device',
  'entrance_pairing',
  'entrance_session',
  'photograph_kept',
] as const

/** Throws at the first answer that must not be, with the seed and what was sent. */
export async function hostileTrial(count: number, seed: number, say: (line: string) => void): Promise<Outcome> {
  const shop = await testShop()
  try {
    const target = await targetIn(shop)
    const before = await written(shop)
    const byStatus: Record<string, number> = {}
    for (let i = 0; i < count; i++) {
      const { request, how } = wrongRequest(seeded(seed * 1_000_003 + i), target)
      const answer = await shop.app.inject(request)
      byStatus[answer.statusCode] = (byStatus[answer.statusCode] ?? 0) + 1
      const told = `seed ${seed}, request ${i}: ${how.join(', ')} → ${answer.statusCode} ${answer.body.slice(0, 300)}`
      if (answer.statusCode >= 500) throw new Error(`a failure: ${told}`)
      if (answer.statusCode >= 400 && request.method !== 'HEAD') mustBeClear(answer.json(), answer.statusCode, told)
      if (i % 500 === 499) {
        mustBeSame(await written(shop), before, told)
        say(`${i + 1} sent`)
      }
    }
    const large = await shop.app.inject({
      method: 'POST',
      url: '/api/entries',
      headers: { host: 'localhost', cookie: target.cookies.builder, 'content-type': 'application/json' },
      payload: `{"entries":["${'a'.repeat(5_000_000)}"]}`,
    })
    mustBeClear(large.json(), 413, `5 MB at once → ${large.statusCode}`)
    const rawSent = await sendRaw(shop, seed)
    mustBeSame(await written(shop), before, 'after everything')
    return { sent: count, byStatus, rawSent }
  } finally {
    await shop.close()
  }
}

function mustBeClear(answer: { code?: string; title?: string; status?: number }, status: number, told: string): void {
  const fault = FAULTS[answer.code as keyof typeof FAULTS]
  if (fault === undefined || fault.status !== status || answer.title !== fault.words || answer.status !== status)
    throw new Error(`no clear answer: ${told}`)
}

function mustBeSame(now: string, before: string, told: string): void {
  if (now !== before) throw new Error(`something was written; before ${before}, now ${now}; ${told}`)
}

async function written({ shop: { db } }: TestShop): Promise<string> {
  const counts: string[] = []
  for (const table of TABLES) {
    // Of sessions only which there are counts: when one was last used is written as it is used.
    const what =
      table === 'entrance_session'
        ? sql`string_agg(id::text, ' ' order by id)`
        : sql`string_agg(row::text, ' ' order by row::text)`
    const { rows } = await sql<{ all: string | null }>`select ${what} as all from ${sql.table(table)} as row`.execute(
      db,
    )
    counts.push(`${table}: ${sha256(rows[0]!.all ?? '')}`)
  }
  return counts.join(', ')
}

async function targetIn(shop: TestShop): Promise<Target> {
  const [builder, viewer, gone] = [
    await shop.signIn('builder'),
    await shop.signIn('viewer'),
    await shop.signIn('builder'),
  ]
  const chain = chainOf(builder)
  const kept = chain.some(20)
  await builder.ask('POST', '/api/entries', { entries: kept })
  const picture = await sharp({ create: { width: 60, height: 40, channels: 3, background: '#864' } })
    .jpeg()
    .toBuffer()
  const photograph = sha256(picture)
  const sent = await shop.app.inject({
    method: 'PATCH',
    url: `/api/photographs/${photograph}/upload`,
    headers: {
      host: 'localhost',
      cookie: builder.cookie,
      'content-type': 'application/octet-stream',
      'upload-offset': '0',
      'upload-length': String(picture.length),
      'upload-complete': '?1',
    },
    payload: picture,
  })
  if (sent.statusCode !== 200) throw new Error(`the photograph of the trial was not taken: ${sent.body}`)
  await gone.ask('DELETE', '/api/session')
  const { code } = (await shop.owner.ask('POST', '/api/codes', { name: 'Used up', role: 'builder' })).json()
  const device = { id: randomUUID(), secret: 'c'.repeat(64), name: 'phone' }
  await shop.app.inject({
    method: 'POST',
    url: '/api/pairing',
    headers: { host: 'localhost' },
    payload: { code, device },
  })
  const cookies = { owner: shop.owner.cookie, builder: builder.cookie, viewer: viewer.cookie, ended: gone.cookie }
  return { cookies, unit: chain.unit, photograph, kept, usedCode: code }
}

/** What only a bare connection can send. The server must answer with a refusal or hang up, and serve the next one. */
async function sendRaw(shop: TestShop, seed: number): Promise<number> {
  const random = seeded(seed)
  await shop.app.listen({ port: 0, host: '127.0.0.1' })
  const { port } = shop.app.server.address() as { port: number }
  const noise = (length: number) => String.fromCharCode(...Array.from({ length }, () => Math.floor(random() * 256)))
  const start = 'POST /api/entries HTTP/1.1\r\nhost: localhost\r\ncontent-type: application/json\r\n'
  const pieces = [
    () => noise(200),
    () => 'GET / HTTP/9.9\r\n\r\n',
    () => 'GET /api/health HTTP/1.1\r\n\r\n',
    () => `GET /api/health HTTP/1.1\r\nhost: localhost\r\nx: ${'a'.repeat(40_000)}\r\n\r\n`,
    () => `${start}content-length: 5\r\ntransfer-encoding: chunked\r\n\r\n0\r\n\r\nGET /api/people HTTP/1.1\r\n\r\n`,
    () => `${start}content-length: -1\r\n\r\n{}`,
    () => `${start}content-length: 2\r\ncontent-length: 3\r\n\r\n{}`,
    () => `${start}transfer-encoding: chunked\r\n\r\nzz\r\n{}\r\n0\r\n\r\n`,
    () => `GET http://elsewhere.example/api/health HTTP/1.1\r\nhost: elsewhere.example\r\n\r\n`,
    () => `GET /api/health HTTP/1.1\r\nhost: local\u0000host\r\n\r\n`,
    () => `PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n`,
    () => `\u0016\u0003\u0001${noise(100)}`,
  ]
  let sent = 0
  for (let i = 0; i < 200; i++) {
    const answer = await talk(port, pieces[i % pieces.length]!())
    const status = Number(/^HTTP\/1\.1 (\d{3})/.exec(answer)?.[1] ?? 400)
    if (status >= 500 || status === 200) throw new Error(`raw request ${i % pieces.length}: ${answer.slice(0, 200)}`)
    sent++
  }
  const well = await talk(port, 'GET /api/health HTTP/1.1\r\nhost: localhost\r\nconnection: close\r\n\r\n')
  if (!well.startsWith('HTTP/1.1 200')) throw new Error(`it does not serve any more: ${well.slice(0, 200)}`)
  return sent
}

function talk(port: number, text: string): Promise<string> {
  return new Promise((done) => {
    let answer = ''
    const socket = connectTo(port, '127.0.0.1', () => socket.write(Buffer.from(text, 'latin1')))
    // Some of it is the beginning of a request that never goes on: not waited for.
    socket.setTimeout(300, () => socket.destroy())
    socket.on('data', (piece) => {
      answer += piece.toString('latin1')
    })
    socket.on('error', () => {})
    socket.on('close', () => done(answer))
  })
}
