/** No network from start to end, and the tab killed twice in the middle: everything is there, and it is sent when the shop is back. */
import type { BrowserContext, Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { type Bench, photograph } from './bench.ts'
import { layOut, newFace, read, takeIn, tapPlaces } from './hands.ts'
import { withBench } from './withBench.ts'

let bench: Bench
withBench((opened) => {
  bench = opened
})

/** Kills the tab's process as an empty battery would, and opens the same address in a new one. */
async function killed(context: BrowserContext, page: Page): Promise<Page> {
  const url = page.url()
  const crash = await context.newCDPSession(page)
  const gone = new Promise<void>((resolve) => page.once('crash', () => resolve()))
  void crash.send('Page.crash').catch(() => {})
  await gone
  await page.close()
  const next = await context.newPage()
  next.setDefaultTimeout(60_000)
  await next.goto(url)
  return next
}

test('cut off from the first entry to the last, killed twice, then sent', async () => {
  const { context, page: first } = await bench.openPaired('phone')
  await first.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
  await bench.cut()
  let page = first
  await page.reload()
  await takeIn(page, 'Pump of the press')
  await newFace(page, 'Pump cover')
  await page
    .getByTestId('camera')
    .first()
    .setInputFiles({ name: 'face.jpg', mimeType: 'image/jpeg', buffer: await photograph(1600, 1200) })
  await page.locator('.stage__photograph').waitFor()
  await page.getByRole('button', { name: 'Mark holes' }).click()
  await tapPlaces(page, [0, 1, 2])
  await expect.poll(() => page.locator('.mark').count()).toBe(3)

  page = await killed(context, page)
  await page.locator('.stage__photograph').waitFor()
  await expect.poll(() => page.locator('.mark').count()).toBe(3)
  await page.getByRole('button', { name: 'Mark holes' }).click()
  await tapPlaces(page, [5, 6, 7])
  await page.getByText('6 holes marked').waitFor()
  await page.getByRole('button', { name: 'Done' }).click()
  await layOut(page, [
    { length: '30', count: 3 },
    { length: '45', count: 3 },
  ])

  page = await killed(context, page)
  await page.locator('.mark').first().waitFor()
  await read(page, [
    ['1', '31'],
    ['2', '30.9'],
    ['6', '31.1'],
  ])
  await page.getByText('6 settled', { exact: true }).waitFor()
  expect(await page.getByRole('button', { name: /waiting/ }).count()).toBe(1)

  await bench.mend()
  await page.getByRole('button', { name: /Sent/ }).waitFor({ timeout: 60_000 })
  const unit = /\/unit\/([0-9a-f-]{36})/.exec(page.url())![1]!
  const kept = await bench.shop.store.ofUnit(unit)
  expect(kept.filter(({ type }) => type === 'hole-marked')).toHaveLength(6)
  expect(kept.filter(({ type, body }) => type === 'reading-taken' && 'hole' in (body.of as object))).toHaveLength(3)
  const taken = kept.find(({ type }) => type === 'face-photographed')!.body.photograph as string
  const inShop = await page.evaluate(async (taken) => {
    const answer = await fetch(`/api/photographs/${taken}?size=320`)
    return [answer.status, answer.headers.get('content-type')]
  }, taken)
  expect(inShop).toEqual([200, 'image/jpeg'])
  await context.close()
})
