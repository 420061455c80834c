/** What hands do at the bench and at the end of a build, on the page: for the trial of a whole job. */
import type { Page } from 'playwright-core'
import { expect } from 'vitest'

/** On the unit's page: a part that came out at a face; ends on the unit's page. */
export async function partOut(
  page: Page,
  part: { what: string; face: string; hole?: string; wayRound?: string },
): Promise<void> {
  await page.getByRole('link', { name: /^Parts/ }).click()
  await page.getByRole('button', { name: 'A part came out' }).click()
  const sheet = page.getByRole('dialog')
  await sheet.getByRole('radio', { name: part.what, exact: true }).check()
  if (part.wayRound !== undefined) await sheet.getByLabel('Which way round?').fill(part.wayRound)
  await sheet.getByLabel('At which face?').selectOption({ label: part.face })
  if (part.hole !== undefined) await sheet.getByLabel('At which hole?').selectOption(part.hole)
  await sheet.getByRole('button', { name: 'Keep and close' }).click()
  await sheet.waitFor({ state: 'detached' })
  await page.getByRole('link', { name: 'Back to the unit' }).click()
}

/** On the page of the figures: one that the unit has not had yet, read before teardown, and its limit. */
export async function figureBefore(
  page: Page,
  figure: { usual: string; text: string; least: string; most: string; source: string },
): Promise<void> {
  await page.getByRole('button', { name: 'Add a figure' }).click()
  await page.getByRole('dialog').getByRole('button', { name: figure.usual }).click()
  await page.getByRole('dialog').getByRole('button', { name: 'Take it up' }).click()
  await page.getByRole('radio', { name: 'Before teardown' }).check()
  await page.getByRole('button', { name: 'State the limit…' }).click()
  const sheet = page.getByRole('dialog')
  await sheet.getByLabel(/^At least/).fill(figure.least)
  await sheet.getByLabel(/^At most/).fill(figure.most)
  await sheet.getByLabel('Where does the manual say so?').fill(figure.source)
  await sheet.getByRole('button', { name: 'Keep', exact: true }).click()
  await sheet.waitFor({ state: 'detached' })
  await readFigure(page, figure.usual, 'before teardown', figure.text)
}

/** On the page of the figures: one figure, typed as a gauge types it. */
export async function readFigure(page: Page, reading: string, stage: string, text: string): Promise<void> {
  await page.getByLabel(`${reading}, ${stage}`, { exact: true }).fill(text)
  await page.keyboard.press('Enter')
  await page.getByText(`${reading}, ${stage}: ${text}`).first().waitFor()
}

/** On a face whose holes are marked: scale, cover, and the order that is advised; ends on the face. */
export async function orderTaken(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Tightening' }).click()
  await page.getByRole('heading', { name: 'How large is the face?' }).waitFor()
  const box = (await page.locator('.stage__sheet').boundingBox())!
  for (const x of [0.2, 0.8]) await page.mouse.click(box.x + box.width * x, box.y + box.height / 2)
  await page.getByLabel('Distance between them').fill('180')
  await page.getByRole('button', { name: 'Keep', exact: true }).click()
  await page.getByLabel('Thickness of the cover').fill('8')
  await page.getByRole('button', { name: 'Take it from the marks' }).click()
  await page.getByRole('button', { name: 'Done', exact: true }).click()
  await page.getByRole('radio', { name: 'Paper gasket' }).check()
  await page.getByRole('button', { name: 'Work out the order' }).click()
  await page.locator('.plan-lead').waitFor({ timeout: 120_000 })
  await page.locator('.plan-progress').waitFor({ state: 'detached', timeout: 120_000 })
  await page.getByRole('button', { name: 'Use this order' }).click()
  await page.getByRole('button', { name: 'In use', exact: true }).waitFor()
  await page.getByRole('link', { name: 'Back to the face' }).click()
}

/** The hole of the step that fills the screen. */
export async function holeNow(page: Page): Promise<string> {
  const said = (await page.locator('.bench-step__hole').textContent())!
  return said.replace('Hole ', '')
}

/** Until the bench says that so many of the bolts of a round are done. */
export async function roundAt(page: Page, round: string, done: number, of: number): Promise<void> {
  await page.getByRole('progressbar', { name: new RegExp(`^${round}.*: ${done} of ${of} done$`) }).waitFor()
}

/** The large action of the step, for the bolts of a round from one count to another. `next`: the round after the last bolt of all. */
export async function act(
  page: Page,
  { round, action, from = 0, to, of, next }: Work & { action: string },
): Promise<void> {
  for (let done = from; done < to; done++) {
    await roundAt(page, round, done, of)
    await page.getByRole('button', { name: action, exact: true }).click()
  }
  await after(page, { round, to, of, next })
}

type Work = { round: string; from?: number; to: number; of: number; next: string }

/** A torque for each bolt of a round, as the wrench shows it; `at`: what it shows where not what is wanted, bolt by bolt. */
export async function torque(page: Page, work: Work, at: (wanted: number) => string): Promise<void> {
  const { round, from = 0, to, of } = work
  for (let done = from; done < to; done++) {
    await roundAt(page, round, done, of)
    const wanted = Number.parseFloat((await page.locator('.bench-step__torque').textContent())!)
    await page.getByLabel(`Torque on the wrench, hole ${await holeNow(page)}`).fill(at(wanted))
    await page.keyboard.press('Enter')
  }
  await after(page, work)
}

async function after(page: Page, { round, to, of, next }: Work): Promise<void> {
  if (to < of) await roundAt(page, round, to, of)
  else if (next === 'Close') await page.getByRole('heading', { name: 'Close', exact: true }).waitFor()
  else await page.getByRole('progressbar', { name: new RegExp(`^${next}`) }).waitFor()
}

