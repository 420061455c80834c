/** At the bench on a phone with little room: nothing hides which hole it is and what is to be pressed, and nothing typed is lost. */
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import type { Bench } from './bench.ts'
import { openPractice } from './hands.ts'
import { withBench } from './withBench.ts'

let bench: Bench
withBench((opened) => {
  bench = opened
})

const LOW = { viewport: { width: 320, height: 568 } }

async function atPass(page: Page): Promise<void> {
  const unit = await openPractice(page)
  await page.goto(`${unit}/face/pump-cover/bench`)
  await lookAtPass(page)
}

/** The step that is looked at is not kept over a reload. */
async function lookAtPass(page: Page, round = /^Pass/): Promise<void> {
  await page.locator('.bench-step__kind', { hasText: 'M8×' }).waitFor()
  await page.getByRole('button', { name: 'More', exact: true }).click()
  await page.getByRole('button', { name: 'All steps' }).click()
  const passes = page.getByRole('dialog').getByRole('listitem').filter({ hasText: round })
  await passes
    .first()
    .getByRole('button', { name: /^Hole \d+$/ })
    .first()
    .click()
  await page.getByText('You are looking at another step.').waitFor()
}

async function choose(page: Page, gloves: boolean): Promise<void> {
  await page.evaluate((gloves) => {
    const kept = JSON.parse(localStorage.getItem('gripbook settings')!) as object
    const wrench = { name: 'Old clicker', tells: 'clicks', range: [2, 50], calibratedUntil: '2020-01-01' }
    localStorage.setItem('gripbook settings', JSON.stringify({ ...kept, gloves, wrenches: [wrench] }))
  }, gloves)
  await page.reload()
}

/** The focus has come to a field by itself. */
const inField = (page: Page) => expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('INPUT')

/** What a finger would hit in the middle of it is the thing itself. */
const isOnTop = (page: Page, selector: string) =>
  page
    .locator(selector)
    .first()
    .evaluate((element) => {
      const { left, top, width, height } = element.getBoundingClientRect()
      const hit = document.elementFromPoint(left + width / 2, top + height / 2)
      return hit !== null && (element.contains(hit) || hit.contains(element)) && top >= 0 && top + height <= innerHeight
    })

test.each([false, true])(
  'on the smallest phone the hole, its torque and the keys are in sight, gloves: %s',
  async (gloves) => {
    const { context, page } = await bench.open('phone', LOW)
    await choose(page, gloves)
    await atPass(page)
    await page.getByRole('button', { name: 'Choose the wrench' }).click()
    await page.getByRole('button', { name: /^Old clicker/ }).click()
    const seen = ['.bench-step__hole', '.bench-step__torque', '.dock__undo', '.dock__binds', '.dock__main']
    await page.getByRole('button', { name: 'Another figure' }).waitFor()
    for (const selector of seen) expect([selector, await isOnTop(page, selector)]).toEqual([selector, true])
    await page.getByRole('button', { name: 'Another figure' }).click()
    await page.locator('input[name="figure"]').waitFor()
    for (const selector of seen) expect([selector, await isOnTop(page, selector)]).toEqual([selector, true])
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(320)
    // one bolt that the wrench does not reach is by feel, and the wrench stays chosen
    await page.getByRole('button', { name: 'More', exact: true }).click()
    await page.getByRole('dialog').getByRole('button', { name: 'Tightened by feel' }).click()
    await page.getByRole('heading', { name: 'Stop', exact: true }).waitFor()
    await context.close()
  },
)

