/**
 * What a photograph of 48 megapixels costs the page in memory and time, beside one of 12 in the same run: taken in on a face, its holes marked,
 * drawn near.
 */
import { randomUUID } from 'node:crypto'
import { readFileSync, writeFileSync } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { CDPSession, Page } from 'playwright-core'
import { type Bench, openBench, photograph } from '../trials/page/bench.ts'
import { seedUnit } from '../trials/page/seed.ts'
import { short, table } from './table.ts'

/** Grain by which the file becomes as large as a phone's camera makes it. */
const PICTURES = [
  { name: '12 megapixels', width: 4_000, height: 3_000, grain: 14 },
  { name: '48 megapixels', width: 8_000, height: 6_000, grain: 14 },
]
const TAPS = 20
/** ms between two looks at the memory. */
const EVERY = 40

type Cost = { before: number; peak: number; after: number; heap: number; shown: number; marked: number }

export async function pagePhotograph(print: (line: string) => void): Promise<void> {
  const bench = await openBench()
  const folder = await mkdtemp(join(tmpdir(), 'gripbook-photograph-'))
  try {
    const rows: (string | number)[][] = []
    const costs: Cost[] = []
    for (const { name, width, height, grain } of PICTURES) {
      const bytes = await photograph(width, height, 1, grain)
      const path = join(folder, `${width}.jpg`)
      writeFileSync(path, bytes)
      const cost = await taken(bench, path)
      costs.push(cost)
      rows.push([
        `${name}, ${(bytes.length / 1e6).toFixed(1)} MB`,
        ...[cost.before, cost.peak, cost.after, cost.heap].map((bytes) => Math.round(bytes / 1e6)),
        Math.round(cost.shown),
        Math.round(cost.marked),
      ])
    }
    print(
      table(
        [
          'photograph',
          'before, MB',
          'peak, MB',
          'after, MB',
          'script’s own, MB',
          'until shown, ms',
          `${TAPS} marks and zoom, ms`,
        ],
        rows,
      ),
    )
    const grown = costs.map(({ before, peak }) => peak - before)
    print('')
    print(
      `Peak above before: ${grown.map((of) => Math.round(of / 1e6)).join(' and ')} MB, ratio ${short(grown[1]! / grown[0]!)}. Memory is what the process of the page holds (resident, all its threads), looked at every ${EVERY} ms; without a graphics card, so that decoded pictures lie in it too.`,
    )
    print('')
  } finally {
    await rm(folder, { recursive: true, force: true })
    await bench.close()
  }
}

async function taken(bench: Bench, path: string): Promise<Cost> {
  const { context, page } = await bench.open('phone')
  const id = randomUUID()
  await seedUnit(page, id, { gripbook: 'unit/1', name: 'Photograph', faces: [{ id: 'cover', holes: [] }] })
  await page.goto(`${bench.url}/unit/${id}/face/cover`)
  await page.getByTestId('files').first().waitFor({ state: 'attached' })
  const cdp = await context.newCDPSession(page)
  await cdp.send('HeapProfiler.collectGarbage')
  const memory = memoryOf(await rendererOf(bench, page))
  const before = memory()
  let peak = before
  const looking = setInterval(() => {
    peak = Math.max(peak, memory())
  }, EVERY)
  try {
    const from = performance.now()
    await page.getByTestId('files').first().setInputFiles(path)
    const picture = page.locator('.stage__photograph')
    await picture.waitFor()
    await picture.evaluate(async (image: HTMLImageElement) => {
      await image.decode()
      await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)))
    })
    const shown = performance.now() - from
    const marked = performance.now()
    await marks(page, cdp)
    const took = performance.now() - marked
    await cdp.send('HeapProfiler.collectGarbage')
    await page.waitForTimeout(1_500)
    const { usedSize } = await cdp.send('Runtime.getHeapUsage')
    return { before, peak, after: memory(), heap: usedSize, shown, marked: took }
  } finally {
    clearInterval(looking)
    await context.close()
  }
}

/** Holes marked all over the picture, then drawn near and whole again. */
async function marks(page: Page, cdp: CDPSession): Promise<void> {
  await page.getByRole('button', { name: 'Mark holes' }).click()
  await page.getByRole('radio', { name: 'M6', exact: true }).check()
  // The picture has its place once the panel for marking stands.
  await page.waitForTimeout(500)
  const box = (await page.locator('.stage__sheet').boundingBox())!
  for (let i = 0; i < TAPS; i++) {
    await page.touchscreen.tap(
      box.x + box.width * (0.15 + (0.7 * (i % 5)) / 4),
      box.y + box.height * (0.3 + (0.4 * Math.floor(i / 5)) / 3),
    )
    await page.locator('button.mark').nth(i).waitFor({ state: 'attached' })
  }
  for (let i = 0; i < 4; i++) await page.getByRole('button', { name: 'Nearer' }).click()
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 }
  await cdp.send('Input.synthesizeScrollGesture', { ...middle, xDistance: -150, yDistance: -150 })
  await page.getByRole('button', { name: 'The whole face' }).click()
}

/** The process in which the page runs; a page just opened has one to itself. */
async function rendererOf(bench: Bench, page: Page): Promise<number> {
  const cdp = await bench.browser.newBrowserCDPSession()
  const busy = async () => {
    const { processInfo } = await cdp.send('SystemInfo.getProcessInfo')
    return new Map(processInfo.filter(({ type }) => type === 'renderer').map(({ id, cpuTime }) => [id, cpuTime]))
  }
  const before = await busy()
  // The one that works while the page does is the page's.
  await page.evaluate(() => {
    const until = performance.now() + 300
    while (performance.now() < until);
  })
  const after = await busy()
  await cdp.detach()
  const [most] = [...after].sort((a, b) => b[1] - (before.get(b[0]) ?? 0) - (a[1] - (before.get(a[0]) ?? 0)))
  return most![0]
}

const memoryOf = (pid: number) => () =>
  Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0) * 1_024