/** Looks at the first step of a round that has its turn later. */
export async function lookAhead(page: Page, round: string): Promise<string> {
  await page.getByRole('button', { name: 'More', exact: true }).click()
  await page.getByRole('button', { name: 'All steps' }).click()
  const list = page.getByRole('dialog').locator('ol > li', { has: page.getByRole('heading', { name: round }) })
  await list
    .getByRole('button', { name: /^Hole \d+$/ })
    .first()
    .click()
  await page.getByText('You are looking at another step.').waitFor()
  return holeNow(page)
}

/** A stop is on the screen: what it says, and the reason with which one goes on. */
export async function goOn(page: Page, says: string, reason: string): Promise<void> {
  const stop = page.getByRole('dialog')
  await stop.getByText(says).waitFor()
  await stop.getByRole('button', { name: 'Go on all the same' }).click()
  await stop.getByRole('button', { name: 'Keep the reason and go on' }).click()
  await stop.getByText('Give a reason.').waitFor()
  await stop.getByLabel('Why? It stays on the record.').fill(reason)
  await stop.getByRole('button', { name: 'Keep the reason and go on' }).click()
  await stop.waitFor({ state: 'detached' })
}

/** A stop is on the screen: what it says; it is heeded. */
export async function heed(page: Page, says: string): Promise<void> {
  const stop = page.getByRole('dialog')
  await stop.getByText(says).waitFor()
  await stop.getByRole('button', { name: 'Close', exact: true }).click()
  await stop.waitFor({ state: 'detached' })
}

/** The bolt of this step binds: the face stands still until it is out and what it was is told. Gives its hole. */
export async function bindsAndIsCleared(page: Page): Promise<string> {
  const hole = await holeNow(page)
  await page.getByRole('button', { name: 'It binds' }).click()
  await page.getByLabel('Turns so far, if you counted').fill('2')
  await page.getByRole('button', { name: 'Stiff from the first turn' }).click()
  await page.getByRole('heading', { name: 'The face stands still' }).waitFor()
  await lookAhead(page, 'Snug')
  await page.getByRole('button', { name: 'Snug', exact: true }).click()
  await page.getByRole('dialog').getByText(`Resistance at hole ${hole} is not cleared.`).waitFor()
  await page
    .getByRole('dialog')
    .getByRole('button', { name: `To hole ${hole}`, exact: true })
    .click()
  await page.getByRole('button', { name: 'Cleared: go on' }).click()
  await page.getByText('Say what it was: it stays on the record.').waitFor()
  await page.getByRole('button', { name: `Hole ${hole} is backed out` }).click()
  await page.getByText(`Hole ${hole} is out. It starts again by hand.`).waitFor()
  await page.getByRole('button', { name: 'Thread damaged: chased, bolt replaced' }).click()
  await page.getByRole('button', { name: 'Cleared: go on' }).click()
  await page.getByRole('heading', { name: 'The face stands still' }).waitFor({ state: 'detached' })
  return hole
}

/** In a pass: the wrench with which it is done, in calibration until that day. */
export async function wrenchChosen(page: Page, until: string): Promise<void> {
  await page.getByRole('button', { name: 'Choose the wrench' }).click()
  const sheet = page.getByRole('dialog')
  await sheet.getByLabel('Name', { exact: true }).fill('Dial wrench')
  await sheet.getByRole('radio', { name: 'It shows or types' }).check()
  await sheet.getByLabel('Least torque').fill('2')
  await sheet.getByLabel('Greatest torque').fill('14')
  await sheet.getByLabel('Calibrated until').fill(until)
  await sheet.getByLabel('Number in the shop').fill('W4')
  await sheet.getByRole('button', { name: 'Use this wrench' }).click()
  await sheet.waitFor({ state: 'detached' })
}

/** Until everything that was entered on this device is with the shop. */
export async function sent(page: Page): Promise<void> {
  const all = page.getByRole('button', { name: 'How sending stands: Sent' }).first()
  await all.waitFor({ timeout: 90_000 })
  // It is told a moment after an entry is written, four times a second at most: what stands there then is of the last one too.
  await page.waitForTimeout(600)
  await all.waitFor({ timeout: 90_000 })
}

/** How many things wait on this device. */
export async function waiting(page: Page): Promise<number> {
  const chip = page.getByRole('button', { name: /\d+ waiting$/ }).first()
  await chip.waitFor()
  return Number(/(\d+) waiting/.exec((await chip.getAttribute('aria-label'))!)![1])
}

/** On the page before release: so many things are open, and it is not released over them. */
export async function refusesToRelease(page: Page, open: number, says: string): Promise<void> {
  await page.getByRole('heading', { name: open === 1 ? '1 thing is open' : `${open} things are open` }).waitFor()
  await page.getByRole('button', { name: `Release · ${open} open` }).click()
  await page.locator('.notice__words', { hasText: says }).waitFor()
  expect(await page.getByRole('heading', { name: 'Released' }).count()).toBe(0)
}

/** In a pass on another device: the wrench that the record names is there already, but for how it tells. */
export async function wrenchTakenOver(page: Page, until: string): Promise<void> {
  await page.getByRole('button', { name: 'Choose the wrench' }).click()
  const sheet = page.getByRole('dialog')
  for (const [label, value] of Object.entries({
    Name: 'Dial wrench',
    'Least torque': '2',
    'Greatest torque': '14',
    'Calibrated until': until,
    'Number in the shop': 'W4',
  }))
    expect(await sheet.getByLabel(label, { exact: true }).inputValue()).toBe(value)
  await sheet.getByRole('radio', { name: 'It shows or types' }).check()
  await sheet.getByRole('button', { name: 'Use this wrench' }).click()
  await sheet.waitFor({ state: 'detached' })
}
