/** What the trials in a browser share: one browser and script per file, a shop and pages per test, waiting for what must come. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll } from 'vitest'
import type { Patience, Status } from '../index.ts'
import { CHROMIUM, FLAGS, openPage, pageScript } from './browser.ts'
import { type TestShop, testShop } from './shopServer.ts'

export const UNIT = '00000000-0000-4000-8000-0000000000a1'
export const OTHER = '00000000-0000-4000-8000-0000000000a2'

/** Without a browser there is nothing to try: the file is skipped, and its title says so. */
export const without = CHROMIUM === undefined
export const title = (what: string): string => (without ? `${what} (skipped: no Chromium on this machine)` : what)

export type Bench = {
  shop(): Promise<TestShop>
  /** A device: a profile of its own in the same browser. */
  phone(): Promise<BrowserContext>
  /** A profile on the disk, gone after the test; each call of what comes back starts a browser on it. */
  lastingPhone(): () => Promise<BrowserContext>
}

export function bench(): Bench {
  let browser: Browser
  let script: string
  const open: (() => Promise<unknown>)[] = []
  if (!without) {
    beforeAll(async () => {
      script = await pageScript()
      browser = await chromium.launch({ executablePath: CHROMIUM!, args: FLAGS })
    })
    afterEach(async () => {
      for (const close of open.splice(0).reverse()) await close()
    })
    afterAll(() => browser.close())
  }
  return {
    async shop() {
      const shop = await testShop(script)
      open.push(() => shop.close())
      return shop
    },
    async phone() {
      const context = await browser.newContext()
      open.push(() => context.close())
      return context
    },
    lastingPhone() {
      const profile = mkdtempSync(join(tmpdir(), 'gripbook-profile-'))
      open.push(async () => rmSync(profile, { recursive: true, force: true, maxRetries: 10, retryDelay: 100 }))
      return async () => {
        const context = await chromium.launchPersistentContext(profile, { executablePath: CHROMIUM!, args: FLAGS })
        open.push(() => context.close())
        return context
      }
    },
  }
}

/** A page with the device open and, unless told otherwise, paired. */
export async function tab(
  phone: BrowserContext,
  shop: Pick<TestShop, 'url'>,
  { pair = true, ...given }: { pair?: boolean; ahead?: number; patience?: Partial<Patience>; locks?: null } = {},
): Promise<Page> {
  const page = await openPage(phone, shop.url)
  await page.evaluate((given) => window.trial.open(given), given)
  if (pair) await page.evaluate(() => window.trial.device!.pair('code'))
  return page
}

export function status(page: Page): Promise<Status> {
  return page.evaluate(() => window.trial.device!.status())
}

/** Looks until it is so, and fails with what was seen last. */
export async function until<T>(look: () => Promise<T> | T, isSo: (seen: T) => boolean, most = 60_000): Promise<T> {
  const end = Date.now() + most
  for (;;) {
    const seen = await look()
    if (isSo(seen)) return seen
    if (Date.now() > end) throw new Error(`did not come: ${JSON.stringify(seen)}`)
    await new Promise((done) => setTimeout(done, 25))
  }
}

export function allSent(page: Page): Promise<Status> {
  return until(
    () => status(page),
    ({ waiting }) => waiting.entries === 0 && waiting.photographs === 0,
  )
}

/** Entries that arrived at the shop, those sent twice counted twice. */
export function arrived(shop: TestShop): number {
  return shop.requests.reduce((sum, { entries }) => sum + entries, 0)
}
