/**
 * What the built page costs to open: bytes of script on the way to a verdict and of what comes later, and what Lighthouse says of it on its slow
 * phone, beside the same runs without slowing.
 */
import { randomUUID } from 'node:crypto'
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { brotliCompressSync, gzipSync } from 'node:zlib'
import { launch } from 'chrome-launcher'
import lighthouse, { type Flags, type Result } from 'lighthouse'
import { chromium } from 'playwright-core'
import { FLAGS } from '../packages/device/src/testing/browser.ts'
import { generateUnit } from '../packages/engine/src/placement/testing/generateUnit.ts'
import { type Bench, CHROMIUM, openBench, photograph, SIZES } from '../trials/page/bench.ts'
import { seedUnit } from '../trials/page/seed.ts'
import { median, short, table } from './table.ts'

const CATEGORIES = ['performance', 'accessibility', 'best-practices', 'seo'] as const
const RUNS = 3
const GOAL = 95
const PHOTOGRAPH = { width: 1_600, height: 1_200 }

export async function pageLoad(print: (line: string) => void): Promise<void> {
  const bench = await openBench()
  try {
    await scripts(bench, print)
    await marks(bench, print)
  } finally {
    await bench.close()
  }
}

const { unit } = generateUnit(1, { holes: 12, kinds: 4, coupled: false, stated: true, unread: 0.1 })
const face = unit.faces[0]!.id

async function seeded(page: Parameters<typeof seedUnit>[0]): Promise<string> {
  const id = randomUUID()
  const bytes = await photograph(PHOTOGRAPH.width, PHOTOGRAPH.height)
  await seedUnit(page, id, unit, { photographs: [{ face, bytes, ...PHOTOGRAPH }] })
  return `/unit/${id}/face/${face}`
}

/** The files that the browser fetches until a face shows its answer, and all others that are built. */
async function scripts(bench: Bench, print: (line: string) => void): Promise<void> {
  const { context, page } = await bench.open('phone', { serviceWorkers: 'block' })
  const path = await seeded(page)
  const fetched = new Set<string>()
  context.on('request', (request) => fetched.add(new URL(request.url()).pathname))
  await page.goto(bench.url)
  await page.waitForLoadState('networkidle')
  await page.goto(`${bench.url}${path}`)
  await page.locator('.lead').waitFor()
  const files = (await readdir(bench.folder, { recursive: true })).filter((name) => /\.(js|wasm|css|html)$/.test(name))
  const onTheWay = files.filter((name) => fetched.has(`/${name}`) || name === 'index.html')
  await context.close()

  const weighed = await Promise.all(
    files.map(async (name) => {
      const bytes = await readFile(join(bench.folder, name))
      return {
        name,
        plain: bytes.length,
        gzip: gzipSync(bytes, { level: 9 }).length,
        brotli: brotliCompressSync(bytes).length,
      }
    }),
  )
  const way = weighed.filter(({ name }) => onTheWay.includes(name))
  const later = weighed.filter(({ name }) => !onTheWay.includes(name))
  const script = (one: { name: string }) => /\.(js|wasm)$/.test(one.name)
  const lines = (of: typeof weighed) =>
    [...of].sort((a, b) => b.gzip - a.gzip).map((one) => line(basename(one.name), [one]))
  const line = (name: string, of: typeof weighed) => [
    name,
    ...(['plain', 'gzip', 'brotli'] as const).map((form) => kilo(of.reduce((sum, one) => sum + one[form], 0))),
  ]
  const head = (of: string) => [of, 'as built', 'gzip', 'brotli']
  print('Script until a face shows its answer, the engine’s worker among it (goal: 180 kB compressed):')
  print('')
  print(
    table(head('kB'), [
      ...lines(way.filter(script)),
      line('all script', way.filter(script)),
      line(
        'styles and page beside it',
        way.filter((one) => !script(one)),
      ),
    ]),
  )
  print('')
  print('What comes when it is wanted, or after the page stands:')
  print('')
  print(table(head('kB'), [...lines(later), line('all', later)]))
  print('')
}

const kilo = (bytes: number) => (bytes / 1_000).toFixed(1)

type Way = { slowed: boolean; kept: string | null }

async function marks(bench: Bench, print: (line: string) => void): Promise<void> {
  const profile = await mkdtemp(join(tmpdir(), 'gripbook-lighthouse-'))
  try {
    // The face needs a record on the device, so this browser has been here before and has the page's service worker.
    const visited = await chromium.launchPersistentContext(profile, {
      executablePath: CHROMIUM!,
      args: FLAGS,
      ...SIZES.phone,
    })
    const page = await visited.newPage()
    await page.goto(bench.url)
    await page.locator('#page > :not(.starting)').first().waitFor({ state: 'attached' })
    const path = await seeded(page)
    await visited.close()

    const rows: (string | number)[][] = []
    const wanting = new Set<string>()
    for (const [name, address, kept] of [
      ['first visit of /', '/', null],
      ['a face with its answer', path, profile],
    ] as const)
      for (const slowed of [true, false]) {
        const runs: Result[] = []
        for (let run = 0; run < RUNS; run++) runs.push(await judged(`${bench.url}${address}`, { slowed, kept }))
        rows.push([
          `${name}, ${slowed ? 'slow phone' : 'not slowed'}`,
          ...CATEGORIES.map((of) => medianOf(runs, of)),
          timeOf(runs),
        ])
        for (const of of CATEGORIES)
          if (medianOf(runs, of) < 100)
            for (const title of failing(runs[0]!, of)) wanting.add(`${name}, ${of}: ${title}`)
      }
    print(`Lighthouse, median of ${RUNS} runs (goal: ${GOAL} of 100 in each):`)
    print('')
    print(table(['', ...CATEGORIES, 'largest picture shown, ms'], rows))
    print('')
    for (const one of wanting) print(`- ${one}`)
    if (wanting.size > 0) print('')
  } finally {
    await rm(profile, { recursive: true, force: true })
  }
}

async function judged(url: string, { slowed, kept }: Way): Promise<Result> {
  const chrome = await launch({
    chromePath: CHROMIUM!,
    chromeFlags: ['--headless=new', ...FLAGS],
    ...(kept === null ? {} : { userDataDir: kept }),
    logLevel: 'silent',
  })
  try {
    const flags: Flags = {
      port: chrome.port,
      onlyCategories: [...CATEGORIES],
      disableStorageReset: kept !== null,
      logLevel: 'silent',
      ...(slowed ? {} : { throttlingMethod: 'provided' }),
    }
    const said = await lighthouse(url, flags)
    if (said === undefined || said.lhr.runtimeError !== undefined)
      throw new Error(`Lighthouse said nothing of ${url}: ${said?.lhr.runtimeError?.message}`)
    return said.lhr
  } finally {
    chrome.kill()
  }
}

function medianOf(runs: readonly Result[], category: string): number {
  return Math.round(median(runs.map(({ categories }) => (categories[category]?.score ?? 0) * 100)))
}

function timeOf(runs: readonly Result[]): string {
  return short(median(runs.map(({ audits }) => audits['largest-contentful-paint']?.numericValue ?? 0)))
}

/** What cost marks, with what it was found on. */
function failing({ categories, audits }: Result, category: string): string[] {
  return (categories[category]?.auditRefs ?? []).flatMap(({ id, weight }) => {
    const audit = audits[id]
    if (weight === 0 || audit?.score === undefined || audit.score === null || audit.score >= 0.9) return []
    return [`${audit.title}${audit.displayValue === undefined ? '' : ` (${audit.displayValue})`}`]
  })
}
