/** The running server: opens the shop, listens, keeps its certificate fresh, stops in good order. */
import { randomBytes, X509Certificate } from 'node:crypto'
import { isIP } from 'node:net'
import { hostname, networkInterfaces } from 'node:os'
import type { FastifyInstance, FastifyServerOptions } from 'fastify'
import { buildApp } from './app/app.ts'
import { openShop } from './app/openShop.ts'
import { mustNotBeRestoring } from './backup/unfinished.ts'
import { ownCertificate } from './certificates/ownCertificate.ts'
import { type Authority, shopCertificates } from './certificates/shopCertificates.ts'
import { trustServer } from './certificates/trustServer.ts'
import type { PaperMaker } from './records/paper.ts'

export type Serving = {
  env: Record<string, string | undefined>
  dataFolder: string
  port: number
  /** Listens to the shop's network, by HTTPS, instead of to this machine alone. */
  shop: boolean
  /** More names that devices reach it by. */
  names: readonly string[]
  /** A certificate of one's own and its key, PEM files; without them the shop's authority makes one. */
  certificate: { file: string; keyFile: string } | null
  /** Makes a code for one more owner, though there is one: for an owner who has lost every device. */
  anotherOwner: boolean
  /** Folder of the built page; null where it is not built: then the record alone is served. */
  page: string | null
  /** Makes build records; without it there are none here. */
  paper?: PaperMaker
  logger: FastifyServerOptions['logger']
}

export type Running = {
  /** Where devices reach it, the likeliest first. */
  addresses: string[]
  /** Where the record is kept, for people. */
  where: string
  /** While the shop has no owner, or when another one was asked for: the code with which the owner's device is paired. */
  ownerCode: string | null
  /** How devices come to trust the shop's own authority; null where it is not needed. */
  trust: { address: string; fingerprint: string } | null
  /** Lets what is under way end, tells live streams, closes the database. */
  stop(): Promise<void>
}

const LOOPBACK = ['127.0.0.1', 'localhost', '[::1]', '::1']
/** The plain server that only hands out the authority's certificate listens on the next port. */
const TRUST_PORT_BESIDE = 1
const LOOK_EVERY = 60_000
const MOMENT = 1_000

/** Throws what opening the database, the certificates and listening throw, each with words. */
export async function serve(options: Serving): Promise<Running> {
  return options.shop ? serveShop(options) : serveHere(options)
}

async function serveHere({
  env,
  dataFolder,
  port,
  names,
  anotherOwner,
  page,
  paper,
  logger,
}: Serving): Promise<Running> {
  const hosts = () => [...LOOPBACK, ...names]
  const { app, open } = await build({ env, dataFolder, secure: false, page, paper, logger, hosts })
  await listen(app, open.close, port, '127.0.0.1')
  return {
    addresses: [`http://localhost:${portOf(app)}`],
    where: open.database.where,
    ownerCode: await open.shop.entrance.ownerCode({ another: anotherOwner }),
    trust: null,
    stop: () => stopping(app, open.close),
  }
}

