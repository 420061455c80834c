/** A newer page comes while one is at work: it is offered, not forced, and nothing that was entered is lost over it. */
import { readFile, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import type { Bench } from './bench.ts'
import { takeIn } from './hands.ts'
import { withBench } from './withBench.ts'

let bench: Bench
withBench((opened) => {
  bench = opened
})

test('a newer page is offered while one types, waits until it is wanted, and keeps what was entered', async () => {
  const { context, page } = await bench.open('phone')
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
  await takeIn(page, 'Drop box')

  // A browser takes a service worker for a newer one by its bytes.
  const worker = join(bench.folder, 'sw.js')
  await writeFile(worker, `${await readFile(worker, 'utf8')}\n// a newer page\n`)
  for (const ending of ['.gz', '.br']) await rm(`${worker}${ending}`, { force: true })
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration()
    await registration!.update()
  })
  await page.getByText('A newer Gripbook is here.').waitFor({ timeout: 60_000 })
  expect(await page.getByRole('heading', { level: 1, name: 'Drop box' }).count()).toBe(1)

  const loaded = page.waitForEvent('load')
  await page.getByRole('button', { name: 'Take it now' }).click()
  await loaded
  await page.getByRole('heading', { level: 1, name: 'Drop box' }).waitFor()
  expect(await page.getByText('A newer Gripbook is here.').count()).toBe(0)
  await context.close()
})
