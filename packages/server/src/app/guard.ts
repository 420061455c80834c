/** The gate that every request passes before its route: the name that the server was called by, the page that the request comes from, who is signed in. */
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { tokenIn } from '../entrance/cookie.ts'
import { Refused } from './faults.ts'
import type { MayCall } from './kinds.ts'
import type { Shop } from './shop.ts'

const READING = ['GET', 'HEAD', 'OPTIONS']

export function guard(app: FastifyInstance, shop: Shop, hosts: () => readonly string[]): void {
  app.decorateRequest('session', null)
  app.addHook('onRoute', ({ method, url, config }) => {
    if (config?.mayCall === undefined) throw new Error(`${method} ${url} does not say who may call it`)
  })
  app.addHook('onRequest', async (request) => {
    if (!hosts().includes(request.hostname.toLowerCase())) throw new Refused('wrong-host')
    if (!READING.includes(request.method)) mustComeFromHere(request)
    const mayCall = request.routeOptions.config.mayCall
    if (mayCall === undefined) return
    const token = tokenIn(request.headers.cookie, shop.secure)
    request.session = token === null ? null : await shop.entrance.sessionOf(token)
    mustBeAllowed(request, mayCall)
  })
}

/** Browsers say which page a request comes from; another site's may not write here, whatever cookie goes with it. */
function mustComeFromHere(request: FastifyRequest): void {
  const { origin, 'sec-fetch-site': site } = request.headers
  if (site !== undefined && site !== 'same-origin' && site !== 'none') throw new Refused('wrong-origin')
  if (origin !== undefined && origin !== `${request.protocol}://${request.host}`) throw new Refused('wrong-origin')
}

function mustBeAllowed({ session }: FastifyRequest, mayCall: MayCall): void {
  if (mayCall === 'anyone') return
  if (session === null) throw new Refused('not-signed-in')
  if (mayCall !== 'paired' && !mayCall.includes(session.person.role)) throw new Refused('not-allowed')
}
