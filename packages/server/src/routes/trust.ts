/** How a device comes to trust the shop's authority: a page for people, not under /api, and the authority's certificate. */
import type { FastifyReply } from 'fastify'
import { Refused } from '../app/faults.ts'
import type { Routes } from '../app/kinds.ts'
import { AUTHORITY_PATH, TRUST_POLICY, trustPage } from '../certificates/trustPage.ts'

export const trustRoutes: Routes =
  ({ authority = null }) =>
  async (app) => {
    const config = { mayCall: 'anyone' as const }
    const schema = {
      summary: 'How a device comes to trust the shop’s own certificate authority',
      produces: ['text/html'],
    }

    app.get('/trust', { config, schema: schema as object }, ({ protocol, host }, reply: FastifyReply) => {
      if (authority === null) throw new Refused('not-found')
      return reply
        .type('text/html; charset=utf-8')
        .header('content-security-policy', TRUST_POLICY)
        .header('cache-control', 'no-store')
        .send(trustPage({ fingerprint: authority.fingerprint, address: `${protocol}://${host}` }))
    })

    app.get(AUTHORITY_PATH, { config, schema: { hide: true } as object }, (_, reply: FastifyReply) => {
      if (authority === null) throw new Refused('not-found')
      return reply.type('application/x-x509-ca-cert').header('cache-control', 'no-store').send(authority.der)
    })
  }
