/** The built page on the real server with a real PostgreSQL, in a real Chromium: what the trials of the page share. */
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core'
import { build } from 'vite'
import { CHROMIUM, FLAGS } from '../../packages/device/src/testing/browser.ts'
import { buildApp } from '../../packages/server/src/app/app.ts'
import { type TestShop, testShop } from '../../packages/server/src/testing/testShop.ts'

export { CHROMIUM }

export const SIZES = {
  phone: { viewport: { width: 390, height: 844 }, deviceScaleFactor: 2, hasTouch: true, isMobile: true },
  tablet: { viewport: { width: 820, height: 1180 }, deviceScaleFactor: 2, hasTouch: true },
  desk: { viewport: { width: 1280, height: 800 } },
} as const satisfies Record<string, BrowserContextOptions>

export type SizeName = keyof typeof SIZES

export type Bench = {
  shop: TestShop
  browser: Browser
  url: string
  /** Where the built page lies. */
  folder: string
  /** A browser of its own, with its own storage, at the first page. */
  open(size: SizeName, options?: BrowserContextOptions): Promise<{ context: BrowserContext; page: Page }>
  /** The same, paired by a link as someone of this role. */
  openPaired(size: SizeName, role?: 'builder' | 'checker' | 'owner'): Promise<{ context: BrowserContext; page: Page }>
  /** The server is gone: nothing answers any more, to pages and service workers alike. */
  cut(): Promise<void>
  /** It is there again, at the same address, with the same record. */
  mend(): Promise<void>
  close(): Promise<void>
}

/** Builds the page into a folder of its own; the one that is served to people stays as it is. */
export async function builtPage(): Promise<{ folder: string; remove: () => Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), 'gripbook-page-'))
  const root = fileURLToPath(new URL('../../packages/web', import.meta.url))
  await build({ root, logLevel: 'error', build: { outDir: folder, emptyOutDir: true } })
  return { folder, remove: () => rm(folder, { recursive: true, force: true }) }
}

export async function openBench(): Promise<Bench> {
  const page = await builtPage()
  const shop = await testShop({ page: page.folder })
  await shop.app.listen({ port: 0, host: '127.0.0.1' })
  const { port } = shop.app.server.address() as { port: number }
  const url = `http://localhost:${port}`
  const browser = await chromium.launch({ executablePath: CHROMIUM!, args: FLAGS })

  async function open(size: SizeName, options: BrowserContextOptions = {}) {
    const context = await browser.newContext({ ...SIZES[size], locale: 'en-GB', ...options })
    const page = await context.newPage()
    await page.goto(url)
    page.setDefaultTimeout(60_000)
    await page.locator('#page').locator('h1, p').first().waitFor()
    return { context, page }
  }

  let app = shop.app

  return {
    shop,
    browser,
    url,
    folder: page.folder,
    open,
    async cut() {
      app.server.closeAllConnections()
      await app.close()
    },
    async mend() {
      app = await buildApp(shop.shop, { hosts: () => ['localhost'], requestsPerMinute: 0, page: page.folder })
      await app.listen({ port, host: '127.0.0.1' })
    },
    async openPaired(size, role = 'builder') {
      const { context, page } = await open(size)
      const made = await shop.owner.ask('POST', '/api/codes', { name: `A ${role}`, role })
      await page.goto(`${url}/#pair=${made.json<{ code: string }>().code}`)
      await page.reload()
      await page.getByRole('button', { name: 'Pair this device' }).click()
      await page.getByRole('dialog').waitFor({ state: 'detached' })
      return { context, page }
    },
    async close() {
      await browser.close()
      if (app !== shop.app) await app.close()
      await shop.close()
      await page.remove()
    },
  }
}

/**
 * A photograph of so many pixels, as a camera would hand it over; with another orientation tag it stands turned in the file. `grain`: how far a
 * pixel strays from what it shows, 0 to 255; some of it makes the file as large as a camera's. Drawn dot by dot, since the server that runs in the
 * same process forbids sharp every format but a camera's.
 */
export async function photograph(width: number, height: number, orientation = 1, grain = 0): Promise<Buffer> {
  const { default: sharp } = await import('sharp')
  const dots = Buffer.alloc(width * height, 154)
  const box = (left: number, top: number, wide: number, high: number, shade: number, round = false) => {
    for (let y = Math.floor(top); y < top + high; y++)
      for (let x = Math.floor(left); x < left + wide; x++)
        if (!round || Math.hypot(x - left - wide / 2, y - top - high / 2) < wide / 2) dots[y * width + x] = shade
  }
  box(0, 0, width / 5, height / 16, 114)
  const hole = height / 25
  for (let i = 0; i < 12; i++)
    box((((i % 4) + 1) * width) / 5 - hole / 2, ((Math.floor(i / 4) + 1) * height) / 4 - hole / 2, hole, hole, 34, true)
  let state = 1
  for (let i = 0; grain > 0 && i < dots.length; i++) {
    state = (Math.imul(state, 1_103_515_245) + 12_345) >>> 0
    dots[i] = Math.max(0, Math.min(255, dots[i]! + (((state >>> 16) % 1_000) / 999 - 0.5) * 2 * grain))
  }
  return sharp(dots, { raw: { width, height, channels: 1 }, limitInputPixels: false })
    .toColourspace('srgb')
    .jpeg({ quality: 85 })
    .withMetadata({ orientation })
    .toBuffer()
}
