/** A real Chromium for the trials, and the trial page as one script. */
import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { BrowserContext, Page } from 'playwright-core'
import { build } from 'vite'
import type { Trial } from './page.ts'

export const CHROMIUM = [process.env.CHROMIUM_PATH, '/usr/bin/chromium', '/usr/bin/google-chrome'].find(
  (path) => path !== undefined && existsSync(path),
)

export const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  // A name that is not the machine's own: what a phone sees of a shop without a certificate.
  '--host-resolver-rules=MAP shop.test 127.0.0.1',
]

/** The trial page as one module. */
export function pageScript(): Promise<string> {
  return oneScript(new URL('page.ts', import.meta.url), 'es')
}

/** A script with all that it imports, from the packages' sources: a module, or one that runs where it is put. */
export async function oneScript(entry: URL, format: 'es' | 'iife'): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    resolve: { conditions: ['development', 'browser', 'module', 'import'] },
    build: {
      write: false,
      minify: false,
      lib: { entry: fileURLToPath(entry), formats: [format], name: 'Script', fileName: 'script' },
    },
  })
  const chunk = [built]
    .flat()
    .flatMap((one) => ('output' in one ? one.output : []))
    .find((one) => one.type === 'chunk')
  if (chunk === undefined) throw new Error('vite built no script')
  return chunk.code
}

export async function openPage(context: BrowserContext, url: string): Promise<Page> {
  const page = await context.newPage()
  await page.goto(url)
  await page.waitForFunction(() => 'trial' in window)
  return page
}

declare global {
  interface Window {
    trial: Trial
  }
}
