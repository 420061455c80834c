/** Builds the server without listening: tests hand it requests without a port, `serve.ts` listens. */
import helmet from '@fastify/helmet'
import rateLimit from '@fastify/rate-limit'
import swagger from '@fastify/swagger'
import Fastify, { type FastifyInstance, type FastifyRequest, type FastifyServerOptions } from 'fastify'
import { jsonSchemaTransform, serializerCompiler, validatorCompiler } from 'fastify-type-provider-zod'
import { answerBadAddress, answerFaults, answerNoHttp } from './answerFaults.ts'
import { guard } from './guard.ts'
import type { Routes } from './kinds.ts'
import { isLoopback } from './loopback.ts'
import { measure } from './measure.ts'
import type { Shop } from './shop.ts'
import './speech.ts'
import { archiveRoutes } from '../routes/archives.ts'
import { entryRoutes } from '../routes/entries.ts'
import { healthRoutes } from '../routes/health.ts'
import { liveRoutes } from '../routes/live.ts'
import { metricRoutes } from '../routes/metrics.ts'
import { pageRoutes } from '../routes/page.ts'
import { pairingRoutes } from '../routes/pairing.ts'
import { peopleRoutes } from '../routes/people.ts'
import { photographRoutes } from '../routes/photographs.ts'
import { recordRoutes } from '../routes/records.ts'
import { sessionRoutes } from '../routes/sessions.ts'
import { trustRoutes } from '../routes/trust.ts'
import { unitRoutes } from '../routes/units.ts'

/** The routes that there are, one file for each resource. */
const ROUTES: readonly Routes[] = [
  entryRoutes,
  unitRoutes,
  archiveRoutes,
  recordRoutes,
  liveRoutes,
  healthRoutes,
  metricRoutes,
  pairingRoutes,
  peopleRoutes,
  sessionRoutes,
  photographRoutes,
]

export type AppOptions = {
  /** Names by which the server is reached at this moment ("127.0.0.1", "shop.local"), without port. A request by another name is refused: a page elsewhere may have made its own name point here. */
  hosts: () => readonly string[]
  logger?: FastifyServerOptions['logger']
  /** Requests of one address in a minute; 0 for no limit. */
  requestsPerMinute?: number
  /** Puts another certificate and so on into the HTTP server. */
  https?: { key: string; cert: string }
  /** Folder of the built page; without it there is no page here. */
  page?: string | null
}

const BODY_LIMIT = 4_000_000
const REQUEST_PATIENCE = 60_000
/** A hundred a second: far more than a device needs, far less than would keep the shop from its work. */
const USUAL_RATE = 6_000

export async function buildApp(shop: Shop, options: AppOptions): Promise<FastifyInstance> {
  const app = Fastify({
    logger: options.logger ?? false,
    bodyLimit: BODY_LIMIT,
    requestTimeout: REQUEST_PATIENCE,
    routerOptions: { maxParamLength: 200 },
    // Names that would change what an object is are refused, not passed over.
    onProtoPoisoning: 'error',
    onConstructorPoisoning: 'error',
    return503OnClosing: true,
    frameworkErrors: answerBadAddress,
    clientErrorHandler: answerNoHttp,
    ...(options.https === undefined ? {} : { https: options.https }),
  } as FastifyServerOptions) as FastifyInstance
  app.setValidatorCompiler(validatorCompiler)
  app.setSerializerCompiler(serializerCompiler)
  answerFaults(app)
  await app.register(helmet, headers(shop.secure))
  const rate = options.requestsPerMinute ?? USUAL_RATE
  if (rate > 0)
    await app.register(rateLimit, { max: rate, timeWindow: 60_000, cache: 10_000, allowList: isThisMachine })
  await app.register(swagger, {
    openapi: { openapi: '3.1.0', info: { title: 'Gripbook', description: 'The record of a shop', version: '1' } },
    transform: jsonSchemaTransform,
  })
  guard(app, shop, options.hosts)
  measure(app)
  for (const routes of ROUTES) await app.register(routes(shop), { prefix: '/api' })
  await app.register(trustRoutes(shop))
  if (options.page) await app.register(pageRoutes(options.page))
  app.get('/api/openapi.json', { config: { mayCall: 'anyone' }, schema: { hide: true } as object }, () => app.swagger())
  return app
}

/** Programs on this machine (a backup, a test) are not slowed down, but where a route has a limit of its own: guessing codes is slow from everywhere. */
function isThisMachine({ ip, routeOptions }: FastifyRequest): boolean {
  return isLoopback(ip) && routeOptions.config.rateLimit === undefined
}

function headers(secure: boolean): object {
  return {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'blob:', 'data:'],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        workerSrc: ["'self'", 'blob:'],
        manifestSrc: ["'self'"],
        formAction: ["'self'"],
        baseUri: ["'none'"],
        frameAncestors: ["'none'"],
      },
    },
    crossOriginEmbedderPolicy: true,
    referrerPolicy: { policy: 'no-referrer' },
    // A shop's own certificate may be exchanged for none again; a promise of HTTPS for ever would lock its phones out. One day is enough.
    strictTransportSecurity: secure ? { maxAge: 86_400, includeSubDomains: false } : false,
  }
}
