/** The tightening of a face in a real browser: a cover drawn on the photograph, its order worked out, stepped through, compared, used, kept. */
import type { Face } from '@gripbook/engine'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { type Bench, photograph } from './bench.ts'
import { markHoles, newFace, openPractice, takeIn } from './hands.ts'
import { seedUnit } from './seed.ts'
import { withBench } from './withBench.ts'

let bench: Bench
withBench((opened) => {
  bench = opened
})

const ID = '00000000-0000-4000-8000-0000000000f1'

async function tapAt(page: Page, points: readonly (readonly [number, number])[]): Promise<void> {
  const box = (await page.locator('.stage__sheet').boundingBox())!
  for (const [x, y] of points) await page.mouse.click(box.x + box.width * x, box.y + box.height * y)
}

const worked = (page: Page) => page.locator('.plan-progress').waitFor({ state: 'detached', timeout: 120_000 })
const lead = (page: Page) => page.locator('.plan-lead')

test('from bare marks to an order in use: scale, cover, steps, compared, still there without signal', async () => {
  const { context, page } = await bench.openPaired('phone')
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
  await takeIn(page, 'Pump of the press')
  await newFace(page, 'Pump cover')
  await page
    .getByTestId('camera')
    .first()
    .setInputFiles({ name: 'face.jpg', mimeType: 'image/jpeg', buffer: await photograph(1600, 1200) })
  await page.locator('.stage__photograph').waitFor()
  await markHoles(page, 15)
  await page.getByRole('link', { name: 'Tightening' }).click()

  // millimetres first
  await page.getByRole('heading', { name: 'How large is the face?' }).waitFor()
  await tapAt(page, [
    [0.2, 0.5],
    [0.8, 0.5],
  ])
  await page.getByLabel('Distance between them').fill('180')
  await page.getByRole('button', { name: 'Keep', exact: true }).click()

  // what is lacking is told, and nothing typed is lost over a reload
  await page.getByRole('button', { name: 'Work out the order' }).click()
  await page.getByText('Still to do: the outline, the thickness, and what lies in the joint.').waitFor()
  await page.getByLabel('Thickness of the cover').fill('8')
  await page.getByRole('button', { name: 'Take it from the marks' }).click()
  await expect.poll(() => page.getByText('one and a half of the bolt’s size').count()).toBe(1)
  await expect.poll(() => page.getByRole('button', { name: /^Corner \d of 4$/ }).count()).toBe(4)
  await page.reload()
  await page.getByText('4 corners, 218 mm × 108 mm').waitFor()
  await expect.poll(() => page.getByLabel('Thickness of the cover').inputValue()).toBe('8')
  await page.getByRole('radio', { name: 'Paper gasket' }).check()
  await page.getByText('15 to 28 N/mm³ at 1 mm').waitFor()
  await page.getByRole('button', { name: 'Work out the order' }).click()

  await lead(page).waitFor({ timeout: 120_000 })
  await worked(page)
  await expect.poll(() => page.getByText('It promises no kilonewtons').count()).toBe(1)
  await expect.poll(() => page.getByText('why shops work from the middle outward').count()).toBe(1)

  // step by step
  await page.getByRole('radio', { name: 'Steps' }).check()
  await page.getByText('Pass 1 of 3, turn 1 of 15').waitFor()
  await page.getByRole('button', { name: 'Next' }).click()
  await page.getByText('Pass 1 of 3, turn 2 of 15').waitFor()
  await page.locator('.bar--now').waitFor()
  await expect.poll(() => page.locator('.bar--now .bar__change').textContent()).toMatch(/^▲ /)
  await page.getByRole('slider', { name: 'Step' }).focus()
  await page.keyboard.press('End')
  await page.getByText('Pass 3 of 3, turn 15 of 15').waitFor()
  await page.getByRole('radio', { name: 'Pressure and gaps' }).check()
  await page.getByRole('heading', { name: 'What these figures are' }).waitFor()
  await page.getByText('Pressure in the joint, MPa').waitFor({ timeout: 60_000 })
  await expect
    .poll(() => page.locator('.map-band').evaluateAll((bands) => bands.some((band) => band.getAttribute('d') !== '')))
    .toBe(true)

  // two side by side
  await page.getByRole('radio', { name: 'Compare' }).check()
  await page.getByLabel('First order').selectOption({ index: 0 })
  await page.getByLabel('Second order').selectOption({ index: 1 })
  await expect.poll(() => page.getByRole('row').count()).toBeGreaterThan(5)
  await expect.poll(() => page.locator('.compare__loads .bar').count()).toBe(30)

  await page.getByRole('button', { name: 'Use this order' }).click()
  await page.getByText(/is the order of this face\.$/).waitFor()
  await page.getByRole('button', { name: 'In use' }).waitFor()
  await page.getByRole('button', { name: /Sent/ }).waitFor({ timeout: 60_000 })
  const unit = /\/unit\/([0-9a-f-]{36})/.exec(page.url())![1]!
  // How sending stands is told a moment after an entry is written: "Sent" may still be of the entries before it.
  const chosen = async () => (await bench.shop.store.ofUnit(unit)).filter(({ type }) => type === 'order-chosen')
  await expect.poll(async () => (await chosen()).length).toBe(1)
  const kept = await bench.shop.store.ofUnit(unit)
  const described = kept.filter(({ type, body }) => type === 'face-described' && 'cover' in body)
  expect(described).toHaveLength(1)
  expect((described[0]!.body.cover as Face['cover'])!.outline).toHaveLength(4)
  expect(await chosen()).toHaveLength(1)

  // nothing answers any more: the order is there, and is worked out anew
  await bench.cut()
  await page.reload()
  await page.getByText(/^In use since/).waitFor({ timeout: 120_000 })
  await worked(page)
  expect(await lead(page).count()).toBe(1)
  await bench.mend()
  await context.close()
})

