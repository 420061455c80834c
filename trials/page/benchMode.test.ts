/** The bench mode in a real browser: a face put together step by step, with a stop, a resistance, typed torques, by keys, on two devices, for everybody. */
import { AxeBuilder } from '@axe-core/playwright'
import type { Face, Unit } from '@gripbook/engine'
import { partCameOut } from '@gripbook/record'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import type { Bench, SizeName } from './bench.ts'
import { openPractice } from './hands.ts'
import { seedUnit } from './seed.ts'
import { withBench } from './withBench.ts'

let bench: Bench
withBench((opened) => {
  bench = opened
})

const ID = '00000000-0000-4000-8000-0000000000b1'

const HOLE = {
  thread: 'M8',
  grip: { value: 14, plusMinus: 0.1 },
  mouth: { value: 1, plusMinus: 0.2 },
  threadDepth: { value: 16, plusMinus: 0.3 },
  bottomDepth: { value: 20, plusMinus: 0.2 },
}

/** Three holes, the second of which locates; two passes, 11 and 22 N·m. */
const COVER: Face = {
  id: 'cover',
  name: 'Side cover',
  torque: 22,
  minimumEngagement: 12,
  material: 'cast aluminium',
  holes: [
    { id: '1', ...HOLE, at: [10, 10] },
    { id: '2', ...HOLE, at: [60, 10], locates: true },
    { id: '3', ...HOLE, at: [35, 50] },
  ],
  kinds: [
    {
      id: 'a',
      thread: 'M8',
      length: { value: 29.9, plusMinus: 0.1 },
      count: 3,
      head: { form: 'hex flange', acrossFlats: 10 },
    },
    { id: 'b', thread: 'M8', length: { value: 49.9, plusMinus: 0.1 }, count: 1 },
  ],
  order: [
    { share: 0.5, sequence: ['1', '2', '3'] },
    { share: 1, sequence: ['1', '2', '3'] },
  ],
}

const UNIT: Unit = { gripbook: 'unit/1', name: 'Hoist gearbox', faces: [COVER] }

const WRENCH = { name: 'Small wrench', number: 'W-1', range: [5, 50], calibratedUntil: '2099-12-31' }

async function atBench(page: Page, settings: object = {}): Promise<void> {
  await seedUnit(page, ID, UNIT, {
    more: [
      partCameOut({
        part: 'clip',
        what: 'bracket',
        name: 'Cable bracket',
        face: 'cover',
        hole: '3',
        wayRound: 'number towards you',
      }),
    ],
  })
  await page.evaluate((chosen) => {
    const kept = JSON.parse(localStorage.getItem('gripbook settings')!) as object
    localStorage.setItem('gripbook settings', JSON.stringify({ ...kept, ...chosen }))
  }, settings)
  await page.goto(`${bench.url}/unit/${ID}/face/cover/bench`)
  await page.getByRole('heading', { name: 'Hole 2', exact: true }).waitFor()
  await page.getByText('M8×30', { exact: true }).waitFor()
}

const at = (page: Page, hole: string) => page.getByRole('heading', { name: `Hole ${hole}`, exact: true }).waitFor()
const main = (page: Page, name: string | RegExp) => page.locator('.dock').getByRole('button', { name }).click()
const progress = (page: Page, words: string) => page.getByRole('progressbar', { name: words }).waitFor()

/** From the bench, sentences of the story, newest first. By the page's own ways: a step shows as done ahead of the disk, and an address typed at once would cut it off. */
async function story(page: Page): Promise<string> {
  await page.getByRole('link', { name: 'Back to the face' }).click()
  await page.getByRole('link', { name: 'Back to the unit' }).click()
  await page.getByRole('link', { name: /^Story/ }).click()
  await page.getByRole('heading', { level: 1, name: 'Story' }).waitFor()
  await page.locator('main li').first().waitFor()
  return (await page.locator('main').textContent())!
}

