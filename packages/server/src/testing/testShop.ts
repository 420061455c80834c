/** A shop on an embedded database of its own, with an app that is handed requests without a port. */
import { randomBytes, randomUUID } from 'node:crypto'
import { join } from 'node:path'
import type { FastifyInstance, InjectOptions, LightMyRequestResponse } from 'fastify'
import { type AppOptions, buildApp } from '../app/app.ts'
import { type OpenShop, openShop } from '../app/openShop.ts'
import type { Shop } from '../app/shop.ts'
import type { Role } from '../entrance/entrance.ts'
import { sha256 } from '../sha256.ts'
import { temporaryFolder } from './folders.ts'

export type SignedIn = {
  device: string
  person: string
  cookie: string
  /** A request in this session; `body` is sent as JSON. */
  ask(
    method: 'GET' | 'HEAD' | 'POST' | 'PATCH' | 'DELETE',
    url: string,
    body?: object,
    headers?: Record<string, string>,
  ): Promise<LightMyRequestResponse>
}

export type TestShop = OpenShop & {
  store: Shop['store']
  app: FastifyInstance
  folder: string
  /** Sets the clock on. */
  pass(milliseconds: number): void
  owner: SignedIn
  /** Someone of this role, paired on a new device. */
  signIn(role: Role): Promise<SignedIn>
  close(): Promise<void>
}

/** Without `paired` it stays as it was made: nobody is in it, and `owner` must not be used. */
export async function testShop(options: Partial<AppOptions> = {}, { paired = true } = {}): Promise<TestShop> {
  const { folder, remove } = await temporaryFolder()
  let ahead = 0
  const clock = () => Date.now() + ahead
  const open = await openShop({
    env: {},
    dataFolder: join(folder, 'shop'),
    secure: false,
    clock,
    random: randomBytes,
    failed: () => {},
  })
  const app = await buildApp(open.shop, { hosts: () => ['localhost'], requestsPerMinute: 0, ...options })

  async function pairedBy(code: string, name: string): Promise<SignedIn> {
    const device = randomUUID()
    const secret = sha256(device)
    const answer = await app.inject({
      method: 'POST',
      url: '/api/pairing',
      payload: { code, device: { id: device, secret, name: `${name}'s device` }, name },
      headers: { host: 'localhost' },
    })
    if (answer.statusCode !== 201) throw new Error(`not paired: ${answer.body}`)
    const cookie = String(answer.headers['set-cookie']).split(';')[0]!
    const { person } = answer.json<{ person: { id: string } }>()
    return {
      device,
      person: person.id,
      cookie,
      ask: (method, url, body, headers = {}) => {
        const request: InjectOptions = { method, url, headers: { host: 'localhost', cookie, ...headers } }
        return app.inject(body === undefined ? request : { ...request, payload: body })
      },
    }
  }

  const nobody = { device: '', person: '', cookie: '', ask: () => Promise.reject(new Error('nobody is paired')) }
  const owner = paired ? await pairedBy((await open.shop.entrance.ownerCode())!, 'Owner') : nobody
  return {
    ...open,
    store: open.shop.store,
    app,
    folder,
    owner,
    pass(milliseconds) {
      ahead += milliseconds
    },
    async signIn(role) {
      const made = await owner.ask('POST', '/api/codes', { name: `A ${role}`, role })
      return pairedBy(made.json<{ code: string }>().code, `A ${role}`)
    },
    async close() {
      await app.close()
      await open.close()
      await remove()
    },
  }
}
