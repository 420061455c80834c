/** For everybody: axe on every screen in every look, the whole way by keyboard alone, what a screen reader is told. */
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import type { Bench, SizeName } from './bench.ts'
import { openPractice } from './hands.ts'
import { withBench } from './withBench.ts'

let bench: Bench
withBench((opened) => {
  bench = opened
})

/**
 * A screen: how it is reached from the practice unit's address, and what has to be there before it is looked at. `whole`: looked at in a window as high as the
 * page, since what scrolls half under the bar counts as a small target.
 */
type Screen = { name: string; path: string; ready: string; open?: (page: Page) => Promise<void>; whole?: true }

const click =
  (name: string | RegExp, role: 'button' | 'link' = 'button') =>
  (page: Page) =>
    page.getByRole(role, { name }).first().click()

const SCREENS: readonly Screen[] = [
  { name: 'the unit', path: '', ready: '.next', whole: true },
  { name: 'the form of a new face', path: '', ready: 'h1', open: click('Add a face') },
  { name: 'the story', path: '/story', ready: 'main li' },
  { name: 'the parts', path: '/parts', ready: 'main li' },
  { name: 'before release', path: '/finish', ready: '.open' },
  { name: 'the figures', path: '/figures', ready: 'main h2' },
  { name: 'a further figure', path: '/figures', ready: 'main h2', open: click('Add a figure') },
  { name: 'a job', path: '', ready: '.next', open: click('Add a job') },
  { name: 'a face', path: '/face/control-block', ready: '.task' },
  { name: 'a face while marking', path: '/face/control-block', ready: '.task', open: click('Mark holes') },
  { name: 'the why of a swap', path: '/face/control-block', ready: '.task', open: click(/^Why/) },
  { name: 'a contradicted face', path: '/face/bell-housing', ready: '.task--doubt' },
  { name: 'a hole', path: '/face/control-block/hole/4', ready: '.drawing svg' },
  {
    name: 'a hole with its torque',
    path: '/face/control-block/hole/4',
    ready: '.drawing svg',
    open: async (page) => {
      await page.getByText('Check the torque').click()
      await page.locator('.joint__verdict').first().waitFor()
    },
  },
  {
    name: 'a hole that is described',
    path: '/face/control-block/hole/4',
    ready: '.drawing svg',
    open: click('From the manual, or seen'),
  },
  { name: 'the tray', path: '/face/control-block/tray', ready: '.drawing svg' },
  {
    name: 'a kind that is laid in',
    path: '/face/control-block/tray',
    ready: '.drawing svg',
    open: click('Add a kind'),
  },
  { name: 'the readings', path: '/face/control-block/readings', ready: '.strip' },
  { name: 'comparing', path: '/face/control-block/readings/ranks', ready: 'main h2' },
  { name: 'trying a bolt', path: '/face/control-block/readings/tries', ready: 'main h2' },
  { name: 'the cover that is set up', path: '/face/control-block/tightening', ready: '.cover-form' },
  {
    name: 'the cover with all that can be told',
    path: '/face/control-block/tightening',
    ready: '.cover-form',
    open: async (page) => {
      await page.getByText('Openings, hollows, valve lines').click()
      await page.getByRole('button', { name: 'Enter the manual’s order' }).click()
    },
  },
  {
    name: 'corners of the cover',
    path: '/face/control-block/tightening',
    ready: '.cover-form',
    open: click('Take it from the marks'),
  },
  { name: 'the order', path: '/face/pump-cover/tightening', ready: '.plan-lead' },
  {
    name: 'the order step by step, with its map',
    path: '/face/pump-cover/tightening',
    ready: '.plan-lead',
    open: async (page) => {
      await page.getByRole('radio', { name: 'Steps' }).check()
      await page.getByRole('radio', { name: 'Pressure and gaps' }).check()
      await page.locator('.map-legend').waitFor()
    },
  },
  {
    name: 'two orders',
    path: '/face/pump-cover/tightening',
    ready: '.plan-lead',
    open: async (page) => {
      await page.getByRole('radio', { name: 'Compare' }).check()
    },
  },
]

const LOOKS = [
  { size: 'phone', settings: { look: 'light' } },
  { size: 'phone', settings: { look: 'dark' } },
  { size: 'phone', settings: { look: 'bright', gloves: true } },
  { size: 'desk', settings: { look: 'light' } },
] as const satisfies readonly { size: SizeName; settings: object }[]

