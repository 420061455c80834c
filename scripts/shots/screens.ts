/** The screens that are photographed, and the way to each from a page that has the practice unit. */
import type { Page } from 'playwright-core'

export type Screen = {
  name: string
  /** Behind the page's address; with `practice` behind that of the practice unit. */
  path: string
  practice?: boolean
  /** What has to be there before anything is done. */
  ready: string
  steps?: (page: Page) => Promise<void>
  /** Photographed on the phone in the bright look and with gloves too. */
  hard?: boolean
}

const FACE = '/face/control-block'
const PUMP = '/face/pump-cover'

const press = (name: string | RegExp) => (page: Page) => page.getByRole('button', { name }).first().click()

const question = (name: string) => async (page: Page) => {
  await page.getByRole('radio', { name, exact: true }).check({ force: true })
}

const inSight = (page: Page, selector: string) =>
  page
    .locator(selector)
    .first()
    .evaluate((element) => element.scrollIntoView({ block: 'center' }))

export const SCREENS: readonly Screen[] = [
  { name: 'units', path: '/', ready: '.units__list' },
  {
    name: 'sending',
    path: '/',
    ready: '.units__list',
    steps: async (page) => {
      await press(/^How sending stands/)(page)
      await page.getByRole('dialog').waitFor()
    },
  },
  { name: 'take-in', path: '/take-in', ready: 'main form' },
  { name: 'settings', path: '/settings', ready: 'main h2' },
  { name: 'unit', practice: true, path: '', ready: '.unit__head' },
  {
    name: 'new-face',
    practice: true,
    path: '',
    ready: '.unit__head',
    steps: async (page) => {
      await press('Add a face')(page)
      await page.getByRole('dialog').waitFor()
    },
  },
  { name: 'story', practice: true, path: '/story', ready: 'main li' },
  { name: 'parts', practice: true, path: '/parts', ready: 'main li' },
  { name: 'face-came-out', practice: true, path: FACE, ready: '.task', hard: true, steps: question('Came out') },
  { name: 'face-belongs', practice: true, path: FACE, ready: '.task', hard: true },
  { name: 'face-to-do', practice: true, path: FACE, ready: '.task', hard: true, steps: question('To do') },
  {
    name: 'face-why',
    practice: true,
    path: FACE,
    ready: '.task',
    steps: async (page) => {
      await page.getByRole('button', { name: /^Why/ }).first().click()
      await inSight(page, '.task__reasons')
    },
  },
  { name: 'face-contradicted', practice: true, path: '/face/bell-housing', ready: '.task--doubt' },
  { name: 'face-marking', practice: true, path: FACE, ready: '.task', hard: true, steps: press('Mark holes') },
  { name: 'hole', practice: true, path: `${FACE}/hole/4`, ready: '.drawing svg', hard: true },
  {
    name: 'hole-drawing',
    practice: true,
    path: `${FACE}/hole/4`,
    ready: '.drawing svg',
    hard: true,
    steps: (page) => inSight(page, '.hole__drawing'),
  },
  {
    name: 'hole-joint',
    practice: true,
    path: `${FACE}/hole/4`,
    ready: '.drawing svg',
    steps: async (page) => {
      await page.getByText('Check the torque').click()
      await page.locator('.joint__verdict').first().waitFor()
      await inSight(page, '.joint__verdict')
    },
  },
  { name: 'tray', practice: true, path: `${FACE}/tray`, ready: '.drawing svg', hard: true },
  {
    name: 'tray-add',
    practice: true,
    path: `${FACE}/tray`,
    ready: '.drawing svg',
    hard: true,
    steps: async (page) => {
      await press('Add a kind')(page)
      await page.getByRole('dialog').waitFor()
    },
  },
  { name: 'readings', practice: true, path: `${FACE}/readings`, ready: '.strip', hard: true },
  { name: 'readings-ranks', practice: true, path: `${FACE}/readings/ranks`, ready: 'main h2', hard: true },
  { name: 'figures', practice: true, path: '/figures', ready: 'main h2', hard: true },
  { name: 'finish', practice: true, path: '/finish', ready: '.open', hard: true },
  { name: 'cover', practice: true, path: `${FACE}/tightening`, ready: '.cover-form', hard: true },
  { name: 'order', practice: true, path: `${PUMP}/tightening`, ready: '.plan-lead', hard: true },
  {
    name: 'order-assumptions',
    practice: true,
    path: `${PUMP}/tightening`,
    ready: '.assumptions',
    steps: (page) => inSight(page, '.assumptions'),
  },
  {
    name: 'order-steps',
    practice: true,
    path: `${PUMP}/tightening`,
    ready: '.plan-lead',
    hard: true,
    steps: async (page) => {
      await page.getByRole('radio', { name: 'Steps' }).check({ force: true })
      await page.getByRole('radio', { name: 'Pressure and gaps' }).check({ force: true })
      await page.locator('.map-legend').waitFor()
    },
  },
  {
    name: 'order-compare',
    practice: true,
    path: `${PUMP}/tightening`,
    ready: '.plan-lead',
    steps: (page) => page.getByRole('radio', { name: 'Compare' }).check({ force: true }),
  },
  { name: 'bench', practice: true, path: `${PUMP}/bench`, ready: '.dock', hard: true },
  { name: 'readings-tries', practice: true, path: `${FACE}/readings/tries`, ready: 'main h2', hard: true },
]