test('a reason, what binds and a wrench that were typed outlive the tab; a stop of the wrench leads to another one', async () => {
  const { context, page } = await bench.open('phone')
  await choose(page, false)
  await atPass(page)
  const dialog = page.getByRole('dialog')
  await page.getByRole('button', { name: 'Choose the wrench' }).click()
  await page.getByRole('button', { name: 'Add a wrench' }).click()
  await dialog.getByLabel('Name', { exact: true }).fill('New one')
  await page.reload()
  await lookAtPass(page)
  await page.getByRole('button', { name: 'Choose the wrench' }).click()
  await page.getByRole('button', { name: 'Add a wrench' }).click()
  expect(await dialog.getByLabel('Name', { exact: true }).inputValue()).toBe('New one')

  // a crow-foot without its lengths is no crow-foot, and not none either
  await page.getByRole('radio', { name: 'Crow-foot' }).check()
  await page.getByRole('button', { name: /^Old clicker/ }).click()
  await dialog.getByText('Write both lengths').waitFor()
  await page.getByRole('radio', { name: 'Straight on the wrench' }).check()
  await page.getByRole('button', { name: /^Old clicker/ }).click()
  await dialog.waitFor({ state: 'detached' })

  // a figure that was begun is gone on with
  await page.getByRole('button', { name: 'Another figure' }).click()
  const figure = page.locator('input[name="figure"]')
  await figure.fill('17.')
  await page.reload()
  await lookAtPass(page)
  expect(await figure.inputValue()).toBe('17.')
  await page.getByRole('button', { name: 'It clicks' }).click()

  // and so is a clock
  const clock = async () => {
    await page.getByRole('button', { name: 'More', exact: true }).click()
    await page.getByRole('button', { name: 'Start a clock' }).click()
  }
  await clock()
  await dialog.getByRole('radio', { name: 'Something else' }).check()
  await dialog.getByLabel('What is it?').fill('Cement')
  await dialog.getByLabel('Minutes, as your product sheet says').fill('35')
  await page.reload()
  await lookAtPass(page)
  await clock()
  expect(await dialog.getByLabel('What is it?').inputValue()).toBe('Cement')
  expect(await dialog.getByLabel('Minutes, as your product sheet says').inputValue()).toBe('35')
  await page.keyboard.press('Escape')
  await dialog.waitFor({ state: 'detached' })

  await page.getByRole('button', { name: /^Clicked at/ }).click()
  await dialog.getByText(/calibration ran out/).waitFor()
  await dialog.getByRole('button', { name: 'Go on all the same' }).click()
  await inField(page)
  await page.keyboard.type('Checked this morning')
  await page.reload()
  await lookAtPass(page)
  await page.getByRole('button', { name: /^Clicked at/ }).click()
  await dialog.getByRole('button', { name: 'Go on all the same' }).click()
  expect(await dialog.getByLabel('Why? It stays on the record.').inputValue()).toBe('Checked this morning')
  await dialog.getByRole('button', { name: 'Change the wrench' }).click()
  await page.getByRole('heading', { name: 'With which wrench?' }).waitFor()
  await page.keyboard.press('Escape')

  // turns that were typed when it began to bind are not typed twice
  await lookAtPass(page, /^Run down/)
  await figure.fill('2.5')
  await page.getByRole('button', { name: 'It binds' }).click()
  expect(await dialog.getByLabel('Turns so far, if you counted').inputValue()).toBe('2.5')
  await page.keyboard.press('Escape')
  await lookAtPass(page)

  await page.getByRole('button', { name: 'It binds' }).click()
  await dialog.getByRole('button', { name: 'Something else' }).click()
  await dialog.getByRole('button', { name: 'Stop the face' }).click()
  await dialog.getByText('Say how it feels: it stays on the record.').waitFor()
  await inField(page)
  await page.keyboard.type('Sand in the thread')
  await page.reload()
  await lookAtPass(page)
  await page.getByRole('button', { name: 'It binds' }).click()
  expect(await dialog.getByLabel('How does it feel?').inputValue()).toBe('Sand in the thread')
  await dialog.getByRole('button', { name: 'Stop the face' }).click()
  await page.getByRole('heading', { name: 'The face stands still' }).waitFor()
  await page.getByLabel('What you found').fill('A grain of')
  await page.reload()
  await page.getByRole('heading', { name: 'The face stands still' }).waitFor()
  expect(await page.getByLabel('What you found').inputValue()).toBe('A grain of')
  await context.close()
})