async function serveShop({
  env,
  dataFolder,
  port,
  names,
  certificate,
  anotherOwner,
  page,
  paper,
  logger,
}: Serving): Promise<Running> {
  const present = () => presentNames(names)
  const made = async () => {
    const { hosts, addresses } = present()
    const now = new Date()
    return certificate === null
      ? shopCertificates({ folder: dataFolder, names: hosts, addresses, now })
      : { ...(await ownCertificate(certificate.file, certificate.keyFile, now)), authority: null }
  }
  const first = await made()
  const hosts = forAMoment(() => {
    const now = present()
    return [
      ...LOOPBACK,
      ...now.hosts,
      ...now.addresses.map((address) => (address.includes(':') ? `[${address}]` : address)),
    ]
  })
  const https = { key: first.key, cert: first.cert }
  const { authority } = first
  const { app, open } = await build({
    env,
    dataFolder,
    secure: true,
    page,
    paper,
    logger,
    hosts,
    https,
    authority,
  })
  await listen(app, open.close, port, hasIpv6() ? '::' : '0.0.0.0')
  const trust = authority === null ? null : trustServer(authority, portOf(app))
  await trust?.listen(portOf(app) + TRUST_PORT_BESIDE).catch(async (error: unknown) => {
    await stopping(app, open.close)
    throw error
  })
  let current = first.cert
  const renewal = setInterval(() => {
    made().then(
      ({ key, cert }) => {
        if (cert === current) return
        current = cert
        ;(app.server as unknown as { setSecureContext(given: object): void }).setSecureContext({ key, cert })
        app.log.info('the certificate is a new one')
      },
      (error: unknown) => app.log.error({ err: error }, 'the certificate could not be looked after'),
    )
  }, LOOK_EVERY)
  renewal.unref()
  const { hosts: known, addresses } = present()
  const served = new X509Certificate(first.cert)
  const plain = addresses.filter((address) => !address.includes(':'))
  // A device that is sent where the certificate does not count is warned; the shop's authority cannot stand for a public address.
  const counts = (name: string) => (isIP(name) === 0 ? served.checkHost(name) : served.checkIP(name)) !== undefined
  const covered = [...plain, ...known].filter(counts)
  const reached = covered.length > 0 ? covered : [...plain, ...known]
  open.shop.address = `https://${reached[0] ?? hostname()}:${portOf(app)}`
  return {
    addresses: reached.map((name) => `https://${name}:${portOf(app)}`),
    where: open.database.where,
    ownerCode: await open.shop.entrance.ownerCode({ another: anotherOwner }),
    trust:
      authority === null
        ? null
        : {
            address: `http://${plain[0] ?? reached[0] ?? hostname()}:${portOf(app) + TRUST_PORT_BESIDE}`,
            fingerprint: authority.fingerprint,
          },
    async stop() {
      clearInterval(renewal)
      await trust?.close()
      await stopping(app, open.close)
    },
  }
}

type Building = Pick<Serving, 'env' | 'dataFolder' | 'page' | 'logger'> & {
  paper: PaperMaker | undefined
  secure: boolean
  hosts: () => readonly string[]
  https?: { key: string; cert: string }
  authority?: Authority | null
}

async function build({ env, dataFolder, secure, page, paper, logger, hosts, https, authority = null }: Building) {
  let app: FastifyInstance | undefined
  const failed = (error: unknown) => app?.log.error({ err: error }, 'something failed that no request waits for')
  const open = await openShop({
    env,
    dataFolder,
    secure,
    authority,
    ...(paper === undefined ? {} : { paper }),
    clock: Date.now,
    random: randomBytes,
    failed,
  })
  try {
    await mustNotBeRestoring(open.shop.db)
    app = await buildApp(open.shop, { hosts, page, logger, ...(https === undefined ? {} : { https }) })
    return { app, open }
  } catch (error) {
    await open.close()
    throw error
  }
}

async function listen(app: FastifyInstance, close: () => Promise<void>, port: number, host: string): Promise<void> {
  try {
    await app.listen({ port, host, listenTextResolver: () => 'listening' })
  } catch (error) {
    await stopping(app, close)
    throw error
  }
}

/** Where it is there, listening to all its addresses is listening to those of IPv4 too. */
function hasIpv6(): boolean {
  return Object.values(networkInterfaces()).some((found) => found?.some(({ family }) => family === 'IPv6'))
}

async function stopping(app: FastifyInstance, close: () => Promise<void>): Promise<void> {
  await app.close()
  await close()
}

function portOf(app: FastifyInstance): number {
  const address = app.server.address()
  return typeof address === 'object' && address !== null ? address.port : 0
}

/** Every request asks by which names the server is reached, and asking the system takes a tenth of the time that a small request does. */
function forAMoment<T>(look: () => T): () => T {
  let seen = look()
  let at = performance.now()
  return () => {
    if (performance.now() - at > MOMENT) {
      seen = look()
      at = performance.now()
    }
    return seen
  }
}

/** What this machine is called and where it stands in the shop's network at this moment; a lent address may be another one tomorrow. */
function presentNames(names: readonly string[]): { hosts: string[]; addresses: string[] } {
  const own = hostname().toLowerCase()
  const local = own.includes('.') ? own : `${own}.local`
  const addresses = Object.values(networkInterfaces())
    .flat()
    .flatMap((found) =>
      found === undefined || found.internal || found.address.startsWith('fe80:') ? [] : [found.address],
    )
  return {
    hosts: [...new Set([own, local, ...names.map((name) => name.toLowerCase())])],
    addresses: [...new Set(addresses)].sort(),
  }
}
