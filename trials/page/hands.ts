/** What a person does on the page, step by step: for trials that need a unit with something in it. */
import type { Page } from 'playwright-core'

/** From the list of units: a new one, by its name. */
export async function takeIn(page: Page, name: string): Promise<void> {
  await page.getByRole('link', { name: 'Take in a unit' }).click()
  await page.getByLabel('What is it?').fill(name)
  await page.getByRole('button', { name: 'Take in', exact: true }).click()
  await page.getByRole('heading', { level: 1, name }).waitFor()
}

/** On the unit's page: a face, by its name, with the manual's torque where it is given; the page goes to it. */
export async function newFace(page: Page, name: string, torque?: string): Promise<void> {
  await page.getByRole('button', { name: 'Add a face' }).click()
  await page.getByRole('dialog').getByLabel('What is it called?').fill(name)
  if (torque !== undefined) await page.getByRole('dialog').getByLabel('Torque from the manual').fill(torque)
  await page.getByRole('dialog').getByRole('button', { name: 'Add the face' }).click()
  await page.getByRole('heading', { level: 1, name }).waitFor()
}

/** On a face while marking: taps on places in rows of five, by their numbers from 0. */
export async function tapPlaces(page: Page, places: readonly number[]): Promise<void> {
  const box = (await page.locator('.stage__sheet').boundingBox())!
  for (const i of places)
    await page.mouse.click(box.x + (box.width * ((i % 5) + 1)) / 6, box.y + (box.height * (Math.floor(i / 5) + 1)) / 5)
}

/** On a face: holes of thread M6, so many in rows of five, or at these places of the rows. */
export async function markHoles(page: Page, where: number | readonly number[]): Promise<void> {
  const places = typeof where === 'number' ? Array.from({ length: where }, (_, i) => i) : where
  await page.getByRole('button', { name: 'Mark holes' }).click()
  await tapPlaces(page, places)
  await page.getByText(`${places.length} holes marked`).waitFor()
  await page.getByRole('button', { name: 'Done' }).click()
}

/** On a face: kinds of M6 bolts by length and count; ends on the face. */
export async function layOut(page: Page, kinds: readonly { length: string; count: number }[]): Promise<void> {
  await page.getByRole('link', { name: 'Tray' }).click()
  await page.getByRole('button', { name: 'Add a kind' }).click()
  const sheet = page.getByRole('dialog')
  for (const [i, { length, count }] of kinds.entries()) {
    await sheet.getByLabel('Length', { exact: true }).fill(length)
    await sheet.getByLabel('How many').fill(String(count))
    const last = i === kinds.length - 1
    await sheet.getByRole('button', { name: last ? 'Keep and close' : 'Keep and next' }).click()
    if (!last) await sheet.getByText(`Kept: M6×${length}`).waitFor()
  }
  await sheet.waitFor({ state: 'detached' })
  await page.getByRole('link', { name: 'Back to the face' }).click()
}

/** On a face: what sat in its holes, kind by kind: the kind is picked once, then its holes are tapped. */
export async function noteFound(page: Page, found: Readonly<Record<string, string>>): Promise<void> {
  await page.getByRole('radio', { name: 'Came out' }).check()
  for (const kind of new Set(Object.values(found))) {
    await page.locator('.face__panel').getByRole('radio', { name: kind, exact: true }).check()
    for (const [hole, its] of Object.entries(found)) {
      if (its !== kind) continue
      await page.locator(`[data-hole="${hole}"]`).click()
      await page.getByText(`Hole ${hole}: ${kind}.`).waitFor()
    }
  }
  await page.getByRole('radio', { name: 'Belongs' }).check()
}

/** On a face: what sat in a hole. */
export async function foundIn(page: Page, hole: string, kind: string): Promise<void> {
  await page.locator(`[data-hole="${hole}"]`).click()
  await page.getByRole('heading', { name: `Hole ${hole}`, exact: true }).waitFor()
  await page.getByRole('radio', { name: kind, exact: true }).check()
  await page.getByText(`Noted for hole ${hole}.`).waitFor()
  await page.locator('.hole').getByRole('button', { name: 'Close' }).click()
  await page.getByRole('heading', { name: `Hole ${hole}`, exact: true }).waitFor({ state: 'detached' })
}

/** On a face: grips of holes, typed as a gauge types them; ends on the face. */
export async function read(page: Page, grips: readonly (readonly [hole: string, text: string])[]): Promise<void> {
  await page.getByRole('link', { name: 'Readings' }).click()
  for (const [hole, text] of grips) {
    await page.getByRole('button', { name: new RegExp(`^Hole ${hole}\\b`) }).click()
    await page.getByLabel(`Grip, Hole ${hole}`, { exact: true }).fill(text)
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: new RegExp(`^Hole ${hole}, ${Number(text)}\\b`) }).waitFor()
  }
  await page.getByRole('link', { name: 'Back to the face' }).click()
}

/** From the list of units: the practice unit; gives the address of its page. */
export async function openPractice(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Open the practice unit' }).click()
  await page.waitForURL(/\/practice\/unit\//, { timeout: 60_000 })
  await page.getByRole('heading', { level: 1 }).waitFor()
  return page.url()
}