test('what was begun in a form is there after a reload, and a form that is kept begins anew', async () => {
  const { context, page } = await bench.open('phone')
  const unit = await openPractice(page)
  const dialog = page.getByRole('dialog')
  const begun = async (path: string, open: string, label: string, text: string, keep: string) => {
    await page.goto(`${unit}${path}`)
    await page.getByRole('button', { name: open }).first().click()
    await dialog.getByLabel(label, { exact: true }).fill(text)
    await page.reload()
    await page.getByRole('button', { name: open }).first().click()
    expect([path, await dialog.getByLabel(label, { exact: true }).inputValue()]).toEqual([path, text])
    if (keep === '') return page.keyboard.press('Escape')
    await dialog.getByRole('button', { name: keep }).click()
    await dialog.waitFor({ state: 'detached' })
    await page.goto(`${unit}${path}`)
    await page.getByRole('button', { name: open }).first().click()
    expect([path, await dialog.getByLabel(label, { exact: true }).inputValue()]).toEqual([path, ''])
  }
  await begun('', 'Add a face', 'What is it called?', 'Rear cover', 'Add the face')
  await begun('/parts', 'A part came out', 'Which way round?', 'Lug to the drain', '')
  await begun('/figures', 'Add a figure', 'What is it?', 'Idle drag', 'Take it up')
  // what was taken up stays until it is read, and can be taken off again
  await page.goto(`${unit}/figures`)
  await page.getByRole('button', { name: 'Read Idle drag' }).click()
  await page.getByRole('button', { name: 'Take it off the list' }).click()
  await page.getByRole('button', { name: 'Read Idle drag' }).waitFor({ state: 'detached' })
  await begun('', 'Add a job', 'What is to be done?', 'Blow out the oilways', 'Keep')
  await begun('/face/pump-cover/tray', 'Add a kind', 'Length', '33.3', '')

  // what is lacking has the focus
  await page.goto(`${unit}/figures`)
  await page.getByRole('button', { name: 'Add a figure' }).click()
  await dialog.getByRole('button', { name: 'Take it up' }).click()
  await dialog.getByText('Give it a name.').waitFor()
  await inField(page)
  await page.keyboard.type('Drag when cold')
  expect(await dialog.getByLabel('What is it?').inputValue()).toBe('Drag when cold')
  await context.close()
})

test('a bolt that is turned further by an angle: both are on the record', async () => {
  const { context, page } = await bench.open('phone')
  await choose(page, false)
  await atPass(page)
  const dialog = page.getByRole('dialog')
  await page.getByRole('button', { name: 'Choose the wrench' }).click()
  await page.getByRole('button', { name: /^Old clicker/ }).click()
  await page.getByRole('button', { name: 'More', exact: true }).click()
  await page.getByRole('button', { name: 'Torque and angle' }).click()
  await dialog.getByRole('button', { name: 'Keep torque and angle' }).click()
  await dialog.getByText('Write the degrees of the manual').waitFor()
  await inField(page)
  await page.keyboard.type('90')
  await dialog.getByRole('button', { name: 'Keep torque and angle' }).click()
  await page.getByRole('heading', { name: 'Stop', exact: true }).waitFor()
  await dialog.getByRole('button', { name: 'Go on all the same' }).click()
  await inField(page)
  await page.keyboard.type('A trial')
  await dialog.getByRole('button', { name: 'Keep the reason and go on' }).click()
  await dialog.waitFor({ state: 'detached' })
  await page.getByRole('link', { name: 'Back to the face' }).click()
  await page.getByRole('link', { name: 'Back to the unit' }).click()
  await page.getByRole('link', { name: /^Story/ }).click()
  await page.getByText(/N·m and 90°, Old clicker/).waitFor()
  await context.close()
})