const square: [number, number][] = [
  [0, 0],
  [120, 0],
  [120, 80],
  [0, 80],
]

const seeded = (cover: Face['cover']): Face => ({
  id: 'pan',
  name: 'Pan',
  torque: 10,
  holes: (
    [
      [10, 10],
      [60, 10],
      [110, 10],
      [110, 70],
      [60, 70],
      [10, 70],
    ] as const
  ).map(([x, y], i) => ({ id: String(i + 1), thread: 'M6', at: [x, y] })),
  bed: { stiffness: 5 },
  snug: true,
  ...(cover === undefined ? {} : { cover }),
})

test('a cover that leaves a bolt out is told in words, put right by dragging, and nothing is asked twice', async () => {
  const { context, page } = await bench.open('desk')
  const outline: [number, number][] = [
    [0, 0],
    [80, 0],
    [80, 80],
    [0, 80],
  ]
  await seedUnit(page, ID, { gripbook: 'unit/1', name: 'Pump', faces: [seeded({ outline, thickness: 6 })] })
  await page.goto(`${bench.url}/unit/${ID}/face/pan/tightening`)
  await page.getByRole('heading', { name: 'It cannot be worked out yet' }).waitFor()
  await page.getByText('Hole 3: this hole lies outside the cover').waitFor()
  await page.getByRole('button', { name: 'Change the cover' }).click()
  await page.locator('.cover-form').getByText('Hole 4: this hole lies outside the cover').waitFor()
  await expect.poll(() => page.getByLabel('Thickness of the cover').inputValue()).toBe('6')
  await expect.poll(() => page.getByLabel('Stiffness of the joint').inputValue()).toBe('5')

  await page.getByRole('button', { name: 'Change the corners' }).click()
  const move = async (corner: number) => {
    const box = (await page.getByRole('button', { name: `Corner ${corner} of 4` }).boundingBox())!
    const sheet = (await page.locator('.stage__sheet').boundingBox())!
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
    await page.mouse.down()
    await page.mouse.move(sheet.x + sheet.width - 6, box.y + box.height / 2, { steps: 6 })
    await page.mouse.up()
  }
  await move(2)
  await move(3)
  await page.getByRole('button', { name: 'Done', exact: true }).click()
  await expect.poll(() => page.getByText('lies outside the cover').count()).toBe(0)
  await page.getByRole('button', { name: 'Keep and work it out' }).click()
  await lead(page).waitFor({ timeout: 60_000 })
  await worked(page)
  await expect.poll(() => page.getByText('The material was not stated').count()).toBe(0)

  // undone by the notice: the faulty cover is there again
  await page.getByRole('status').getByRole('button', { name: 'Undo' }).click()
  await page.getByRole('heading', { name: 'It cannot be worked out yet' }).waitFor()
  await context.close()
})