test('a face from the first bolt to closed: a stop passed with a reason, a bolt that binds, torques typed and by feel', async () => {
  const { context, page } = await bench.open('phone')
  await atBench(page)

  // the locating hole leads; one tap places and starts
  await page.getByText('This one first: it places the cover.').waitFor()
  await main(page, 'Started by hand')
  await at(page, '1')
  await main(page, 'Started by hand')
  await at(page, '3')
  await page.getByText('Cable bracket goes under this head').waitFor()
  await page.getByText('As found: number towards you').waitFor()

  // ahead of its turn: the stop names the hole that is missing and leads there; a reason passes it
  await page.getByRole('button', { name: 'More', exact: true }).click()
  await page.getByRole('button', { name: 'All steps' }).click()
  await page
    .getByRole('dialog')
    .getByRole('listitem')
    .filter({ hasText: 'Run down' })
    .getByRole('button', { name: 'Hole 1' })
    .click()
  await page.getByText('You are looking at another step.').waitFor()
  await main(page, 'Head on its seat')
  await page.getByText('Not started by hand yet: hole 3.').waitFor()
  await page.getByRole('button', { name: 'To hole 3' }).click()
  await at(page, '3')
  await page.getByRole('button', { name: 'More', exact: true }).click()
  await page.getByRole('button', { name: 'All steps' }).click()
  await page
    .getByRole('dialog')
    .getByRole('listitem')
    .filter({ hasText: 'Run down' })
    .getByRole('button', { name: 'Hole 1' })
    .click()
  await main(page, 'Head on its seat')
  await page.getByRole('button', { name: 'Go on all the same' }).click()
  await page.getByRole('button', { name: 'Keep the reason and go on' }).click()
  await page.getByText('Give a reason.').waitFor()
  await page.getByLabel('Why? It stays on the record.').fill('Cover lies on its dowels')
  await page.getByRole('button', { name: 'Keep the reason and go on' }).click()
  await at(page, '3')
  await main(page, 'Started by hand')

  // run down with a count that cannot be right, then one that is
  await progress(page, 'Run down: 1 of 3 done')
  await at(page, '2')
  await page.getByText(/to .* turns until the head seats/).waitFor()
  await page.getByLabel('Turns counted').fill('4')
  await main(page, /Seated after/)
  await page.getByText(/The head sits after 4 turns/).waitFor()
  await main(page, 'Count again')
  await page.getByLabel('Turns counted').fill('11')
  await main(page, 'Seated after 11 turns')

  // the last one binds: the face stands still until it is known why, also over a reload
  await at(page, '3')
  await page.getByRole('button', { name: 'It binds' }).click()
  await page.getByLabel('Turns so far, if you counted').fill('7')
  await page.getByRole('button', { name: 'Stiff near the end' }).click()
  await page.getByRole('heading', { name: 'The face stands still' }).waitFor()
  expect(await page.locator('.resist__causes li').first().textContent()).toContain('Too long, or chips in the hole')
  await page.reload()
  await page.getByRole('heading', { name: 'The face stands still' }).waitFor()
  await page.getByText('after 7 turns', { exact: false }).first().waitFor()
  await page.getByRole('button', { name: 'Hole 3 is backed out' }).click()
  await page.getByText('Hole 3 is out. It starts again by hand.').waitFor()
  await page.getByRole('button', { name: 'Cleared: go on' }).click()
  await page.getByText('Say what it was: it stays on the record.').waitFor()
  await page.getByLabel('What you found').fill('A chip at the bottom')
  await page.getByRole('button', { name: 'Cleared: go on' }).click()
  await at(page, '3')
  await main(page, 'Started by hand')
  await main(page, 'Head on its seat')

  // the wrench once; it clicks
  await progress(page, 'Pass 1 of 2, 50 %: 0 of 3 done')
  await page.getByText('11 N·m', { exact: true }).waitFor()
  await main(page, 'Choose the wrench')
  const sheet = page.getByRole('dialog')
  await sheet.getByLabel('Name', { exact: true }).fill('Small wrench')
  await sheet.getByLabel('Least torque').fill('5')
  await sheet.getByLabel('Greatest torque').fill('50')
  await sheet.getByLabel('Calibrated until').fill('2099-12-31')
  await sheet.getByLabel('Number in the shop').fill('W-1')
  await sheet.getByRole('button', { name: 'Use this wrench' }).click()
  await sheet.waitFor({ state: 'detached' })
  for (const hole of ['1', '2', '3']) {
    await at(page, hole)
    await main(page, 'Clicked at 11 N·m')
  }

  // the last pass: typed on the page's keys, too little caught, too much caught, one by feel
  await progress(page, 'Pass 2 of 2, 100 %: 0 of 3 done')
  await main(page, 'Another figure')
  for (const key of ['2', '2', '.', '1'])
    await page.locator('.pad__keys').getByRole('button', { name: key, exact: true }).click()
  await page.locator('.pad__keep').click()
  await at(page, '2')
  await page.keyboard.type('18')
  await page.keyboard.press('Enter')
  await page.getByText('18 N·m is too little.').waitFor()
  await main(page, 'Enter it again')
  await page.keyboard.type('30')
  await page.keyboard.press('Enter')
  await page.getByText('30 N·m is too much.').waitFor()
  await main(page, 'Go on all the same')
  await page.getByRole('dialog').getByRole('button', { name: 'Go on all the same' }).click()
  await page.getByLabel('Why? It stays on the record.').fill('Read off a second wrench: 22')
  await page.getByRole('button', { name: 'Keep the reason and go on' }).click()
  await at(page, '3')
  await main(page, 'By feel')

  // witness marks, all at once; closed
  await progress(page, 'Witness mark: 0 of 3 done')
  await main(page, 'All 3 left are marked')
  await page.getByRole('heading', { name: 'Close' }).waitFor()
  await main(page, 'The face is closed')
  await page.getByRole('heading', { name: 'This face is done' }).waitFor()

  const told = await story(page)
  for (const said of [
    'Stop overridden (hand-start)',
    'because: Cover lies on its dowels',
    'Resistance at hole 3 of Side cover after 7 turns: stiff near the end',
    'cleared: A chip at the bottom',
    'Part Cable bracket went in, number towards you',
    'Hole 2 of Side cover: 11 turns, the head seated',
    'Hole 1 of Side cover, pass 1: 11 N·m, Small wrench',
    'Hole 1 of Side cover, final pass: 22.1 N·m, Small wrench',
    'Stop overridden (torque out of band)',
    'Hole 3 of Side cover, final pass: by feel, ratchet wrench',
    'Witness mark on hole 3 of Side cover',
    'Face Side cover closed',
  ])
    expect(told).toContain(said)
  await context.close()
})

