/**
 * How long it takes from a tap, or from Enter, to the new verdict on the page, painted: the built page on a phone's screen, its thread four times
 * slower, a face of 40 holes and 6 kinds with its photograph; beside the same page not slowed.
 */
import { randomUUID } from 'node:crypto'
import type { Unit } from '@gripbook/engine'
import { boltFound } from '@gripbook/record'
import type { Page } from 'playwright-core'
import { generateUnit } from '../packages/engine/src/placement/testing/generateUnit.ts'
import { type Bench, openBench, photograph } from '../trials/page/bench.ts'
import { seedUnit, standBeside } from '../trials/page/seed.ts'
import { type Sample, watchPage } from './pageWatch.ts'
import { median, short, table } from './table.ts'
import { turningFound, turningGrip } from './turning.ts'

const SLOWED = 4
const SAMPLES = 50
/** The first of a page that was just opened run code for the first time: they are told apart. */
const FIRST = 5
/** ms after which an entry counts as without an answer. */
const PATIENCE = 10_000
/** px of the photograph: 12 megapixels. */
const PHOTOGRAPH = { width: 4_000, height: 3_000 }
/** Each part by itself so many times. */
const ALONE = 15

type Way = { name: string; rate: number; oneThread: boolean }

const WAYS: readonly Way[] = [
  { name: 'nothing slowed', rate: 1, oneThread: false },
  { name: `the page ${SLOWED} times slower`, rate: SLOWED, oneThread: false },
  { name: `page and sums ${SLOWED} times slower, on one thread`, rate: SLOWED, oneThread: true },
]

/** What is entered over and over, and where its verdict is seen. */
type Doing = {
  name: string
  /** Behind the address of the face. */
  path: string
  ready: string
  look: string
  enter(page: Page, time: number): Promise<void>
}

type Taken = { way: Way; first: Sample[]; samples: Sample[] }

export async function pageVerdict(print: (line: string) => void): Promise<void> {
  const bench = await openBench()
  try {
    const picture = await photograph(PHOTOGRAPH.width, PHOTOGRAPH.height)
    for (const coupled of [false, true]) {
      const { unit, doings } = await turningUnit(coupled)
      const lines = coupled ? 'With rank lines and roughly known lengths' : 'Nothing coupled beyond one length per kind'
      print(`${lines}, 40 holes and 6 kinds (goal: 95 of 100 under 100 ms):`)
      print('')
      for (const doing of doings) {
        const taken: Taken[] = []
        for (const way of WAYS) taken.push(await timed(bench, unit, picture, doing, way))
        tell(doing, taken, print)
      }
      await partsAlone(bench, unit, picture, print)
    }
    print(
      'The browser slows a page’s thread and no worker: in each second line the sums run at the full speed of this machine. In each third they run in a frame of the page, so on one thread with it, both slowed: a phone has a core for each, so one that is no more than that much slower should do better.',
    )
  } finally {
    await bench.close()
  }
}

/** The first generated unit on which both turn a verdict. */
async function turningUnit(coupled: boolean): Promise<{ unit: Unit; doings: Doing[] }> {
  for (let seed = 1; seed < 50; seed++) {
    const { unit } = generateUnit(seed, { holes: 40, kinds: 6, coupled, stated: true, unread: 0.1 })
    const found = await turningFound(unit)
    const grip = found === null ? null : await turningGrip(unit)
    if (found !== null && grip !== null) return { unit, doings: [tap(found), enter(grip)] }
  }
  throw new Error('no generated unit on which a tap and a reading turn a verdict')
}

type Found = NonNullable<Awaited<ReturnType<typeof turningFound>>>
type Grip = NonNullable<Awaited<ReturnType<typeof turningGrip>>>

/** On the photograph's own page: another bolt sat in this hole. */
function tap({ hole, kinds }: Found): Doing {
  return {
    name: 'tap on what sat here',
    path: `/hole/${hole}`,
    ready: '.hole__belongs',
    look: `button.mark[data-hole="${hole}"]`,
    enter: (page, time) =>
      page
        .locator('.hole .choice')
        .first()
        .locator('label')
        .nth(kinds[time % 2]!)
        .tap(),
  }
}

/** On the page of readings: another grip of this hole, typed, and Enter. */
function enter({ hole, grips }: Grip): Doing {
  return {
    name: 'Enter behind a grip',
    path: `/readings/${encodeURIComponent(`grip ${hole}`)}`,
    ready: '.readings__standing strong',
    look: '.readings__standing strong',
    async enter(page, time) {
      await page.getByRole('button', { name: new RegExp(`^Hole ${hole}\\b`) }).click()
      await page.getByLabel(`Grip, Hole ${hole}`, { exact: true }).fill(String(grips[time % 2]))
      await page.keyboard.press('Enter')
    },
  }
}

