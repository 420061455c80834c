/**
 * Photographs every screen of the built page with the practice unit, in three sizes and every look, into shots/, and lays them out on one sheet per
 * size. Words after the command name what is wanted: `npm run shots -- phone dark face`. Ends with 1 when a screen could not be reached.
 */
import { randomUUID } from 'node:crypto'
import { mkdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Unit } from '@gripbook/engine'
import type { Page } from 'playwright-core'
import { type Bench, openBench, SIZES, type SizeName } from '../trials/page/bench.ts'
import { openPractice } from '../trials/page/hands.ts'
import { seedUnit } from '../trials/page/seed.ts'
import { contactSheet } from './shots/contactSheet.ts'
import { SCREENS, type Screen } from './shots/screens.ts'

const ROOT = fileURLToPath(new URL('..', import.meta.url))
const FOLDER = join(ROOT, 'shots')
/** ms: a screen that is not there by then is told as missing. */
const PATIENCE = 10_000

const LOOKS = {
  light: { scheme: 'light', chosen: {} },
  dark: { scheme: 'dark', chosen: {} },
  bright: { scheme: 'light', chosen: { look: 'bright' } },
  gloves: { scheme: 'light', chosen: { gloves: true } },
} as const

type Look = keyof typeof LOOKS
type Shot = { name: string; path: string }
type Round = { size: SizeName; look: Look; wanted: (name: string) => boolean }

const shots: Record<SizeName, Shot[]> = { phone: [], tablet: [], desk: [] }
const missed: string[] = []

async function take(page: Page, { size, look }: Round, name: string): Promise<void> {
  const whole = `${size}-${look}-${name}`
  const path = join(FOLDER, `${whole}.png`)
  // Pictures are unpacked, nothing is told any more, and the frame is drawn.
  await page.waitForLoadState('networkidle')
  await page.waitForTimeout(250)
  await page.screenshot({ path })
  shots[size].push({ name: whole, path })
  process.stdout.write(`shots/${whole}.png\n`)
}

async function attempt(round: Round, name: string, work: () => Promise<void>): Promise<void> {
  if (!round.wanted(`${round.size}-${round.look}-${name}`)) return
  try {
    await work()
  } catch (error) {
    const why = error instanceof Error ? error.message.split('\n')[0] : String(error)
    missed.push(`${round.size}-${round.look}-${name}: ${why}`)
  }
}

async function round(bench: Bench, of: Round): Promise<void> {
  const { scheme, chosen } = LOOKS[of.look]
  const hard = of.look === 'bright' || of.look === 'gloves'
  const screens = SCREENS.filter((screen) => !hard || screen.hard)
  const own = hard ? [] : ['units-first-use', 'pairing']
  const names = [...screens.map(({ name }) => name), ...own].map((name) => `${of.size}-${of.look}-${name}`)
  if (!names.some(of.wanted)) return

  const { context, page } = await bench.open(of.size, { colorScheme: scheme, reducedMotion: 'reduce' })
  page.setDefaultTimeout(PATIENCE)
  try {
    await page.evaluate((change) => {
      const kept = JSON.parse(localStorage.getItem('gripbook settings') ?? '{}') as object
      localStorage.setItem('gripbook settings', JSON.stringify({ ...kept, ...change }))
    }, chosen)
    await page.reload()
    await page.getByRole('heading', { level: 1 }).waitFor()
    if (!hard) await attempt(of, 'units-first-use', () => take(page, of, 'units-first-use'))
    const practice = await openPractice(page)
    await bring(bench, page)
    for (const screen of screens)
      await attempt(of, screen.name, async () => {
        await reach(page, bench.url, practice, screen)
        await take(page, of, screen.name)
      })
    if (!hard)
      await attempt(of, 'pairing', async () => {
        const made = await bench.shop.owner.ask('POST', '/api/codes', { name: 'A builder', role: 'builder' })
        // The page takes the code out of its address at once: it is opened anew with it, not reloaded.
        await page.goto('about:blank')
        await page.goto(`${bench.url}/#pair=${made.json<{ code: string }>().code}`)
        await page.getByRole('dialog').waitFor()
        await take(page, of, 'pairing')
      })
  } catch (error) {
    missed.push(`${of.size}-${of.look}: ${error instanceof Error ? error.message.split('\n')[0] : String(error)}`)
  } finally {
    await context.close()
  }
}

async function reach(page: Page, url: string, practice: string, screen: Screen): Promise<void> {
  await page.goto(`${screen.practice ? practice : url}${screen.path}`)
  await page.locator(screen.ready).first().waitFor()
  await screen.steps?.(page)
}

/** Units of the shop's own, so that the list has something in it. */
async function bring(bench: Bench, page: Page): Promise<void> {
  await page.goto(bench.url)
  await page.getByRole('heading', { level: 1 }).waitFor()
  for (const [file, name] of [
    ['yard-loader.json', 'Gearbox of the yard loader'],
    ['side-cover.json', 'Angle drive, side cover leaks'],
  ] as const) {
    const unit = JSON.parse(await readFile(join(ROOT, 'demo', file), 'utf8')) as Unit
    await seedUnit(page, randomUUID(), { ...unit, name })
  }
}

async function main(words: string[]): Promise<void> {
  await mkdir(FOLDER, { recursive: true })
  const wanted = (name: string) => words.every((word) => name.includes(word))
  const bench = await openBench()
  try {
    for (const size of Object.keys(SIZES) as SizeName[])
      for (const look of Object.keys(LOOKS) as Look[])
        if (size === 'phone' || look === 'light' || look === 'dark') await round(bench, { size, look, wanted })
  } finally {
    await bench.close()
  }
  for (const [size, taken] of Object.entries(shots)) {
    if (taken.length === 0) continue
    await contactSheet(taken, join(FOLDER, `sheet-${size}.png`))
    process.stdout.write(`shots/sheet-${size}.png\n`)
  }
  for (const one of missed) process.stdout.write(`not reached: ${one}\n`)
  process.exitCode = missed.length > 0 ? 1 : 0
}

await main(process.argv.slice(2))
