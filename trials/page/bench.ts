/** The built page on the real server with a real PostgreSQL, in a real Chromium: what the trials of the page share. */
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core'
import { build } from 'vite'
import { CHROMIUM, FLAGS } from '../../packages/device/src/testing/browser.ts'
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
  /** A browser of its own, with its own storage, at the first page. */
  open(size: SizeName, options?: BrowserContextOptions): Promise<{ context: BrowserContext; page: Page }>
  /** The same, paired by a link as someone of this role. */
  openPaired(size: SizeName, role?: 'builder' | 'checker' | 'owner'): Promise<{ context: BrowserContext; page: Page }>
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
    await page.getByRole('heading', { level: 1 }).waitFor()
    return { context, page }
  }

  return {
    shop,
    browser,
    url,
    open,
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
      await shop.close()
      await page.remove()
    },
  }
}

/** A photograph of so many pixels, as a camera would hand it over; with another orientation tag it stands turned in the file. */
export async function photograph(width: number, height: number, orientation = 1): Promise<Buffer> {
  const { default: sharp } = await import('sharp')
  const dots = Array.from(
    { length: 12 },
    (_, i) => `<circle cx="${((i % 4) + 1) * 20}%" cy="${(Math.floor(i / 4) + 1) * 25}%" r="2%" fill="#222"/>`,
  )
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><rect width="100%" height="100%" fill="#99a1a5"/>${dots.join('')}<rect width="20%" height="6%" fill="#6b7378"/></svg>`
  return sharp(Buffer.from(svg), { limitInputPixels: false }).jpeg({ quality: 85 }).withMetadata({ orientation }).toBuffer()
}