test('an outline by keyboard alone, a hollow, a valve line and the manual’s order by taps', async () => {
  const { context, page } = await bench.open('tablet')
  await seedUnit(page, ID, { gripbook: 'unit/1', name: 'Pump', faces: [seeded({ outline: square, thickness: 6 })] })
  await page.goto(`${bench.url}/unit/${ID}/face/pan/tightening`)
  await lead(page).waitFor({ timeout: 60_000 })
  await page.getByRole('button', { name: 'Cover', exact: true }).click()
  await page.getByRole('button', { name: 'Change the corners' }).click()
  const corner = page.getByRole('button', { name: 'Corner 1 of 4' })
  await corner.focus()
  const before = (await corner.boundingBox())!
  await page.keyboard.press('Shift+ArrowRight')
  await expect.poll(async () => (await corner.boundingBox())!.x - before.x).toBeGreaterThan(8)
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect.poll(async () => (await corner.boundingBox())!.x - before.x).toBeLessThan(1)
  await page.getByRole('button', { name: 'Done', exact: true }).click()

  await page.getByText('Openings, hollows, valve lines').click()
  await page.getByRole('button', { name: 'Draw a hollow' }).click()
  await tapAt(page, [
    [0.4, 0.4],
    [0.6, 0.4],
  ])
  await page.getByRole('button', { name: 'Done', exact: true }).click()
  await page.getByText('At least 3 corners').waitFor()
  await tapAt(page, [[0.6, 0.6]])
  await page.getByText('3 corners').waitFor()
  await page.getByRole('button', { name: 'Done', exact: true }).click()
  await page.getByRole('button', { name: 'Draw a valve line' }).click()
  await tapAt(page, [
    [0.3, 0.5],
    [0.7, 0.5],
  ])
  await page.getByRole('button', { name: 'Done', exact: true }).click()
  await page.getByRole('button', { name: 'Keep and work it out' }).click()
  await page.getByText('Name it: the answer speaks of it.').waitFor()
  await page.getByLabel('What Line 1 is').fill('Regulator')

  await page.getByRole('button', { name: 'Enter the manual’s order' }).click()
  for (const hole of ['2', '5', '1', '4', '3', '6']) await page.locator(`[data-hole="${hole}"]`).click()
  await page.getByText('6 of 6 holes').waitFor()
  await expect.poll(() => page.getByLabel('Pass 1: holes in their order').inputValue()).toBe('2, 5, 1, 4, 3, 6')
  await page.getByRole('button', { name: 'Keep and work it out' }).click()
  await page.getByRole('heading', { name: 'The manual’s order rules.' }).waitFor({ timeout: 60_000 })
  await worked(page)
  expect(await lead(page).textContent()).toContain('2 → 5 → 1 → 4 → 3 → 6')
  await page.getByRole('radio', { name: 'Compare' }).check()
  await page.getByRole('rowheader', { name: 'Bow along Regulator' }).waitFor()
  await context.close()
})

test('the practice unit shows a newcomer an order at once', async () => {
  const { context, page } = await bench.open('phone')
  const unit = await openPractice(page)
  await page.goto(`${unit}/face/pump-cover`)
  await page.getByRole('link', { name: 'Tightening' }).click()
  await page.getByRole('heading', { name: 'The manual’s order rules.' }).waitFor({ timeout: 60_000 })
  await worked(page)
  await page.getByRole('button', { name: 'Hole 5, turn 2 of 8' }).first().waitFor()
  await context.close()
})

test('a long search leaves the page free, is told in words, stopped and gone on with', async () => {
  const { context, page } = await bench.open('desk')
  const holes = Array.from({ length: 24 }, (_, i) => ({
    id: String(i + 1),
    thread: 'M6',
    at: [10 + (i % 6) * 40, 10 + Math.floor(i / 6) * 40] as [number, number],
  }))
  const outline: [number, number][] = [
    [0, 0],
    [220, 0],
    [220, 140],
    [0, 140],
  ]
  const face = { ...seeded({ outline, thickness: 10 }), holes }
  await seedUnit(page, ID, { gripbook: 'unit/1', name: 'Pump', faces: [face] })
  await page.goto(`${bench.url}/unit/${ID}/face/pan/tightening`)
  await page.getByRole('progressbar', { name: 'How far it is' }).waitFor()
  // the patterns are there while the search goes on
  await lead(page).waitFor({ timeout: 120_000 })
  await page.getByText('Searching for a better order').waitFor({ timeout: 120_000 })
  await page.getByRole('radio', { name: 'Steps' }).check()
  await page.getByRole('button', { name: 'Next' }).click()
  await page.getByText('turn 2 of 24').waitFor()
  await page.getByRole('button', { name: 'Stop' }).click()
  await page.getByText('Stopped. What was worked out until then is shown.').waitFor()
  await page.getByText('turn 2 of 24').waitFor()
  await page.getByRole('button', { name: 'Go on searching' }).click()
  await worked(page)
  await page.getByRole('radio', { name: 'Order', exact: true }).check()
  await page.getByText('Found by search').waitFor()
  await context.close()
})