async function faults(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .analyze()
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`)
}

async function choose(page: Page, settings: object): Promise<void> {
  await page.evaluate((settings) => {
    const place = 'gripbook settings'
    localStorage.setItem(place, JSON.stringify({ ...JSON.parse(localStorage.getItem(place) ?? '{}'), ...settings }))
  }, settings)
}

test.each(LOOKS)('axe finds nothing on any screen: $size, $settings', async ({ size, settings }) => {
  const { context, page } = await bench.open(size)
  await choose(page, settings)
  await page.reload()
  await page.getByRole('button', { name: 'Open the practice unit' }).waitFor()
  const found: Record<string, string[]> = {}
  const look = async (name: string) => {
    const here = await faults(page)
    if (here.length > 0) found[name] = here
  }
  await look('first use')
  for (const [path, name] of [
    ['/take-in', 'take-in'],
    ['/settings', 'settings'],
  ] as const) {
    await page.goto(`${bench.url}${path}`)
    await page.getByRole('heading', { level: 1 }).waitFor()
    await look(name)
  }
  await page.goto(bench.url)
  const unit = await openPractice(page)
  for (const screen of SCREENS) {
    await page.goto(`${unit}${screen.path}`)
    await page.locator(screen.ready).first().waitFor()
    await screen.open?.(page)
    const window = page.viewportSize()!
    if (screen.whole) await page.setViewportSize({ ...window, height: 4_000 })
    await look(screen.name)
    await page.setViewportSize(window)
    expect
      .soft(
        await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
        `${screen.name} scrolls sideways`,
      )
      .toBeLessThanOrEqual(0)
    // The photograph is the page: on a face nothing scrolls but the panel.
    if (/\/face\/[^/]+(\/hole\/\d+)?$/.test(screen.path))
      expect
        .soft(await page.evaluate(() => document.documentElement.scrollHeight - innerHeight), `${screen.name} scrolls`)
        .toBeLessThanOrEqual(0)
  }
  expect(found).toEqual({})
  await context.close()
})

/** Goes on with Tab until what has the focus is called so. */
async function tabTo(page: Page, name: RegExp, most = 120): Promise<void> {
  for (let i = 0; i < most; i++) {
    await page.keyboard.press('Tab')
    const called = await page.evaluate(() => {
      const at = document.activeElement as HTMLElement | null
      if (at === document.body) return ''
      const label = at?.id ? document.querySelector(`label[for="${CSS.escape(at.id)}"]`)?.textContent : undefined
      return at?.getAttribute('aria-label') ?? label ?? at?.closest('label')?.textContent ?? at?.textContent ?? ''
    })
    if (name.test(called.trim())) return
  }
  throw new Error(`Tab does not reach ${name}`)
}

test('by keyboard alone: into the practice unit, a hole opened and closed, a reading typed, a hole marked and moved', async () => {
  const { context, page } = await bench.open('desk')
  await tabTo(page, /Open the practice unit/)
  await page.keyboard.press('Enter')
  await page.getByRole('heading', { level: 1, name: /gearbox/i }).waitFor()
  await tabTo(page, /Control block/)
  await page.keyboard.press('Enter')
  await page.locator('.task').first().waitFor()

  await tabTo(page, /^Hole 4, settled/)
  await page.keyboard.press('Enter')
  await page.getByRole('heading', { name: 'Hole 4', exact: true }).waitFor()
  await tabTo(page, /^Close$/)
  await page.keyboard.press('Enter')
  await page.getByRole('heading', { name: 'Hole 4', exact: true }).waitFor({ state: 'detached' })

  await tabTo(page, /Take this reading/)
  await page.keyboard.press('Enter')
  await page.getByLabel('Grip, Hole 11', { exact: true }).waitFor()
  await page.keyboard.type('20.9')
  await page.keyboard.press('Enter')
  await page.getByText('18 settled').first().waitFor()
  await page.goBack()
  await page.locator('.task').first().waitFor()

  await tabTo(page, /^Mark holes$/)
  await page.keyboard.press('Enter')
  await page.getByRole('heading', { name: 'Tap every hole' }).waitFor()
  await tabTo(page, /Mark a hole in the middle/)
  await page.keyboard.press('Enter')
  await expect.poll(() => page.locator('.mark').count()).toBe(19)
  const before = (await page.locator('[data-hole="19"]').boundingBox())!
  await tabTo(page, /^Hole 19/)
  await page.keyboard.press('ArrowDown')
  await expect.poll(async () => (await page.locator('[data-hole="19"]').boundingBox())!.y).toBeCloseTo(before.y + 1, 0)
  await context.close()
})

test('a screen reader is told what each hole is, what is to be done, and why', async () => {
  const { context, page } = await bench.open('phone')
  const unit = await openPractice(page)
  await page.goto(`${unit}/face/control-block`)
  await page.locator('.task').first().waitFor()
  const tree = await page.locator('body').ariaSnapshot()
  expect(tree).toContain('heading "Control block on the case" [level=1]')
  expect(tree).toContain('list "Holes"')
  expect(tree).toContain('button "Hole 4, settled, ×35, the bolt must change"')
  expect(tree).toMatch(/button "Hole 11, open, ×(35|40) or ×(35|40)/)
  expect(tree).toContain('Swap 4 and 9')
  expect(tree).toContain('group "What the marks show"')
  await page.goto(`${unit}/face/control-block/hole/4`)
  await page.locator('.hole__belongs').waitFor()
  await page.getByRole('img', { name: /hole 4: M6×35/ }).waitFor()
  const hole = await page.locator('.hole').ariaSnapshot()
  expect(hole).toContain('heading "Hole 4" [level=2]')
  expect(hole).toContain('M6×35 belongs here')
  await context.close()
})
