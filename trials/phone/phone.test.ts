/** The device's package in a real browser against the real server on a real PostgreSQL. */
import { fold, sha256OfText, stateHash } from '@gripbook/record'
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { CHROMIUM, FLAGS, openPage, pageScript } from '../../packages/device/src/testing/browser.ts'
import { allSent, status, until } from '../../packages/device/src/testing/trials.ts'
import { buildApp } from '../../packages/server/src/app/app.ts'
import { type TestShop, testShop } from '../../packages/server/src/testing/testShop.ts'

const UNIT = '00000000-0000-4000-8000-0000000000a1'

let shop: TestShop
let browser: Browser
let script: string
let port = 0
beforeEach(({ skip }) => {
  if (CHROMIUM === undefined) skip('Chromium is not installed: apt-get install --no-install-recommends chromium')
})
beforeAll(async () => {
  shop = await testShop()
  await shop.app.listen({ port: 0, host: '127.0.0.1' })
  port = (shop.app.server.address() as { port: number }).port
  if (CHROMIUM === undefined) return
  script = await pageScript()
  browser = await chromium.launch({ executablePath: CHROMIUM, args: FLAGS })
})
afterAll(async () => {
  await browser?.close()
  await shop?.close()
})

type Phone = { context: BrowserContext; page: Page; who: string }

/** A browser of its own; the page comes from the trial, everything else from the server. */
async function unpaired(): Promise<Pick<Phone, 'context' | 'page'>> {
  const context = await browser.newContext()
  const url = `http://localhost:${port}/`
  await context.route(url, (route) =>
    route.fulfill({ contentType: 'text/html', body: '<script type="module" src="/page.js"></script>' }),
  )
  await context.route(`${url}page.js`, (route) => route.fulfill({ contentType: 'text/javascript', body: script }))
  const page = await openPage(context, url)
  await page.evaluate(() => window.trial.open())
  return { context, page }
}

/** The same, paired as someone of this role. */
async function phone(role: 'builder' | 'checker'): Promise<Phone> {
  const { context, page } = await unpaired()
  const code = (await shop.owner.ask('POST', '/api/codes', { name: `A ${role}`, role })).json().code as string
  await page.evaluate((code) => window.trial.device!.pair(code), code)
  const { person } = await status(page)
  return { context, page, who: person!.id }
}

async function notes({ page, who }: Phone, texts: string[]): Promise<void> {
  await page.evaluate(
    async ([unit, who, texts]) => {
      for (const text of texts) await window.trial.note(unit, text, who)
    },
    [UNIT, who, texts] as const,
  )
}

test('two phones work on one unit without signal, and end in the same state as the shop; a photograph arrives clean', async () => {
  const [builder, checker] = [await phone('builder'), await phone('checker')]
  for (const { page } of [builder, checker]) await page.evaluate((unit) => void window.trial.device!.follow(unit), UNIT)
  for (const { context } of [builder, checker]) await context.setOffline(true)
  await notes(builder, ['one', 'two', 'three'])
  await notes(checker, ['four', 'five'])
  const photograph = await builder.page.evaluate(
    async ([unit, who]) => {
      const canvas = new OffscreenCanvas(400, 300)
      canvas.getContext('2d')!.fillRect(10, 10, 200, 100)
      const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.9 })
      const { photograph } = await window.trial.device!.photograph(blob)
      await window.trial.device!.append(unit, who, {
        type: 'photographed',
        version: 1,
        body: { photograph, width: 400, height: 300 },
      })
      return photograph
    },
    [UNIT, builder.who] as const,
  )
  expect((await status(builder.page)).waiting.entries).toBe(4)
  for (const { context } of [builder, checker]) await context.setOffline(false)
  await Promise.all([allSent(builder.page), allSent(checker.page)])
  const kept = await shop.store.ofUnit(UNIT)
  expect(kept.length).toBe(6)
  const expected = stateHash(fold(UNIT, kept), sha256OfText)
  for (const { page } of [builder, checker])
    await until(
      () => page.evaluate((unit) => window.trial.stateHash(unit), UNIT),
      (hash) => hash === expected,
    )
  const seen = await checker.page.evaluate(async (photograph) => {
    const answer = await fetch(`/api/photographs/${photograph}?size=320`)
    const { width, height } = await createImageBitmap(await answer.blob())
    return [answer.status, width, height]
  }, photograph)
  expect(seen).toEqual([200, 320, 240])
})

test('what was written before the pairing is taken after it, for someone new and for someone who is there', async () => {
  const builder = await phone('builder')
  for (const whom of [{ name: 'Someone new', role: 'builder' }, { person: builder.who }]) {
    const unit = crypto.randomUUID()
    const who = crypto.randomUUID()
    const { page } = await unpaired()
    await page.evaluate(([unit, who]) => window.trial.note(unit, 'before there was a shop', who), [unit, who] as const)
    const code = (await shop.owner.ask('POST', '/api/codes', whom)).json().code as string
    const person = await page.evaluate(([code, who]) => window.trial.device!.pair(code, undefined, [who]), [
      code,
      who,
    ] as const)
    await page.evaluate(([unit, who]) => window.trial.note(unit, 'and after', who), [unit, person.id] as const)
    await allSent(page)
    expect((await shop.store.ofUnit(unit)).map((entry) => entry.who)).toEqual([who, person.id])
    expect(person.id === who).toBe('name' in whom)
  }
})

test('a session that the owner ends keeps what waits, and it is sent after pairing again', async () => {
  const builder = await phone('builder')
  await notes(builder, ['before'])
  await allSent(builder.page)
  const sessions = (await shop.owner.ask('GET', '/api/sessions')).json().sessions as {
    id: string
    person: { id: string }
  }[]
  await shop.owner.ask('DELETE', `/api/sessions/${sessions.find(({ person }) => person.id === builder.who)!.id}`)
  await notes(builder, ['while shut out', 'and more'])
  await until(
    () => status(builder.page),
    ({ signedIn }) => signedIn === 'no',
  )
  expect((await status(builder.page)).waiting.entries).toBe(2)
  const code = (await shop.owner.ask('POST', '/api/codes', { person: builder.who })).json().code as string
  await builder.page.evaluate((code) => window.trial.device!.pair(code), code)
  await allSent(builder.page)
  const texts = (await shop.store.ofUnit(UNIT)).filter(({ who }) => who === builder.who).map(({ body }) => body.text)
  expect(texts).toEqual(['before', 'while shut out', 'and more'])
})

test('a server that is stopped and started again is found again', async () => {
  const builder = await phone('builder')
  await notes(builder, ['first'])
  await allSent(builder.page)
  await shop.app.close()
  await notes(builder, ['nobody hears this', 'nor this'])
  await until(
    () => status(builder.page),
    ({ trouble }) => trouble !== null,
  )
  const again = await buildApp(shop.shop, { hosts: () => ['localhost'], requestsPerMinute: 0 })
  await again.listen({ port, host: '127.0.0.1' })
  await allSent(builder.page)
  expect((await shop.store.ofUnit(UNIT)).filter(({ who }) => who === builder.who).length).toBe(3)
  await builder.context.close()
  await again.close()
})
