/** Two devices on one face: each sees what the other does, and what contradicts itself is settled by a person. */
import { expect, test } from 'vitest'
import type { Bench } from './bench.ts'
import { foundIn, layOut, markHoles, newFace, takeIn } from './hands.ts'
import { withBench } from './withBench.ts'

let bench: Bench
withBench((opened) => {
  bench = opened
})

test('a phone and a tablet mark one face; what one does shows on the other', async () => {
  const phone = await bench.openPaired('phone')
  const tablet = await bench.openPaired('tablet')
  await takeIn(phone.page, 'Winch')
  await newFace(phone.page, 'Side cover')
  await phone.page.getByRole('button', { name: 'Mark holes without a photograph' }).click()
  await phone.page.getByRole('button', { name: 'Done' }).click()
  await markHoles(phone.page, 3)
  await tablet.page.goto(phone.page.url())
  await expect.poll(() => tablet.page.locator('.mark').count(), { timeout: 60_000 }).toBe(3)

  await layOut(tablet.page, [
    { length: '30', count: 2 },
    { length: '45', count: 1 },
  ])
  await foundIn(phone.page, '2', 'M6×45')
  await tablet.page.getByRole('radio', { name: 'Came out' }).check()
  await expect
    .poll(() => tablet.page.getByRole('button', { name: 'Hole 2, noted, ×45' }).count(), { timeout: 60_000 })
    .toBe(1)
  await phone.context.close()
  await tablet.context.close()
})

test('two devices that say different things without signal: both are kept, and a person settles it', async () => {
  const phone = await bench.openPaired('phone')
  const tablet = await bench.openPaired('tablet')
  await takeIn(phone.page, 'Hoist')
  await newFace(phone.page, 'End cover')
  await phone.page.getByRole('button', { name: 'Mark holes without a photograph' }).click()
  await phone.page.getByRole('button', { name: 'Done' }).click()
  await markHoles(phone.page, 2)
  await layOut(phone.page, [
    { length: '30', count: 1 },
    { length: '45', count: 1 },
  ])
  await tablet.page.goto(phone.page.url())
  await expect.poll(() => tablet.page.locator('.mark').count(), { timeout: 60_000 }).toBe(2)
  await expect.poll(() => tablet.page.getByText(/2 open/).count(), { timeout: 60_000 }).toBe(1)
  for (const { page } of [phone, tablet]) await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))

  await bench.cut()
  await foundIn(phone.page, '1', 'M6×30')
  await foundIn(tablet.page, '1', 'M6×45')
  await bench.mend()
  for (const { page } of [phone, tablet]) await page.getByRole('button', { name: /Sent/ }).waitFor({ timeout: 90_000 })

  await phone.page.getByRole('link', { name: 'Back to the unit' }).click()
  const differ = phone.page.getByRole('heading', { name: /Two devices say different things/ })
  await differ.waitFor({ timeout: 60_000 })
  await phone.page.getByRole('heading', { name: 'Hole 1 of End cover: what came out of it' }).waitFor()
  await phone.page.getByRole('button', { name: 'M6×30: this holds' }).waitFor()
  await phone.page.getByRole('button', { name: 'M6×45: this holds' }).click()
  await differ.waitFor({ state: 'detached' })
  await phone.context.close()
  await tablet.context.close()
})
