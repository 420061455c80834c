/** A shop for trials: the contract over plain HTTP on a store in memory, with switches for what goes wrong on the way. Every code but 'wrong' pairs, any number of times. */
import { createHash } from 'node:crypto'
import { once } from 'node:events'
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { type Event, memoryStore, readBody, type Store, sha256OfText } from '@gripbook/record'

export type Switches = {
  /** Connections are cut before anything is answered. */
  offline: boolean
  /** ms before each answer. */
  slow: number
  /** So many requests are carried out and their answers cut off. */
  cutAnswers: number
  /** So many uploads are cut in the middle of their piece. */
  cutUploads: number
  /** So many requests are answered with this status. */
  fail: { times: number; status: number; headers?: Record<string, string> }
  /** A hotspot's page answers everything under /api. */
  hotspot: boolean
  /** No stream comes through. */
  noStream: boolean
  /** Types of entries that the shop does not allow. */
  notAllowed: string[]
  /** Most bytes of a body; larger ones are 413. */
  most: number
  /** Requests with more bytes than this are never answered: a link on which they do not come through in time. */
  tooMuch: number
  /** ms by which the shop's clock is ahead. */
  ahead: number
}

export type TestShop = {
  url: string
  port: number
  switches: Switches
  store(): Store
  /** The shop goes back to what it had after its first `count` entries. */
  setBack(count: number): Promise<void>
  endSessions(): void
  /** Sends entries down the live streams without keeping them. */
  tell(entries: readonly Event[]): void
  /** Live streams that are open. */
  streams(): number
  photographs: Map<string, Buffer>
  /** Method and path of each request under /api, with the count of entries it carried. */
  requests: { method: string; path: string; entries: number; at: number }[]
  close(): Promise<void>
}

type Pairing = { code: string; device: { id: string; name: string }; name?: string; before?: string[] }

type Session = { person: { id: string; name: string; role: string }; device: { id: string; name: string } }

const SCRIPT = '<!doctype html><meta charset="utf-8"><title>trial</title><script type="module" src="/page.js"></script>'

