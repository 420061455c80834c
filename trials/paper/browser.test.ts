/** Paper made in a real browser: built as the page is, under the page's rule that nothing comes from elsewhere, with no server to help. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type Browser, chromium } from 'playwright-core'
import { build } from 'vite'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { CHROMIUM, FLAGS } from '../../packages/device/src/testing/browser.ts'
import { circlesOn, infoOf, textOf, whyNoReaders } from '../../packages/paper/src/testing/pdf.ts'

const PAGE = `
import { boltBoard, FONT_FILES } from '@gripbook/paper'
const bytesOf = async (url) => new Uint8Array(await (await fetch(url)).arrayBuffer())
const fonts = { regular: await bytesOf(FONT_FILES.regular), bold: await bytesOf(FONT_FILES.bold) }
const holes = [{ id: '1', thread: 'M6', at: [0, 0], asFound: 'a' }, { id: '2', thread: 'M6', at: [60, 30] }]
const face = { id: 'lid', name: 'Deckel 蓋', kinds: [{ id: 'a', thread: 'M6', length: 30 }], holes }
const unit = { gripbook: 'unit/1', faces: [face] }
const board = await boltBoard(unit, [{ face }], { paper: 'A4', fonts, made: new Date('2026-03-01T00:00:00Z') })
globalThis.board = board.ok ? Array.from(board.bytes) : board.fault
`
const CACHE = fileURLToPath(new URL('../../node_modules/.cache/', import.meta.url))

let folder = ''
let browser: Browser
beforeEach(({ skip }) => {
  if (CHROMIUM === undefined) skip('Chromium is not installed: apt-get install --no-install-recommends chromium')
  const why = whyNoReaders()
  if (why !== null) skip(why)
})
beforeAll(async () => {
  if (CHROMIUM === undefined) return
  mkdirSync(CACHE, { recursive: true })
  folder = mkdtempSync(join(CACHE, 'paper-'))
  writeFileSync(join(folder, 'index.html'), '<!doctype html><script type="module" src="./page.js"></script>')
  writeFileSync(join(folder, 'page.js'), PAGE)
  await build({
    root: folder,
    configFile: false,
    logLevel: 'error',
    resolve: { conditions: ['development', 'browser', 'module', 'import'] },
    build: { target: 'es2022', assetsInlineLimit: 0, chunkSizeWarningLimit: 1000 },
  })
  browser = await chromium.launch({ executablePath: CHROMIUM, args: FLAGS })
})
afterAll(async () => {
  await browser?.close()
  if (folder !== '') rmSync(folder, { recursive: true })
})

test('[PR7] a bolt board is made on the page, without a server', async () => {
  const page = await browser.newPage()
  const types: Record<string, string> = { html: 'text/html', js: 'text/javascript' }
  await page.route('**/*', (route) => {
    const name = new URL(route.request().url()).pathname
    const path = join(folder, 'dist', name === '/' ? 'index.html' : name)
    const headers = { 'content-security-policy': "default-src 'self'" }
    return route.fulfill({
      body: readFileSync(path),
      contentType: types[path.split('.').at(-1)!] ?? 'application/octet-stream',
      headers,
    })
  })
  const faults: string[] = []
  page.on('pageerror', (fault) => faults.push(String(fault)))
  await page.goto('http://localhost/')
  await expect
    .poll(() => page.evaluate(() => 'board' in globalThis).then((there) => there || faults.length > 0))
    .toBe(true)
  expect(faults).toEqual([])
  const bytes = new Uint8Array(await page.evaluate(() => (globalThis as unknown as { board: number[] }).board))
  expect(infoOf(bytes).Tagged).toBe('yes')
  expect(textOf(bytes)).toContain('蓋')
  const [first, second] = circlesOn(bytes, 1).filter(({ radius }) => Math.abs(radius - 3) < 0.01)
  expect(Math.abs(second!.x - first!.x)).toBeCloseTo(60, 1)
  expect(Math.abs(second!.y - first!.y)).toBeCloseTo(30, 1)
})
