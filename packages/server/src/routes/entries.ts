/** The entries of the record: appended by the device that made them, read on from a position. */
import { type Event, type ReadEntry, readBatch, readBody } from '@gripbook/record'
import * as z from 'zod/mini'
import { Refused } from '../app/faults.ts'
import type { Routes } from '../app/kinds.ts'
import { sendJson } from '../app/sendJson.ts'
import { sha256 } from '../sha256.ts'

/** More than a device makes in a day; a longer list is sent in pieces. */
const MOST_ENTRIES = 2_000
const MOST_READ = 2_000

const appended = z.object({ added: z.number(), known: z.number() })
export const entry = z.record(z.string(), z.unknown())

export const entryRoutes: Routes = (shop) => async (app) => {
  app.post(
    '/entries',
    {
      config: { mayCall: ['owner', 'builder', 'checker'] },
      schema: {
        summary:
          'Append a batch of entries: all of it or nothing; sending again is harmless; answered when it is on the disk',
        body: z.strictObject({ entries: z.array(entry).check(z.minLength(1), z.maxLength(MOST_ENTRIES)) }),
        response: { 200: appended },
      },
    },
    async ({ body, session }) => {
      const read = readBatch(body.entries, sha256)
      await shop.entrance.mustBeAllowed(session!, read.map(soundEntry))
      const answer = await shop.store.appendRead(read)
      if (!answer.ok) throw new Refused('refused-entries', { refusals: answer.refusals })
      if (answer.added > 0) shop.news.look()
      app.figures.entriesKept.inc(answer.added)
      return { added: answer.added, known: answer.known }
    },
  )

  app.get(
    '/entries',
    {
      config: { mayCall: 'paired' },
      schema: {
        summary: 'Entries of all units in the order in which the shop kept them, after a position',
        querystring: z.strictObject({
          after: z.optional(z.string().check(z.maxLength(100))),
          limit: z._default(z.coerce.number().check(z.int(), z.gte(1), z.lte(MOST_READ)), 500),
        }),
        response: { 200: z.object({ entries: z.array(entry), position: z.nullable(z.string()), more: z.boolean() }) },
      },
    },
    async ({ query }, reply) => {
      const { events, position, more } = await shop.store.since(query.after ?? null, query.limit)
      return sendJson(reply, { entries: events, position, more })
    },
  )
}

/** An entry whose body is what its type says. Types and versions that are not known here pass: a newer device may have made them. */
function soundEntry(read: ReadEntry, index: number): Event {
  if (!read.ok) throw new Refused('bad-entry', { index, path: read.path })
  const body = readBody(read.event)
  if (!body.ok && body.why === 'malformed') throw new Refused('bad-entry', { index, path: body.path })
  return read.event
}