export async function testShop(script: string): Promise<TestShop> {
  const switches: Switches = {
    offline: false,
    slow: 0,
    cutAnswers: 0,
    cutUploads: 0,
    fail: { times: 0, status: 500 },
    hotspot: false,
    noStream: false,
    notAllowed: [],
    most: 4_000_000,
    tooMuch: Number.POSITIVE_INFINITY,
    ahead: 0,
  }
  let store = memoryStore(sha256OfText)
  let log: Event[] = []
  const sessions = new Map<string, Session>()
  const uploads = new Map<string, Buffer>()
  const photographs = new Map<string, Buffer>()
  const requests: TestShop['requests'] = []
  const streams = new Set<ServerResponse>()

  const server = createServer((request, response) => {
    void serve(request, response).catch(() => request.socket.destroy())
  })

  async function serve(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const path = request.url!
    response.setHeader('date', new Date(Date.now() + switches.ahead).toUTCString())
    if (path === '/') return end(response, 200, SCRIPT, 'text/html')
    if (path === '/page.js') return end(response, 200, script, 'text/javascript')
    if (!path.startsWith('/api/')) return end(response, 404, '', 'text/plain')
    if (switches.offline) {
      request.socket.destroy()
      return
    }
    if (switches.hotspot) return end(response, 200, '<h1>Sign in to the hotspot</h1>', 'text/html')
    if (switches.cutUploads > 0 && goesOn(request)) return cutUpload(request)
    const body = await bodyOf(request)
    const seen = { method: request.method!, path: path.slice(4), entries: 0, at: Date.now() }
    requests.push(seen)
    if (body.length > switches.tooMuch) return
    if (switches.fail.times > 0) {
      switches.fail.times--
      for (const [name, value] of Object.entries(switches.fail.headers ?? {})) response.setHeader(name, value)
      return json(response, switches.fail.status, { status: switches.fail.status, code: 'failed', title: 'failed' })
    }
    if (body.length > switches.most) return problem(response, 413, 'too-large')
    if (path === '/api/live') return live(request, response)
    const [status, answer] = await answerTo(request, path.slice(4), body, response, seen)
    if (switches.slow > 0) await new Promise((done) => setTimeout(done, switches.slow))
    if (switches.cutAnswers > 0 && request.method !== 'GET') {
      switches.cutAnswers--
      request.socket.destroy()
      return
    }
    if (status === 204) return end(response, 204, '', null)
    return json(response, status, answer)
  }

  async function answerTo(
    { method, headers }: IncomingMessage,
    path: string,
    body: Buffer,
    response: ServerResponse,
    seen: { entries: number },
  ): Promise<[number, unknown]> {
    const read = (): Record<string, unknown> => JSON.parse(body.toString()) as Record<string, unknown>
    if (path === '/pairing' && method === 'POST') {
      const { code, device, name, before } = read() as Pairing
      if (code === 'wrong') return no(401, 'code-not-valid')
      const token = `t${sessions.size}-${Date.now()}`
      const person = { id: before?.[0] ?? 'builder-1', name: name ?? 'Builder', role: 'builder' }
      sessions.set(token, { person, device: { id: device.id, name: device.name } })
      response.setHeader('set-cookie', `session=${token}; Path=/; HttpOnly; SameSite=Strict`)
      return [201, { person, device: { id: device.id, name: device.name }, expires: '2030-01-01T00:00:00.000Z' }]
    }
    const token = /session=([^;]+)/.exec(headers.cookie ?? '')?.[1] ?? ''
    const session = sessions.get(token)
    if (session === undefined) return no(401, 'not-signed-in')
    if (path === '/session' && method === 'GET') return [200, session]
    if (path === '/session' && method === 'DELETE') {
      sessions.delete(token)
      return [204, null]
    }
    if (path === '/entries' && method === 'POST') {
      const { entries } = read() as { entries: Event[] }
      seen.entries = entries.length
      return append(entries, session)
    }
    const [, unit = '', what] = /^\/units\/([^/]+)\/(heads|missing)$/.exec(path) ?? []
    if (what === 'heads') return [200, { heads: await store.heads(unit) }]
    if (what === 'missing') {
      const { have, limit } = read() as { have: Record<string, number>; limit: number }
      const { events, more } = await store.beyond(unit, have, limit)
      return [200, { entries: events, more }]
    }
    const [, name] = /^\/photographs\/([0-9a-f]{64})\/upload$/.exec(path) ?? []
    if (name !== undefined) return upload(name, method!, headers, body)
    return no(404, 'not-found')
  }

  async function append(entries: Event[], session: Session): Promise<[number, unknown]> {
    for (const [index, entry] of entries.entries()) {
      const sound = readBody(entry)
      if (!sound.ok && sound.why === 'malformed') return no(422, 'bad-entry', { index, path: sound.path })
      if (entry.device !== session.device.id) return no(403, 'other-device', { index })
      if (switches.notAllowed.includes(entry.type)) return no(403, 'not-allowed', { index })
    }
    const answer = await store.append(entries)
    if (!answer.ok) return no(409, 'refused-entries', { refusals: answer.refusals })
    const known = new Set(log.map(({ id }) => id))
    const fresh = entries.filter(({ id }) => !known.has(id))
    log.push(...fresh)
    tell(fresh)
    return [200, { added: answer.added, known: answer.known }]
  }

  function tell(entries: readonly Event[]): void {
    const told = `id: ${log.length}\nevent: entries\ndata: ${JSON.stringify({ entries })}\n\n`
    for (const stream of streams) stream.write(told)
  }

  function upload(name: string, method: string, headers: IncomingMessage['headers'], body: Buffer): [number, unknown] {
    const kept = photographs.get(name)
    const keptAs = kept && { sha256: name, bytes: kept.length, width: 40, height: 30 }
    const here = uploads.get(name) ?? Buffer.alloc(0)
    if (method === 'GET') return [200, { received: kept?.length ?? here.length, kept: keptAs ?? null }]
    if (keptAs !== undefined) return [200, { received: keptAs.bytes, kept: keptAs }]
    if (Number(headers['upload-offset']) !== here.length) return no(409, 'other-offset', { received: here.length })
    const now = Buffer.concat([here, body])
    uploads.set(name, now)
    if (now.length < Number(headers['upload-length'])) return [200, { received: now.length, kept: null }]
    uploads.delete(name)
    if (createHash('sha256').update(now).digest('hex') !== name) return no(422, 'not-that-photograph')
    photographs.set(name, now)
    return [200, { received: now.length, kept: { sha256: name, bytes: now.length, width: 40, height: 30 } }]
  }

  /** Browsers repeat by themselves a request whose connection was cut; that one is answered with the offset. */
  function goesOn({ method, url, headers }: IncomingMessage): boolean {
    const [, name = ''] = /([0-9a-f]{64})/.exec(url!) ?? []
    return method === 'PATCH' && Number(headers['upload-offset']) === (uploads.get(name)?.length ?? 0)
  }

  /** What arrived before the cut is kept, as a server does that writes while it reads. */
  async function cutUpload(request: IncomingMessage): Promise<void> {
    switches.cutUploads--
    const name = /([0-9a-f]{64})/.exec(request.url!)![1]!
    const [first] = (await once(request, 'data')) as [Buffer]
    uploads.set(name, Buffer.concat([uploads.get(name) ?? Buffer.alloc(0), first]))
    requests.push({ method: 'PATCH', path: 'cut', entries: 0, at: Date.now() })
    request.socket.destroy()
  }

  function live(request: IncomingMessage, response: ServerResponse): void {
    if (switches.noStream) {
      end(response, 502, 'no streams here', 'text/plain')
      return
    }
    const token = /session=([^;]+)/.exec(request.headers.cookie ?? '')?.[1] ?? ''
    if (!sessions.has(token)) {
      problem(response, 401, 'not-signed-in')
      return
    }
    response.writeHead(200, { 'content-type': 'text/event-stream; charset=utf-8', 'cache-control': 'no-store' })
    response.write('retry: 2000\nevent: beat\ndata: {}\n\n')
    streams.add(response)
    request.once('close', () => streams.delete(response))
  }

  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  const { port } = server.address() as AddressInfo
  return {
    url: `http://127.0.0.1:${port}/`,
    port,
    switches,
    photographs,
    requests,
    store: () => store,
    async setBack(count) {
      const kept = log.slice(0, count)
      store = memoryStore(sha256OfText)
      log = kept
      if (kept.length > 0) await store.append(kept)
    },
    endSessions: () => sessions.clear(),
    tell,
    streams: () => streams.size,
    async close() {
      server.closeAllConnections()
      server.close()
      await once(server, 'close')
    },
  }
}

function no(status: number, code: string, facts: Record<string, unknown> = {}): [number, unknown] {
  return [status, { ...facts, status, code, title: code }]
}

function problem(response: ServerResponse, status: number, code: string): void {
  json(response, status, { status, code, title: code })
}

function json(response: ServerResponse, status: number, body: unknown): void {
  end(response, status, JSON.stringify(body), 'application/json')
}

function end(response: ServerResponse, status: number, text: string, type: string | null): void {
  response.writeHead(status, type === null ? {} : { 'content-type': type })
  response.end(text)
}

async function bodyOf(request: IncomingMessage): Promise<Buffer> {
  const parts: Buffer[] = []
  for await (const part of request) parts.push(part as Buffer)
  return Buffer.concat(parts)
}
