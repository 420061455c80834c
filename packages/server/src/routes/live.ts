/** What the shop keeps, as it is kept: server-sent events. */
import { once } from 'node:events'
import type { ServerResponse } from 'node:http'
import type { Page, Position } from '@gripbook/record'
import type { FastifyRequest } from 'fastify'
import * as z from 'zod/mini'
import { Refused } from '../app/faults.ts'
import type { Routes } from '../app/kinds.ts'
import { tokenIn } from '../entrance/cookie.ts'

/** Streams of one session at once: some tabs and a stream that has not noticed yet that its phone is gone. */
const MOST_OF_A_SESSION = 8
const MOST_OF_ALL = 500
const BEAT_EVERY = 15_000
/** A device that takes nothing for so long is gone; it goes on from where it was when it comes again. */
const DRAIN_PATIENCE = 30_000

export const liveRoutes: Routes = (shop) => async (app) => {
  const open = new Map<string, number>()
  const streams = new Set<AbortController>()
  app.addHook('preClose', async () => {
    for (const stream of streams) stream.abort('stopping')
  })

  app.get(
    '/live',
    {
      config: { mayCall: 'paired' },
      schema: {
        summary:
          'Server-sent events: `entries` with the position as its id, `beat` every 15 s, `stopping`; goes on from Last-Event-ID or `after`, else from now',
        querystring: z.strictObject({ after: z.optional(z.string().check(z.maxLength(100))) }),
        produces: ['text/event-stream'],
      } as object,
    },
    async (request, reply) => {
      const session = request.session!
      const from = await startOf(request)
      const mine = open.get(session.id) ?? 0
      if (mine >= MOST_OF_A_SESSION || streams.size >= MOST_OF_ALL) throw new Refused('too-often')
      const stream = new AbortController()
      streams.add(stream)
      open.set(session.id, mine + 1)
      request.raw.once('close', () => stream.abort('gone'))
      reply.hijack()
      const headers = {
        'content-type': 'text/event-stream; charset=utf-8',
        'cache-control': 'no-store',
        'x-accel-buffering': 'no',
      }
      reply.raw.writeHead(200, { ...(reply.getHeaders() as Record<string, string>), ...headers })
      try {
        await tell(reply.raw, from, stream.signal, () => stillHere(request))
      } catch (error) {
        request.log.warn({ err: error }, 'a live stream ended')
      } finally {
        streams.delete(stream)
        const left = (open.get(session.id) ?? 1) - 1
        if (left > 0) open.set(session.id, left)
        else open.delete(session.id)
        if (stream.signal.reason === 'stopping') reply.raw.write('event: stopping\ndata: {}\n\n')
        reply.raw.end()
      }
    },
  )

  async function startOf({ headers, query }: FastifyRequest): Promise<Position | null> {
    const asked = headers['last-event-id'] ?? (query as { after?: string }).after
    if (typeof asked !== 'string' || asked === '') return shop.store.end()
    // A position that this record has not given is refused here, while there is an answer to refuse with.
    await shop.store.since(asked, 1)
    return asked
  }

  async function stillHere(request: FastifyRequest): Promise<boolean> {
    const token = tokenIn(request.headers.cookie, shop.secure)
    return token !== null && (await shop.entrance.sessionOf(token)) !== null
  }

  async function tell(
    out: ServerResponse,
    from: Position | null,
    signal: AbortSignal,
    mayStay: () => Promise<boolean>,
  ): Promise<void> {
    const ended = new Promise<void>((done) => signal.addEventListener('abort', () => done(), { once: true }))
    let position = from
    await write(out, `retry: 2000\nevent: beat\ndata: {}\n\n`)
    while (!signal.aborted) {
      const grown = shop.news.next()
      const page = await shop.news.after(position)
      if (page.events.length > 0) {
        if (!(await mayStay())) return
        await write(out, entriesEvent(page))
        position = page.position
        if (page.more) continue
      }
      if (await quiet(grown, ended)) {
        if (!(await mayStay())) return
        await write(out, 'event: beat\ndata: {}\n\n')
      }
    }
  }
}

function entriesEvent({ events, position }: Page): string {
  return `id: ${position}\nevent: entries\ndata: ${JSON.stringify({ entries: events })}\n\n`
}

/** Waits for news or the end; true when neither came for the time of a beat. */
async function quiet(grown: Promise<void>, ended: Promise<void>): Promise<boolean> {
  let timer: NodeJS.Timeout | undefined
  const beat = new Promise<boolean>((done) => {
    timer = setTimeout(() => done(true), BEAT_EVERY)
  })
  try {
    return await Promise.race([grown.then(() => false), ended.then(() => false), beat])
  } finally {
    clearTimeout(timer)
  }
}

async function write(out: ServerResponse, text: string): Promise<void> {
  if (out.write(text)) return
  await once(out, 'drain', { signal: AbortSignal.timeout(DRAIN_PATIENCE) })
}
