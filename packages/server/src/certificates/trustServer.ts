/** A plain HTTP server for devices that do not trust the shop yet: the page that tells how, the authority's certificate, and nothing else. */
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http'
import { type AddressInfo, isIP } from 'node:net'
import { permitsAddress, permitsName } from './permitted.ts'
import type { Authority } from './shopCertificates.ts'
import { AUTHORITY_PATH, TRUST_POLICY, trustPage } from './trustPage.ts'

export type TrustServer = {
  /** On all addresses of this machine; 0 for any port. Returns the port. Rejects with what the system says. */
  listen(port: number): Promise<number>
  close(): Promise<void>
}

const PATIENCE = 10_000
const MOST_CONNECTIONS = 100
const HOST = /^([a-z0-9_.-]{1,253}|\[[0-9a-f:.]{2,45}\])(:\d{1,5})?$/i
const CERTIFICATE_TYPE = 'application/x-x509-ca-cert'

/** `shopPort`: where this machine serves the shop, for the page's last step. */
export function trustServer(authority: Given, shopPort?: number): TrustServer {
  const server = createServer(
    { requestTimeout: PATIENCE, headersTimeout: PATIENCE, keepAliveTimeout: 1, maxHeaderSize: 8_192 },
    (request, response) => answer(request, response, authority, shopPort),
  )
  server.maxConnections = MOST_CONNECTIONS
  server.setTimeout(PATIENCE)

  function listenOn(port: number, host: string): Promise<number> {
    return new Promise((done, fail) => {
      server.once('error', fail)
      server.listen(port, host, () => {
        server.off('error', fail)
        done((server.address() as AddressInfo).port)
      })
    })
  }

  return {
    listen: (port) =>
      listenOn(port, '::').catch((error: NodeJS.ErrnoException) => {
        // A machine without IPv6.
        if (error.code === 'EAFNOSUPPORT' || error.code === 'EADDRNOTAVAIL') return listenOn(port, '0.0.0.0')
        throw error
      }),
    close: () =>
      new Promise((done) => {
        server.close(() => done())
        server.closeAllConnections()
      }),
  }
}

type Given = Pick<Authority, 'der' | 'fingerprint'>
type Content = { status: number; type: string; body: string | Buffer }

function answer(
  request: IncomingMessage,
  response: ServerResponse,
  authority: Given,
  shopPort: number | undefined,
): void {
  const { status, type, body } = contentFor(request, authority, shopPort)
  response.writeHead(status, {
    'content-type': type,
    'content-length': Buffer.byteLength(body),
    'cache-control': 'no-store',
    'content-security-policy': TRUST_POLICY,
    'x-content-type-options': 'nosniff',
    'referrer-policy': 'no-referrer',
    connection: 'close',
    ...(status === 405 ? { allow: 'GET, HEAD' } : {}),
  })
  response.end(request.method === 'HEAD' ? undefined : body)
}

function contentFor(
  { method, url, headers }: IncomingMessage,
  authority: Given,
  shopPort: number | undefined,
): Content {
  const path = url?.split('?')[0]
  if (method !== 'GET' && method !== 'HEAD') return { status: 405, type: 'text/plain', body: 'Only to be read.\n' }
  if (path === AUTHORITY_PATH) return { status: 200, type: CERTIFICATE_TYPE, body: authority.der }
  if (path !== '/' && path !== '/trust')
    return { status: 404, type: 'text/plain', body: 'There is nothing here by this name.\n' }
  const name = HOST.exec(headers.host ?? '')?.[1]
  const known = name !== undefined && shopPort !== undefined && permits(authority.der, name.toLowerCase())
  const address = known ? `https://${name}:${shopPort}` : null
  const body = trustPage({ fingerprint: authority.fingerprint, address })
  return { status: 200, type: 'text/html; charset=utf-8', body }
}

/** Whether the shop's certificate can be good for what this page was called by. */
function permits(der: Buffer, name: string): boolean {
  const address = name.replace(/^\[|\]$/g, '')
  return isIP(address) === 0 ? permitsName(der, name) : permitsAddress(der, address)
}
