/** The face in a real browser: marks by finger, mouse and keyboard, verdicts while entries come in, pictures of all sorts. */

import { readFileSync } from 'node:fs'
import type { Unit } from '@gripbook/engine'
import { boltPlaced } from '@gripbook/record'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { generateUnit } from '../../packages/engine/src/placement/testing/generateUnit.ts'
import { type Bench, photograph, type SizeName } from './bench.ts'
import { seedUnit } from './seed.ts'
import { withBench } from './withBench.ts'

let bench: Bench
withBench((opened) => {
  bench = opened
})

const ID = '00000000-0000-4000-8000-0000000000b1'

/** A unit with one face and nothing on it. */
async function bareFace(size: SizeName): Promise<Page> {
  const { page } = await bench.open(size)
  await seedUnit(page, ID, { gripbook: 'unit/1', name: 'Pump', faces: [{ id: 'pan', name: 'Pan', holes: [] }] })
  await page.goto(`${bench.url}/unit/${ID}/face/pan`)
  await page.getByRole('heading', { name: 'Photograph this face' }).waitFor()
  return page
}

const marks = (page: Page) => page.locator('.mark')

/** Takes a photograph in through the input that the camera button opens. */
async function take(page: Page, bytes: Buffer, name = 'face.jpg', mimeType = 'image/jpeg'): Promise<void> {
  await page.getByTestId('camera').first().setInputFiles({ name, mimeType, buffer: bytes })
  await page.locator('.stage__photograph').waitFor()
}

async function tapAt(page: Page, x: number, y: number): Promise<void> {
  const box = (await page.locator('.stage__sheet').boundingBox())!
  await page.mouse.click(box.x + box.width * x, box.y + box.height * y)
}

test('holes are tapped on the photograph, numbered in order, moved by drag and by key, undone and struck out', async () => {
  const page = await bareFace('phone')
  await take(page, await photograph(1600, 1200))
  // a face without holes has nothing that could be gone
  await page.getByRole('heading', { name: 'No holes yet' }).waitFor()
  expect(await page.getByText(/could not be computed with/).count()).toBe(0)
  await page.getByRole('button', { name: 'Mark holes' }).click()
  for (const [x, y] of [
    [0.2, 0.25],
    [0.4, 0.25],
    [0.6, 0.25],
  ] as const)
    await tapAt(page, x, y)
  await expect.poll(() => marks(page).count()).toBe(3)
  expect(await page.getByText('3 holes marked').count()).toBe(1)

  // by drag
  const before = (await marks(page).nth(2).boundingBox())!
  await page.mouse.move(before.x + before.width / 2, before.y + before.height / 2)
  await page.mouse.down()
  await page.mouse.move(before.x + 60, before.y + 50, { steps: 5 })
  expect(await page.locator('.magnifier').count()).toBe(1)
  await page.mouse.up()
  await expect.poll(async () => (await marks(page).nth(2).boundingBox())!.y - before.y).toBeGreaterThan(20)

  // by key
  await marks(page).nth(0).focus()
  const there = (await marks(page).nth(0).boundingBox())!
  await page.keyboard.press('Shift+ArrowRight')
  await expect.poll(async () => (await marks(page).nth(0).boundingBox())!.x - there.x).toBeCloseTo(10, 0)
  await page.getByRole('button', { name: 'Mark a hole in the middle of the picture' }).focus()
  await page.keyboard.press('Enter')
  await expect.poll(() => marks(page).count()).toBe(4)

  await page.getByRole('button', { name: 'Undo the last' }).click()
  await expect.poll(() => marks(page).count()).toBe(3)
  // the number that was undone is not given again
  await tapAt(page, 0.8, 0.25)
  await expect.poll(() => marks(page).last().textContent()).toContain('5')
  await page.getByRole('button', { name: 'Done' }).click()
  await page.locator('[data-hole="2"]').click()
  await page.getByRole('button', { name: 'Strike this hole out' }).click()
  await expect.poll(() => marks(page).count()).toBe(3)
  await page.getByRole('status').getByRole('button', { name: 'Undo' }).click()
  await expect.poll(() => marks(page).count()).toBe(4)
  await page.context().close()
})

test('in gloves on the smallest phone one key brings the picture nearer, and the whole of it back', async () => {
  const { context, page } = await bench.open('phone', { viewport: { width: 320, height: 568 } })
  await page.evaluate(() => {
    const kept = JSON.parse(localStorage.getItem('gripbook settings')!) as object
    localStorage.setItem('gripbook settings', JSON.stringify({ ...kept, gloves: true }))
  })
  const holes = [10, 190].map((y, i) => ({ id: String(i + 1), thread: 'M6', at: [40, y] as [number, number] }))
  await seedUnit(page, ID, { gripbook: 'unit/1', name: 'Pump', faces: [{ id: 'pan', name: 'Pan', holes }] })
  await page.goto(`${bench.url}/unit/${ID}/face/pan`)
  await marks(page).nth(1).waitFor()
  const wide = async () => (await page.locator('.stage__sheet').boundingBox())!.width
  const whole = await wide()
  const key = page.getByRole('button', { name: 'Nearer, and the whole again' })
  let before = whole
  for (let i = 0; i < 2; i++) {
    await key.click()
    await expect.poll(wide).toBeGreaterThan(before * 1.5)
    before = await wide()
  }
  await key.click()
  await expect.poll(wide).toBeCloseTo(whole, 0)

  // a hole that is opened moves the picture only as long as it is open
  const place = async () => (await page.locator('.stage__sheet').boundingBox())!
  const there = await place()
  await page.locator('[data-hole="2"]').click()
  await page.getByRole('heading', { name: 'Hole 2', exact: true }).waitFor()
  await page.locator('.hole').getByRole('button', { name: 'Close' }).click()
  await expect.poll(place).toEqual(there)
  await context.close()
})

