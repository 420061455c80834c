import { request } from 'node:http'
import { setTimeout as pause } from 'node:timers/promises'
import { expect, test } from 'vitest'
import { buildApp } from '../app/app.ts'
import { openShop } from '../app/openShop.ts'
import { chainOf } from '../testing/chains.ts'
import { type SignedIn, testShop } from '../testing/testShop.ts'

type Told = { event: string; id?: string; data: { entries?: { id: string }[] } }

/** Listens to a server on a port as a browser does; `until` resolves when that many entries have come. */
function listenTo(port: number, who: SignedIn, headers: Record<string, string> = {}, query = '') {
  const told: Told[] = []
  let status = 0
  let closed = false
  const asked = request({
    host: '127.0.0.1',
    port,
    path: `/api/live${query}`,
    headers: { host: 'localhost', cookie: who.cookie, ...headers },
  })
  asked.on('error', () => {
    closed = true
  })
  asked.on('response', (answer) => {
    status = answer.statusCode ?? 0
    let text = ''
    answer.setEncoding('utf8').on('data', (piece: string) => {
      text += piece
      const parts = text.split('\n\n')
      text = parts.pop()!
      for (const part of parts) {
        const fields = Object.fromEntries(part.split('\n').map((line) => line.split(/: (.*)/s).slice(0, 2)))
        told.push({ event: fields.event, id: fields.id, data: JSON.parse(fields.data) })
      }
    })
    answer.on('close', () => {
      closed = true
    })
  })
  asked.end()
  const until = async (what: () => boolean, patience = 60_000) => {
    for (const end = Date.now() + patience; !what(); await pause(10))
      if (Date.now() > end) throw new Error(`not told in time: ${JSON.stringify({ status, told })}`)
  }
  const ids = () => told.flatMap(({ data }) => data.entries?.map(({ id }) => id) ?? [])
  return { told, ids, until, status: () => status, closed: () => closed, end: () => asked.destroy() }
}

test('what any process keeps is told to the listeners of every process, in order, each once', async () => {
  const shop = await testShop()
  const second = await openShop({
    env: {},
    dataFolder: `${shop.folder}/shop`,
    secure: false,
    clock: Date.now,
    random: shop.shop.random,
    failed: () => {},
  })
  const other = await buildApp(second.shop, { hosts: () => ['localhost'], requestsPerMinute: 0 })
  const ports = await Promise.all(
    [shop.app, other].map(async (app) => {
      await app.listen({ port: 0, host: '127.0.0.1' })
      return (app.server.address() as { port: number }).port
    }),
  )
  const builder = await shop.signIn('builder')
  const before = chainOf(builder).some(3)
  await builder.ask('POST', '/api/entries', { entries: before })
  const listeners = ports.map((port) => listenTo(port, builder))
  await Promise.all(listeners.map(({ until, told }) => until(() => told.length > 0)))
  const chain = chainOf(builder)
  const after = chain.some(40)
  for (let at = 0; at < 40; at += 8) await builder.ask('POST', '/api/entries', { entries: after.slice(at, at + 8) })
  const expected = after.map(({ id }) => id)
  for (const { until, ids } of listeners) {
    await until(() => ids().length >= 40)
    expect(ids()).toEqual(expected)
  }

  const goingOn = listenTo(ports[1]!, builder, {
    'last-event-id': listeners[0]!.told.find(({ id }) => id !== undefined)!.id!,
  })
  const firstCount = listeners[0]!.told.find(({ id }) => id !== undefined)!.data.entries!.length
  await goingOn.until(() => goingOn.ids().length >= 40 - firstCount)
  expect(goingOn.ids()).toEqual(expected.slice(firstCount))

  // Streams do not hold up the stop: else it would never come.
  await Promise.all([shop.app.close(), other.close()])
  for (const listener of [...listeners, goingOn]) {
    await listener.until(listener.closed)
    expect(listener.told.at(-1)!.event).toBe('stopping')
  }
  await second.close()
  await shop.close()
})

test('a stream needs a session, ends with it, and one session has only so many', async () => {
  const shop = await testShop()
  await shop.app.listen({ port: 0, host: '127.0.0.1' })
  const { port } = shop.app.server.address() as { port: number }
  const stranger = listenTo(port, { ...shop.owner, cookie: 'gripbook=guessed' })
  await stranger.until(stranger.closed)
  expect(stranger.status()).toBe(401)
  const foreign = listenTo(port, shop.owner, {}, '?after=nonsense')
  await foreign.until(foreign.closed)
  expect(foreign.status()).toBe(410)

  const builder = await shop.signIn('builder')
  const streams = Array.from({ length: 9 }, () => listenTo(port, builder))
  await Promise.all(streams.map(({ until, status }) => until(() => status() !== 0)))
  expect(streams.map(({ status }) => status()).sort()).toEqual([...Array(8).fill(200), 429])
  await builder.ask('DELETE', '/api/session')
  await shop.owner.ask('POST', '/api/entries', { entries: chainOf(shop.owner).some(1) })
  await Promise.all(streams.map(({ until, closed }) => until(closed)))
  expect(
    streams.flatMap(({ ids }) => ids()),
    'nothing is told after the session has ended',
  ).toEqual([])
  await shop.close()
})