test('by keys alone, as a pedal and a wrench type them', async () => {
  const { context, page } = await bench.open('desk')
  await atBench(page, {
    wrenches: [{ ...WRENCH, tells: 'shows' }],
    used: { [`wrench ${ID} cover`]: WRENCH.name },
    pedal: 'F9',
  })
  const { keyboard } = page
  await keyboard.press('F9')
  await at(page, '1')
  await keyboard.press('Space')
  await at(page, '3')
  await keyboard.press('Enter')
  await progress(page, 'Run down: 0 of 3 done')

  // undone by a further entry, and done again
  await keyboard.press('Backspace')
  await progress(page, 'Start by hand: 2 of 3 done')
  await keyboard.press('Enter')
  await progress(page, 'Run down: 0 of 3 done')

  // arrows look, and Enter at what is done leads back to what is next
  await keyboard.press('ArrowLeft')
  await page.getByText('You are looking at another step.').waitFor()
  await at(page, '3')
  await keyboard.press('Enter')
  await at(page, '1')

  await keyboard.type('11')
  await keyboard.press('Enter')
  await at(page, '2')
  await keyboard.press('b')
  await page.getByRole('dialog').getByText('Stop turning. How does it feel?').waitFor()
  await keyboard.press('Escape')
  await keyboard.press('F9')
  await at(page, '3')
  await keyboard.press('F9')

  for (const torque of ['11', '22']) {
    for (const hole of ['1', '2', '3']) {
      await at(page, hole)
      await page.getByText(`${torque} N·m`, { exact: true }).waitFor()
      await keyboard.type(torque)
      await keyboard.press('Enter')
      if (hole !== '3') await at(page, hole === '1' ? '2' : '3')
      else if (torque === '11') await progress(page, 'Pass 2 of 2, 100 %: 0 of 3 done')
    }
  }
  await progress(page, 'Witness mark: 0 of 3 done')
  for (const hole of ['1', '2', '3']) {
    await at(page, hole)
    await keyboard.press('F9')
  }
  await page.getByRole('heading', { name: 'Close' }).waitFor()
  await keyboard.press('F9')
  await page.getByRole('heading', { name: 'This face is done' }).waitFor()
  expect(await story(page)).toContain('Took back: ')
  await context.close()
})

