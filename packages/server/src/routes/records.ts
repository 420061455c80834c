/** The build record of a unit on paper, and whether a paper is of this shop's record. */
import * as z from 'zod/mini'
import { Refused } from '../app/faults.ts'
import type { Routes } from '../app/kinds.ts'
import { sendJson } from '../app/sendJson.ts'
import { sha256Hex, uuid } from '../entrance/shapes.ts'
import { knownRecord, knownWords } from '../records/knownRecord.ts'
import { paperOfUnit } from '../records/paper.ts'

export const recordRoutes: Routes = (shop) => async (app) => {
  app.get(
    '/units/:unit/record',
    {
      config: { mayCall: 'paired' },
      schema: {
        summary: 'The build record of a unit as a PDF with the shop’s seal; not-found where the server prints nothing',
        params: z.strictObject({ unit: uuid }),
        produces: ['application/pdf'],
      } as object,
    },
    async (request, reply) => {
      const { unit } = request.params as { unit: string }
      const pdf = shop.paper === undefined ? null : await paperOfUnit(shop, unit, shop.paper)
      if (pdf === null) throw new Refused('not-found')
      return reply
        .type('application/pdf')
        .header('content-disposition', `attachment; filename="build-record-${unit}.pdf"`)
        .header('cache-control', 'no-store')
        .send(pdf)
    },
  )

  app.get(
    '/units/:unit/record/:hash',
    {
      config: { mayCall: 'paired' },
      schema: {
        summary:
          'Whether a hash, as it stands on a build record and in its QR code, is that of entries kept here; in words for a browser',
        params: z.strictObject({ unit: uuid, hash: sha256Hex }),
        response: { 200: z.looseObject({ is: z.enum(['present', 'earlier', 'unknown']) }) },
      },
    },
    async ({ params, headers }, reply) => {
      const events = await shop.store.ofUnit(params.unit)
      if (events.length === 0) throw new Refused('not-found')
      const known = knownRecord(params.unit, events, params.hash)
      reply.header('cache-control', 'no-store')
      // A phone that was held over the paper asks for a page.
      if (headers.accept?.includes('text/html') !== true) return sendJson(reply, known)
      return reply
        .type('text/plain; charset=utf-8')
        .serializer(String)
        .send(`${knownWords(known)}\n` as never)
    },
  )
}
