/** One unit as a file of open formats: given out to whoever is paired, taken in for the owner. */
import { createWriteStream } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Readable, Transform } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import * as z from 'zod/mini'
import { Refused } from '../app/faults.ts'
import type { Routes } from '../app/kinds.ts'
import { BadArchive, takeInArchive, unitFiles } from '../archives/unitArchive.ts'
import { zipOf } from '../archives/zipOut.ts'

const LARGEST = 500_000_000

const counted = z.object({ added: z.number(), known: z.number() })

export const archiveRoutes: Routes = (shop) => async (app) => {
  app.addContentTypeParser('application/zip', (_request, payload, done) => done(null, payload))

  app.get(
    '/units/:unit/archive',
    {
      config: { mayCall: 'paired' },
      schema: {
        summary:
          'The unit as a zip file of open formats: its entries, its unit file, its photographs, a manifest of hashes and the shop’s signature',
        params: z.strictObject({ unit: z.uuid() }),
        produces: ['application/zip'],
      } as object,
    },
    async (request, reply) => {
      const { unit } = request.params as { unit: string }
      const files = await unitFiles(shop, unit, new Date(shop.clock()).toISOString())
      if (files === null) throw new Refused('not-found')
      return reply
        .type('application/zip')
        .header('content-disposition', `attachment; filename="${unit}.zip"`)
        .header('cache-control', 'no-store')
        .send(zipOf(files))
    },
  )

  app.post(
    '/archives',
    {
      config: { mayCall: ['owner'] },
      bodyLimit: LARGEST,
      schema: {
        summary:
          'Take in a unit’s archive: everything is proven before anything is written; taking it in again changes nothing',
        consumes: ['application/zip'],
        response: {
          200: z.object({
            unit: z.string(),
            added: z.number(),
            known: z.number(),
            photographs: counted,
            absent: z.number(),
            signed: z.enum(['by this shop', 'by another shop', 'not at all']),
            key: z.nullable(z.string()),
          }),
        },
      },
    },
    async (request) => {
      const { body } = request
      if (request.headers['content-type'] !== 'application/zip') throw new Refused('wrong-type')
      // The body is no parser's, so that nobody else looks at what it says of its length; what it really has is counted below.
      if (Number(request.headers['content-length'] ?? 0) > LARGEST) throw new Refused('too-large')
      const folder = await mkdtemp(join(tmpdir(), 'gripbook-archive-'))
      try {
        const path = join(folder, 'archive.zip')
        await pipeline(body as Readable, atMost(LARGEST), createWriteStream(path, { mode: 0o600 }))
        const taken = await takeInArchive(shop, path)
        if (taken.added > 0) shop.news.look()
        app.figures.entriesKept.inc(taken.added)
        return taken
      } catch (error) {
        if (error instanceof BadArchive) throw new Refused('bad-archive', { faults: error.faults })
        throw error
      } finally {
        await rm(folder, { recursive: true, force: true })
      }
    },
  )
}

function atMost(bytes: number): Transform {
  let left = bytes
  return new Transform({
    transform(piece: Buffer, _encoding, done) {
      left -= piece.length
      done(left < 0 ? new Refused('too-large') : null, piece)
    },
  })
}