test('undo takes back the tap that was just made, also while it is on its way to the disk', async () => {
  const { context, page } = await bench.open('desk')
  await atBench(page)
  await page.keyboard.press('Space')
  await at(page, '1')
  await page.evaluate(() => {
    const press = (key: string) => document.body.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }))
    press(' ')
    press('Backspace')
    press('Backspace')
  })
  await progress(page, 'Start by hand: 0 of 3 done')
  await at(page, '2')
  const told = await story(page)
  for (const hole of ['1', '2']) expect(told).toContain(`Took back: Hole ${hole} of Side cover hand-started`)
  await context.close()
})

test('answers at the step: why, another one is in, one short; a clock runs and is stopped; pause and go on', async () => {
  const { context, page } = await bench.open('tablet')
  await atBench(page)
  await page.getByRole('button', { name: 'Why this bolt?' }).click()
  const sheet = page.getByRole('dialog')
  await sheet.getByText('M8×30 belongs here').waitFor()
  await sheet.locator('.drawing svg').waitFor()
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'Another one is in' }).click()
  await sheet.getByRole('radio', { name: 'M8×50' }).check()
  await sheet.getByText('M8×50 cannot stay here.').waitFor()
  await sheet.getByRole('button', { name: 'It stays' }).click()
  await page
    .getByRole('dialog')
    .getByText(/M8×50 does not belong here/)
    .waitFor()
  await page.keyboard.press('Escape')
  await main(page, 'Started by hand')
  await at(page, '1')
  await page.getByRole('button', { name: 'I am one short' }).click()
  await sheet.getByText('M8×30 went into hole 2 so far. Look there first.').waitFor()
  await page.keyboard.press('Escape')

  await page.getByRole('button', { name: 'More', exact: true }).click()
  await page.getByRole('button', { name: 'Start a clock' }).click()
  await page.getByRole('button', { name: 'Start the clock' }).click()
  await page.getByText('Write the minutes of the product sheet.').waitFor()
  await page.getByLabel('Minutes, as your product sheet says').fill('0.02')
  await page.getByRole('button', { name: 'Start the clock' }).click()
  await page.getByText('Sealant open: time is up.').waitFor({ state: 'attached' })
  await page.getByRole('button', { name: 'Stop the clock: Sealant open' }).click()
  await page.locator('.clocks').waitFor({ state: 'detached' })

  await page.getByRole('button', { name: 'More', exact: true }).click()
  await page.getByRole('button', { name: 'Pause' }).click()
  const link = page.getByRole('link', { name: /Go on at the bench/ })
  await link.waitFor()
  expect(await link.textContent()).toContain('Start by hand: 1 of 3')
  expect(await link.textContent()).toContain('Left by You')
  await link.click()
  await at(page, '1')
  await context.close()
})

