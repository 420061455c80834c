/** A browser that refuses to keep anything, and one that has no room left: told in words, and nothing that was typed is lost. */
import { expect, test } from 'vitest'
import type { Bench } from './bench.ts'
import { openPractice } from './hands.ts'
import { withBench } from './withBench.ts'

let bench: Bench
withBench((opened) => {
  bench = opened
})

test('storage refused: the page says what is wrong and what to do', async () => {
  const context = await bench.browser.newContext()
  await context.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('The user denied permission to access the database.', 'SecurityError')
    }
  })
  const page = await context.newPage()
  await page.goto(bench.url)
  await page.getByRole('heading', { name: 'Gripbook cannot keep anything here' }).waitFor()
  expect(await page.getByText(/private window/).count()).toBe(1)
  expect(await page.getByRole('button', { name: 'Try again' }).count()).toBe(1)
  await context.close()
})

test('storage full: the reading is not kept, the page says so, and the figure stays in its field', async () => {
  const { context, page } = await bench.open('phone')
  const unit = await openPractice(page)
  await page.goto(`${unit}/face/control-block/readings/grip`)
  const field = page.getByLabel('Grip, Hole 11', { exact: true })
  await field.waitFor()
  await page.evaluate(() => {
    const put = IDBObjectStore.prototype.put
    const add = IDBObjectStore.prototype.add
    const full = () => {
      throw new DOMException('no room', 'QuotaExceededError')
    }
    IDBObjectStore.prototype.put = full
    IDBObjectStore.prototype.add = full
    Object.assign(window, {
      roomAgain: () => {
        IDBObjectStore.prototype.put = put
        IDBObjectStore.prototype.add = add
      },
    })
  })
  await field.fill('20.9')
  await page.keyboard.press('Enter')
  await page.getByText(/storage of this device is full/).waitFor()
  // what was typed is there to be kept again
  await page.evaluate(() => (window as unknown as { roomAgain: () => void }).roomAgain())
  await page.getByText('Hole 11: 20.9 was not kept.').waitFor()
  await page.getByRole('button', { name: 'Take it again' }).click()
  await expect.poll(() => field.inputValue()).toBe('20.9')
  await field.press('Enter')
  await page.getByText('18 settled').first().waitFor()
  await context.close()
})