const whole = ({ tap, painted }: Sample) => painted - tap
const PARTS: readonly ((sample: Sample) => number)[] = [
  ({ tap, written }) => written - tap,
  ({ written, asked }) => asked - written,
  ({ asked, answered }) => answered - asked,
  ({ answered, changed }) => changed - answered,
  ({ changed, painted }) => painted - changed,
]

function tell({ name }: Doing, taken: readonly Taken[], print: (line: string) => void): void {
  print(
    table(
      [`${name}, to the verdict painted, ms`, 'median', '95 of 100', 'most', `first ${FIRST}, most`, 'times'],
      taken.map(({ way, first, samples }) => {
        const times = samples.map(whole)
        return [
          way.name,
          short(median(times)),
          short(share(times, 0.95)),
          short(Math.max(...times)),
          short(Math.max(...first.map(whole))),
          times.length,
        ]
      }),
    ),
  )
  print('')
  print(
    table(
      ['of it, median, ms', 'entry on disk', 'read, folded, file made', 'sums answered', 'drawn anew', 'painted'],
      taken.map(({ way, samples }) => [
        way.name,
        ...PARTS.map((part) => short(Math.max(0, median(samples.map(part))))),
      ]),
    ),
  )
  const [plain, slow] = taken.map(({ samples }) => median(samples.map(whole)))
  print('')
  print(`Ratio of the medians, page slowed to not slowed: ${short(slow! / plain!)}.`)
  print('')
}

async function timed(bench: Bench, unit: Unit, picture: Buffer, doing: Doing, way: Way): Promise<Taken> {
  const { context, page, path } = await seeded(bench, unit, picture)
  const first: Sample[] = []
  const samples: Sample[] = []
  try {
    // The loader that runs this file writes the names of functions with a helper of its own.
    await page.addInitScript('globalThis.__name ??= (named) => named')
    await page.addInitScript(watchPage, { oneThread: way.oneThread })
    await page.goto(`${path}${doing.path}`)
    await page.locator(doing.ready).waitFor()
    await page.waitForLoadState('networkidle')
    await page.evaluate((at) => window.watch.look(at), doing.look)
    await slow(page, way.rate)
    for (let time = 0; time < SAMPLES + FIRST; time++) {
      await doing.enter(page, time)
      const sample = await page.evaluate((patience) => window.watch.done(patience), PATIENCE)
      if (sample === null) throw new Error(`no other verdict after ${doing.name} (${way.name}, time ${time})`)
      ;(time < FIRST ? first : samples).push(sample)
    }
  } finally {
    await context.close()
  }
  return { way, first, samples }
}

async function seeded(bench: Bench, unit: Unit, picture: Buffer) {
  const { context, page } = await bench.open('phone')
  const id = randomUUID()
  const face = unit.faces[0]!.id
  await seedUnit(page, id, unit, { photographs: [{ face, bytes: picture, ...PHOTOGRAPH }] })
  return { context, page, id, path: `${bench.url}/unit/${id}/face/${face}` }
}

/** Each part by itself, on the page's thread. */
async function partsAlone(bench: Bench, unit: Unit, picture: Buffer, print: (line: string) => void): Promise<void> {
  const { context, page, id } = await seeded(bench, unit, picture)
  await standBeside(page)
  const face = unit.faces[0]!
  const happening = boltFound({ face: face.id, hole: face.holes[0]!.id, kind: face.kinds![0]!.id })
  const rows: (string | number)[][] = []
  for (const rate of [1, SLOWED]) {
    await slow(page, rate)
    const took = await page.evaluate(({ id, happening, times }) => window.beside.parts(id, happening, times), {
      id,
      happening: JSON.stringify(happening),
      times: ALONE,
    })
    rows.push([
      rate === 1 ? 'nothing slowed' : `the page ${rate} times slower`,
      ...[took.write, took.read, took.fold, took.file, took.sums].map((times) => short(median(times))),
    ])
  }
  const head = ['one entry on disk', 'all entries read', 'all folded', 'unit file made', 'the sums']
  print(table([`each part by itself, median of ${ALONE}, ms`, ...head], rows))
  print('')
  await context.close()
}

async function slow(page: Page, rate: number): Promise<void> {
  const cdp = await page.context().newCDPSession(page)
  await cdp.send('Emulation.setCPUThrottlingRate', { rate })
}

/** The value that so large a share stays under. */
function share(values: readonly number[], of: number): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.ceil(sorted.length * of) - 1)]!
}
