/** The whole way of a rebuilder, on a phone and on a desk, with nothing but the page: from a new unit to the list of swaps. */
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { type Bench, photograph, type SizeName } from './bench.ts'
import { layOut, markHoles, newFace, noteFound, read, takeIn } from './hands.ts'
import { withBench } from './withBench.ts'

let bench: Bench
withBench((opened) => {
  bench = opened
})

/** 14 holes: eight take M6×30, three M6×45 and three M6×60; the bolts of 4 and 9 were put into each other's hole. */
const FOUND: Record<string, string> = {
  ...Object.fromEntries(['1', '3', '6', '8', '10', '11', '13', '14'].map((hole) => [hole, 'M6×30'])),
  ...Object.fromEntries(['2', '5', '4'].map((hole) => [hole, 'M6×45'])),
  ...Object.fromEntries(['9', '7', '12'].map((hole) => [hole, 'M6×60'])),
}
/** Six grips settle all: what is longer than a bolt cannot be clamped by it, and the counts give out the rest. */
const GRIPS: readonly (readonly [string, string])[] = [
  ['2', '31.0'],
  ['4', '46.1'],
  ['5', '31.2'],
  ['7', '46.0'],
  ['9', '30.9'],
  ['12', '45.9'],
]

async function wholeWay(page: Page): Promise<void> {
  await takeIn(page, 'Gearbox of the yard loader')
  await newFace(page, 'Control block')
  await page
    .getByTestId('camera')
    .first()
    .setInputFiles({ name: 'face.jpg', mimeType: 'image/jpeg', buffer: await photograph(1600, 1200) })
  await page.locator('.stage__photograph').waitFor()
  await markHoles(page, 14)
  await layOut(page, [
    { length: '30', count: 8 },
    { length: '45', count: 3 },
    { length: '60', count: 3 },
  ])
  await noteFound(page, FOUND)
  await read(page, GRIPS)
}

test.each<SizeName>(['phone', 'desk'])(
  'on a %s: from a new unit to all settled and the list of swaps',
  async (size) => {
    const { context, page } = await bench.open(size)
    await wholeWay(page)
    await page.getByText('14 settled', { exact: true }).waitFor()
    expect(await page.locator('.mark--settled').count()).toBe(14)
    await page.getByText('Swap 4 and 9', { exact: true }).first().waitFor()
    expect(await page.locator('.task__hands li').allTextContents()).toEqual([
      'Take M6×45 out of 4',
      'Take M6×60 out of 9',
      'M6×60 from 9 into 4',
      'M6×45 from 4 into 9',
    ])
    // why is one tap away, and the hole opens to its drawing
    await page.getByRole('button', { name: /^Why/ }).first().click()
    await page.getByRole('button', { name: 'Hole 4', exact: true }).click()
    await page.locator('.drawing--section svg').waitFor()
    expect(await page.getByText('M6×60 belongs here').count()).toBe(1)
    await context.close()
  },
)
