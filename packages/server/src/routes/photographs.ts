/** Photographs: sent in pieces that go on after any cut (names of the IETF draft "Resumable Uploads for HTTP"), read in three sizes. */
import type { FastifyRequest } from 'fastify'
import * as z from 'zod/mini'
import { Refused } from '../app/faults.ts'
import type { Routes } from '../app/kinds.ts'
import { sha256Hex } from '../entrance/shapes.ts'
import { Damaged, SIZES } from '../photographs/photographs.ts'
import { PlaceError } from '../photographs/place.ts'

const MOST_OF_A_PIECE = 1_048_576

const ofPhotograph = z.strictObject({ sha256: sha256Hex })
const count = z.string().check(z.regex(/^(0|[1-9]\d{0,11})$/))
const kept = z.nullable(z.object({ sha256: z.string(), bytes: z.number(), width: z.number(), height: z.number() }))
const arrival = z.object({ received: z.number(), kept })

export const photographRoutes: Routes = (shop) => async (app) => {
  app.addContentTypeParser(
    'application/octet-stream',
    { parseAs: 'buffer', bodyLimit: MOST_OF_A_PIECE },
    (_, body, done) => done(null, body),
  )

  app.patch(
    '/photographs/:sha256/upload',
    {
      config: { mayCall: ['owner', 'builder', 'checker'] },
      bodyLimit: MOST_OF_A_PIECE,
      schema: {
        summary:
          'A piece of a photograph, at most 1 MiB, from `Upload-Offset` of `Upload-Length` on; `Upload-Complete: ?1` with the last; sending again is harmless',
        consumes: ['application/octet-stream'],
        params: ofPhotograph,
        headers: z.looseObject({
          'upload-offset': count,
          'upload-length': count,
          'upload-complete': z.enum(['?1', '?0']),
        }),
        response: { 200: arrival },
      },
    },
    async (request) => {
      const { params, headers, session } = request
      const part = {
        device: session!.device.id,
        photograph: params.sha256,
        offset: Number(headers['upload-offset']),
        total: Number(headers['upload-length']),
        bytes: pieceIn(request),
        complete: headers['upload-complete'] === '?1',
      }
      const { added, ...answer } = await inWords(request, () => shop.photographs.receive(part))
      if (added) app.figures.photographsKept.inc()
      return answer
    },
  )

  app.get(
    '/photographs/:sha256/upload',
    {
      config: { mayCall: ['owner', 'builder', 'checker'] },
      schema: {
        summary: 'How far the upload of this device has come, or that the photograph is kept',
        params: ofPhotograph,
        response: { 200: arrival },
      },
    },
    async ({ params, session }, reply) => {
      const answer = await shop.photographs.received(session!.device.id, params.sha256)
      reply.header('cache-control', 'no-store').header('upload-complete', answer.kept === null ? '?0' : '?1')
      if (answer.kept === null) reply.header('upload-offset', answer.received)
      return answer
    },
  )

  app.get(
    '/photographs/:sha256',
    {
      config: { mayCall: 'paired' },
      schema: {
        summary: 'A photograph as it is kept, or a smaller picture of it (longest side in pixels)',
        params: ofPhotograph,
        querystring: z.strictObject({ size: z._default(z.enum(SIZES), 'full') }),
        produces: ['image/jpeg'],
      },
    },
    async (request, reply) => {
      const { params, query, headers } = request
      const found = await shop.photographs.find(params.sha256)
      if (found === null) throw new Refused('not-found')
      const tag = `"${found.sha256}-${query.size}"`
      const isHeld = hasTag(headers['if-none-match'], tag)
      const bytes = isHeld ? null : await inWords(request, () => shop.photographs.read(params.sha256, query.size))
      // Not before the bytes are there: an answer that they are damaged is for no cache.
      reply.header('etag', tag).header('cache-control', 'private, max-age=31536000, immutable')
      return isHeld ? reply.status(304).send() : reply.type('image/jpeg').send(bytes)
    },
  )
}

/** A last piece may be empty: all bytes had come, and only their end was not told. */
function pieceIn({ body, headers }: FastifyRequest): Buffer {
  if (Buffer.isBuffer(body)) return body
  if (headers['content-type'] !== undefined) throw new Refused('wrong-type')
  return Buffer.alloc(0)
}

function hasTag(asked: string | undefined, tag: string): boolean {
  return asked?.split(',').some((one) => one.trim().replace(/^W\//, '') === tag) ?? false
}

/** What the place of the photographs fails at is written in the log in its words, and told by its code. */
async function inWords<T>(request: FastifyRequest, work: () => Promise<T>): Promise<T> {
  try {
    return await work()
  } catch (error) {
    if (!(error instanceof PlaceError || error instanceof Damaged)) throw error
    request.log.error({ err: error }, error.message)
    throw error instanceof Damaged
      ? new Refused('damaged-photograph', { photograph: error.photograph })
      : new Refused('no-place')
  }
}
