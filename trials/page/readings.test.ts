/** Readings as fast as a gauge types, in any unit. */
import { expect, test } from 'vitest'
import type { Bench } from './bench.ts'
import { openPractice } from './hands.ts'
import { seedUnit } from './seed.ts'
import { withBench } from './withBench.ts'

let bench: Bench
withBench((opened) => {
  bench = opened
})

const ID = '00000000-0000-4000-8000-0000000000b2'
const holes = ['1', '2', '3', '4', '5'].map((id) => ({ id, thread: 'M6' }))
const kinds = [
  { id: 'b1', thread: 'M6', length: 30, count: 3 },
  { id: 'b2', thread: 'M6', length: 45, count: 2 },
]

test('a gauge that types figures and Enter in a row fills one hole after the other, with commas and inches too', async () => {
  const { context, page } = await bench.open('phone')
  await seedUnit(page, ID, { gripbook: 'unit/1', faces: [{ id: 'pan', name: 'Pan', holes, kinds }] })
  await page.goto(`${bench.url}/unit/${ID}/face/pan/readings/grip`)
  await page.getByLabel('Grip, Hole 1', { exact: true }).waitFor()
  for (const text of ['20.9', '31,2', '1.221in', '15.05']) {
    await page.keyboard.type(text)
    await page.keyboard.press('Enter')
  }
  for (const [hole, shown] of [
    ['1', '20\\.9'],
    ['2', '31\\.2'],
    ['3', '31'],
    ['4', '15\\.05'],
  ])
    await page.getByRole('button', { name: new RegExp(`^Hole ${hole}, ${shown}`) }).waitFor()
  await page.getByLabel('Grip, Hole 5', { exact: true }).waitFor()
  // what was begun is there after a reload, at its hole, and is not kept until somebody says so
  await page.keyboard.type('99')
  await page.reload()
  const begun = page.getByLabel('Grip, Hole 5', { exact: true })
  await begun.waitFor()
  expect(await begun.inputValue()).toBe('99')
  // also where it was typed first and then said of which hole it is
  await page.getByRole('button', { name: /^Hole 2\b/ }).click()
  const moved = page.getByLabel('Grip, Hole 2', { exact: true })
  await moved.waitFor()
  expect(await moved.inputValue()).toBe('99')
  await page.reload()
  await moved.waitFor()
  expect(await moved.inputValue()).toBe('99')
  await page.getByRole('button', { name: /^Hole 5\b/ }).click()
  await begun.waitFor()
  const ownInstrument = async () => {
    await page.locator('button.instrument').click()
    await page.getByRole('button', { name: 'Add an instrument' }).click()
    return page.getByRole('dialog').getByLabel('Name', { exact: true })
  }
  await (await ownInstrument()).fill('Depth gauge of the other bench')
  await page.reload()
  expect(await (await ownInstrument()).inputValue()).toBe('Depth gauge of the other bench')
  await page.keyboard.press('Escape')
  const grips = await page.evaluate(
    () =>
      new Promise<unknown>((resolve) => {
        const open = indexedDB.open('gripbook')
        open.onsuccess = () => {
          const all = open.result.transaction('entries').objectStore('entries').getAll()
          all.onsuccess = () =>
            resolve(
              (all.result as { text: string }[])
                .map(({ text }) => JSON.parse(text))
                .filter(({ type }) => type === 'reading-taken')
                .map(({ body }) => [body.of.hole, body.value.value, body.value.unit ?? 'mm', body.instrument.name]),
            )
        }
      }),
  )
  expect(grips).toEqual([
    ['1', 20.9, 'mm', expect.any(String)],
    ['2', 31.2, 'mm', expect.any(String)],
    ['3', 1.221, 'in', expect.any(String)],
    ['4', 15.05, 'mm', expect.any(String)],
  ])
  await context.close()
})

test('turns that were begun come back at the hole and bolt that they were last said of; what was begun at a hole that is gone becomes no figure of another', async () => {
  const { context, page } = await bench.open('phone')
  await seedUnit(page, ID, { gripbook: 'unit/1', faces: [{ id: 'pan', name: 'Pan', holes, kinds }] })
  const place = `${bench.url}/unit/${ID}/face/pan/readings`
  await page.goto(`${place}/tries`)
  const field = page.getByRole('textbox', { name: /turns/i })
  await field.waitFor()
  await page.getByRole('radio', { name: 'M6×45' }).check({ force: true })
  await field.focus()
  await page.keyboard.type('8')
  await page.getByRole('button', { name: /^Hole 3\b/ }).click()
  await page.getByRole('radio', { name: 'M6×45' }).check({ force: true })
  const said = page.locator('.station__now', { hasText: 'M6×45 in hole 3' })
  await said.waitFor()
  await page.reload()
  await said.waitFor()
  expect(await field.inputValue()).toBe('8')

  await page.evaluate((id) => {
    localStorage.setItem(`gripbook typed reading ${id} pan`, JSON.stringify({ text: '15', of: 'grip', spot: 'hole 9' }))
  }, ID)
  await page.goto(`${place}/grip`)
  const first = page.getByLabel('Grip, Hole 1', { exact: true })
  await first.waitFor()
  expect(await first.inputValue()).toBe('')
  await context.close()
})

test('in gloves on a phone a reading that looks like a slip is seen beside the keys, and taken back from there', async () => {
  const { context, page } = await bench.open('phone')
  await page.evaluate(() => {
    const kept = JSON.parse(localStorage.getItem('gripbook settings')!) as object
    localStorage.setItem('gripbook settings', JSON.stringify({ ...kept, gloves: true }))
  })
  const read = holes.map((hole, i) => (i < 3 ? { ...hole, grip: 15 } : hole))
  await seedUnit(page, ID, { gripbook: 'unit/1', faces: [{ id: 'pan', name: 'Pan', holes: read, kinds }] })
  await page.goto(`${bench.url}/unit/${ID}/face/pan/readings/grip`)
  await page.getByLabel('Grip, Hole 4', { exact: true }).waitFor()
  await page.keyboard.type('150')
  await page.keyboard.press('Enter')
  const last = page.getByRole('button', { name: /^Grip of hole 4: 150 .* Look at it again\.$/ })
  await last.waitFor()
  for (const seen of [last, page.locator('.pad__keep')])
    expect(
      await seen.evaluate((element) => {
        const { left, top, width, height } = element.getBoundingClientRect()
        const hit = document.elementFromPoint(left + width / 2, top + height / 2)
        return hit !== null && element.contains(hit) && top >= 0 && top + height <= innerHeight
      }),
    ).toBe(true)
  await last.click()
  await page
    .getByRole('dialog')
    .getByText(/about ten times off/)
    .waitFor()
  await page.getByRole('dialog').getByRole('button', { name: 'Undo' }).click()
  await page.getByLabel('Grip, Hole 4', { exact: true }).waitFor()
  await context.close()
})

test('deeper than: two taps make a comparison, which is undone by one more', async () => {
  const { context, page } = await bench.open('phone')
  const unit = await openPractice(page)
  await page.goto(`${unit}/face/pump-cover/readings/ranks`)
  await page.getByRole('button', { name: /^Hole 4\b/ }).click()
  await page.getByRole('button', { name: /^Hole 1\b/ }).click()
  await page.getByRole('button', { name: 'Undo: Hole 4 has more grip than hole 1' }).click()
  await page.getByText('Nothing compared yet.').waitFor()
  await context.close()
})