test('a bolt that had to change is told as changed once the right one was put there, and as it is while another was', async () => {
  const unit = JSON.parse(readFileSync(new URL('../../demo/yard-loader.json', import.meta.url), 'utf8')) as Unit
  const face = unit.faces[0]!.id
  for (const [kind, said] of [
    ['c35', /^Found: .*×45, .*×35 is in now/],
    ['c45', /^Found: .*×45, must change/],
  ] as const) {
    const { context, page } = await bench.open('phone')
    await seedUnit(page, ID, unit, { more: [boltPlaced({ face, hole: '4', kind })] })
    await page.goto(`${bench.url}/unit/${ID}/face/${face}/hole/4`)
    await page.locator('.as-found', { hasText: said }).waitFor()
    await context.close()
  }
})

test('a finger that holds still brings the magnifier, and the hole is where it lets go', async () => {
  const page = await bareFace('phone')
  await take(page, await photograph(1600, 1200))
  await page.getByRole('button', { name: 'Mark holes' }).click()
  const box = (await page.locator('.stage__sheet').boundingBox())!
  const touch = await page.context().newCDPSession(page)
  const at = (x: number, y: number) => [{ x: box.x + box.width * x, y: box.y + box.height * y }]
  await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(0.5, 0.5) })
  await page.locator('.magnifier').waitFor()
  await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(0.7, 0.6) })
  await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] })
  await expect.poll(() => marks(page).count()).toBe(1)
  const mark = (await marks(page).first().boundingBox())!
  expect(mark.x + mark.width / 2).toBeCloseTo(box.x + box.width * 0.7, 0)
  expect(mark.y + mark.height / 2).toBeCloseTo(box.y + box.height * 0.6, 0)
  await page.context().close()
})

test('a photograph turned by its tag stands upright, and its marks with it', async () => {
  const page = await bareFace('phone')
  await take(page, await photograph(1600, 1200, 6))
  const box = (await page.locator('.stage__sheet').boundingBox())!
  expect(box.width / box.height).toBeCloseTo(1200 / 1600, 2)
  await page.context().close()
})

test('a photograph of 48 megapixels is kept and shown, and holes are marked on it', async () => {
  const page = await bareFace('phone')
  await take(page, await photograph(8000, 6000))
  await page.getByRole('button', { name: 'Mark holes' }).click()
  await tapAt(page, 0.4, 0.5)
  await expect.poll(() => marks(page).count()).toBe(1)
  await page.context().close()
})

test('a file that is no picture is refused in words, and the page stays as it was', async () => {
  const page = await bareFace('phone')
  await page
    .getByTestId('files')
    .first()
    .setInputFiles({ name: 'notes.heic', mimeType: 'image/heic', buffer: Buffer.from('not a picture') })
  await page.getByText('This browser cannot read notes.heic').waitFor()
  expect(await page.getByRole('heading', { name: 'Photograph this face' }).count()).toBe(1)
  await page.context().close()
})

test('without a photograph a face is worked on all the same', async () => {
  const page = await bareFace('desk')
  await page.getByRole('button', { name: 'Mark holes without a photograph' }).click()
  await tapAt(page, 0.3, 0.4)
  await tapAt(page, 0.6, 0.4)
  await expect.poll(() => marks(page).count()).toBe(2)
  await page.context().close()
})

test('the scale comes from two points and their distance', async () => {
  const page = await bareFace('desk')
  await take(page, await photograph(1600, 1200))
  await page.getByText('Another photograph').click()
  await page.getByRole('button', { name: 'Set the scale' }).click()
  await tapAt(page, 0.25, 0.5)
  await tapAt(page, 0.75, 0.5)
  await page.getByLabel('Distance between them').fill('100')
  await page.keyboard.press('Enter')
  await page.getByText(/Scale set: one millimetre is (7\.9|8\.0)\d? of the picture/).waitFor()
  await page.context().close()
})

test('120 holes: dots that come nearer, a tap means the nearest, names in other scripts', async () => {
  const { unit } = generateUnit(3, { holes: 120, kinds: 8, coupled: false, stated: true, unread: 0.1 })
  unit.name = 'علبة تروس اللودر'
  const face = unit.faces[0]!
  face.name = '油圧制御ブロック'
  face.holes.forEach((hole, i) => {
    hole.at = [12 + (i % 15) * 18, 10 + Math.floor(i / 15) * 22]
  })
  const { page } = await bench.open('phone')
  await seedUnit(page, ID, unit)
  await page.goto(`${bench.url}/unit/${ID}/face/${encodeURIComponent(face.id)}`)
  await page.locator('.mark--settled').first().waitFor()
  expect(await marks(page).count()).toBe(120)
  expect(await page.locator('.stage--dots').count()).toBe(1)
  expect(await page.getByRole('heading', { name: '油圧制御ブロック' }).count()).toBe(1)
  const target = page.locator(`[data-hole="${face.holes[37]!.id}"]`)
  const box = (await target.boundingBox())!
  await page.touchscreen.tap(box.x + box.width / 2 + 3, box.y + box.height / 2 - 2)
  await page.getByRole('heading', { name: `Hole ${face.holes[37]!.id}`, exact: true }).waitFor()
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
  await page.context().close()
})