test('an order as of now: what is done on one device moves the other one on', async () => {
  const phone = await bench.openPaired('phone')
  const tablet = await bench.openPaired('tablet')
  await atBench(phone.page)
  await phone.page.getByRole('button', { name: /Sent/ }).waitFor({ timeout: 60_000 })
  await tablet.page.goto(phone.page.url())
  await at(tablet.page, '2')
  await main(phone.page, 'Started by hand')
  await at(tablet.page, '1')
  await tablet.page.getByText(/is working here too/).waitFor()
  await main(tablet.page, 'Started by hand')
  await at(phone.page, '3')
  await phone.page.getByRole('button', { name: 'It binds' }).click()
  await phone.page.getByRole('button', { name: 'Springy: it gives and pushes back' }).click()
  await tablet.page.getByRole('heading', { name: 'The face stands still' }).waitFor({ timeout: 60_000 })
  await phone.context.close()
  await tablet.context.close()
})

async function expectClean(page: Page, name: string): Promise<void> {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .analyze()
  expect(violations.map(({ id, nodes }) => `${name}: ${id} at ${nodes[0]?.html}`)).toEqual([])
}

test.each([
  ['phone', { look: 'light' }],
  ['phone', { look: 'dark', gloves: true, pixelsPerMillimetre: 6 }],
  ['desk', { look: 'bright' }],
] as const)('axe finds nothing at the bench: %s, %j', async (size: SizeName, settings) => {
  const { context, page } = await bench.open(size)
  await atBench(page, {
    ...settings,
    wrenches: [{ ...WRENCH, tells: 'clicks' }],
    used: { [`wrench ${ID} cover`]: WRENCH.name },
  })
  await expectClean(page, 'start')
  await page.getByRole('button', { name: 'More', exact: true }).click()
  await expectClean(page, 'more')
  await page.getByRole('button', { name: 'All steps' }).click()
  await expectClean(page, 'all steps')
  await page
    .getByRole('dialog')
    .getByRole('listitem')
    .filter({ hasText: 'Run down' })
    .getByRole('button', { name: 'Hole 1' })
    .click()
  await expectClean(page, 'run down')
  await main(page, 'Head on its seat')
  await page.getByRole('button', { name: 'Go on all the same' }).click()
  await expectClean(page, 'a stop')
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'More', exact: true }).click()
  await page.getByRole('button', { name: 'All steps' }).click()
  await page
    .getByRole('dialog')
    .getByRole('listitem')
    .filter({ hasText: 'Pass 2 of 2' })
    .getByRole('button', { name: 'Hole 1' })
    .click()
  await expectClean(page, 'a pass')
  await main(page, 'Another figure')
  await expectClean(page, 'a torque typed')
  await page.locator('input[name="figure"]').fill('40')
  await page.keyboard.press('Enter')
  await page.getByText('40 N·m is too much.').waitFor()
  await expectClean(page, 'too much')
  await page.getByRole('button', { name: 'More', exact: true }).click()
  await page.getByRole('button', { name: 'Change the wrench' }).click()
  await page.getByRole('radio', { name: 'Crow-foot' }).check()
  await expectClean(page, 'the wrench')
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'It binds' }).click()
  await expectClean(page, 'it binds')
  await page.getByRole('button', { name: 'Dead stop, head off its seat' }).click()
  await page.getByRole('heading', { name: 'The face stands still' }).waitFor()
  await expectClean(page, 'a resistance')
  await page.goto(`${bench.url}/settings`)
  await page.getByRole('heading', { name: 'Foot pedal' }).waitFor()
  await expectClean(page, 'the settings')
  await context.close()
})

test('on the practice unit one comes to the bench from the face', async () => {
  const { context, page } = await bench.open('phone')
  const unit = await openPractice(page)
  await page.goto(`${unit}/face/pump-cover`)
  await page.getByRole('link', { name: /Put it together/ }).click()
  await at(page, '4')
  await page.getByText('M8×45', { exact: true }).waitFor()
  await page.locator('.lying svg').waitFor()
  await context.close()
})
