/** HTTPS as it really is spoken: a server with a certificate, and what a client says of it that trusts one authority and nothing else. */
import { createServer } from 'node:https'
import type { AddressInfo } from 'node:net'
import { checkServerIdentity, connect } from 'node:tls'

export type TlsServer = {
  /** How a client that calls the server by this name or address ends: 'trusted', or why it is not. */
  trustedAs(name: string, authority: string): Promise<string>
  close(): Promise<void>
}

export async function tlsServer(given: { key: string; cert: string }): Promise<TlsServer> {
  const server = createServer(given, (_, response) => response.end('here'))
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  const { port } = server.address() as AddressInfo
  return {
    trustedAs: (name, authority) =>
      new Promise((done) => {
        // What is connected to is this machine; the certificate is held against the name.
        const socket = connect(
          { host: '127.0.0.1', port, ca: authority, checkServerIdentity: (_, peer) => checkServerIdentity(name, peer) },
          () => {
            socket.destroy()
            done('trusted')
          },
        )
        socket.on('error', (error: NodeJS.ErrnoException) =>
          done(error.code === undefined || error.code === 'UNSPECIFIED' ? error.message : error.code),
        )
      }),
    close: () =>
      new Promise((done) => {
        server.closeAllConnections()
        server.close(() => done())
      }),
  }
}
