/**
 * How long it takes from a tap to the new verdict on the page, painted: the built page on a phone's screen, its thread four times slower, a face
 * of 40 holes and 6 kinds with its photograph.
 */
import { randomUUID } from 'node:crypto'
import type { Unit } from '@gripbook/engine'
import { boltFound } from '@gripbook/record'
import type { Page } from 'playwright-core'
import { place } from '../packages/engine/src/placement/place.ts'
import { generateUnit } from '../packages/engine/src/placement/testing/generateUnit.ts'
import { loadSolver } from '../packages/engine/src/placement/testing/highs.ts'
import { type Bench, openBench, photograph } from '../trials/page/bench.ts'
import { seedUnit, standBeside } from '../trials/page/seed.ts'
import { type Sample, watchPage } from './pageWatch.ts'
import { median, short, table } from './table.ts'

const SLOWED = 4
const SAMPLES = 60
/** The first taps of a page that was just opened run code for the first time: they are told apart. */
const FIRST = 5
/** ms after which a tap counts as without an answer. */
const PATIENCE = 10_000
/** px of the photograph: 12 megapixels. */
const PHOTOGRAPH = { width: 4_000, height: 3_000 }

type Way = { name: string; rate: number; oneThread: boolean }

const WAYS: readonly Way[] = [
  { name: 'nothing slowed', rate: 1, oneThread: false },
  { name: `the page ${SLOWED} times slower`, rate: SLOWED, oneThread: false },
  { name: `page and sums ${SLOWED} times slower, on one thread`, rate: SLOWED, oneThread: true },
]

type Taken = { way: Way; first: Sample[]; samples: Sample[] }

export async function pageVerdict(print: (line: string) => void): Promise<void> {
  const bench = await openBench()
  try {
    const picture = await photograph(PHOTOGRAPH.width, PHOTOGRAPH.height)
    for (const coupled of [false, true]) {
      const { unit } = generateUnit(coupled ? 2 : 1, { holes: 40, kinds: 6, coupled, stated: true, unread: 0.1 })
      print(
        `${coupled ? 'With rank lines and roughly known lengths' : 'Nothing coupled beyond one length per kind'}, 40 holes and 6 kinds (goal: 95 of 100 under 100 ms):`,
      )
      print('')
      const taken: Taken[] = []
      for (const way of WAYS) taken.push(await tapped(bench, unit, picture, way))
      print(
        table(
          [
            'tap on what sat here, to the verdict painted, ms',
            'median',
            '95 of 100',
            'most',
            `first ${FIRST}, most`,
            'taps',
          ],
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
          [
            'of it, median, ms',
            'entry on disk',
            'read, folded, file made',
            'answer of the sums',
            'page drawn anew',
            'painted',
          ],
          taken.map(({ way, samples }) => [
            way.name,
            ...PARTS.map((part) => short(Math.max(0, median(samples.map(part))))),
          ]),
        ),
      )
      print('')
      const slow = taken[1]!
      print(
        `Ratio to the same page not slowed, medians: ${short(median(slow.samples.map(whole)) / median(taken[0]!.samples.map(whole)))}.`,
      )
      print('')
      await partsAlone(bench, unit, picture, print)
    }
    print(
      'The browser slows a page’s thread and no worker: in the second line the sums run at the full speed of this machine. In the third they run in a frame of the page, so on one thread with it, both slowed: no phone is worse off, since it has a core for each.',
    )
  } finally {
    await bench.close()
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

async function tapped(bench: Bench, unit: Unit, picture: Buffer, way: Way): Promise<Taken> {
  const { page, close, hole, kinds } = await faceOpened(bench, unit, picture, way)
  const first: Sample[] = []
  const samples: Sample[] = []
  try {
    for (let i = 0; i < SAMPLES + FIRST; i++) {
      await page
        .locator('.hole .choice')
        .first()
        .locator('label')
        .nth(kinds[i % 2]!)
        .tap()
      const sample = await page.evaluate((patience) => window.watch.done(patience), PATIENCE)
      if (sample === null) throw new Error(`no other verdict of hole ${hole} after a tap (${way.name})`)
      ;(i < FIRST ? first : samples).push(sample)
    }
  } finally {
    await close()
  }
  return { way, first, samples }
}

async function faceOpened(bench: Bench, unit: Unit, picture: Buffer, { rate, oneThread }: Way) {
  const { context, page } = await bench.open('phone')
  const id = randomUUID()
  await seedUnit(page, id, unit, { photographs: [{ face: unit.faces[0]!.id, bytes: picture, ...PHOTOGRAPH }] })
  const { hole, kinds } = await turning(unit)
  // The loader that runs this file writes the names of functions with a helper of its own.
  await page.addInitScript('globalThis.__name ??= (named) => named')
  await page.addInitScript(watchPage, { oneThread })
  await page.goto(`${bench.url}/unit/${id}/face/${unit.faces[0]!.id}/hole/${hole}`)
  await page.locator('.hole__belongs').waitFor()
  await page.locator('.stage__photograph').waitFor()
  await page.evaluate((at) => window.watch.look(at), `button.mark[data-hole="${hole}"]`)
  const cdp = await context.newCDPSession(page)
  await cdp.send('Emulation.setCPUThrottlingRate', { rate })
  return { page, hole, kinds, close: () => context.close() }
}

/** A hole whose verdict on what sat in it is another one with each of two kinds; these by their place in the tray. */
async function turning(unit: Unit): Promise<{ hole: string; kinds: [number, number] }> {
  const face = unit.faces[0]!
  const solve = await loadSolver()
  for (const { id } of face.holes) {
    const said = await Promise.all(
      face.kinds!.map(async (kind) => {
        const holes = face.holes.map((hole) => (hole.id === id ? { ...hole, asFound: kind.id } : hole))
        const answer = await place({ ...unit, faces: [{ ...face, holes }] }, { solver: async () => solve })
        const here = answer.faces[0]!.holes[id]!
        return here.verdict === 'contradicted' ? undefined : here.asFound?.verdict
      }),
    )
    const right = said.indexOf('right')
    const wrong = said.indexOf('must change')
    if (right >= 0 && wrong >= 0) return { hole: id, kinds: [wrong, right] }
  }
  throw new Error('no hole of this unit has a settled verdict')
}

/** Each part by itself, on the page's thread, not slowed. */
async function partsAlone(bench: Bench, unit: Unit, picture: Buffer, print: (line: string) => void): Promise<void> {
  const { context, page } = await bench.open('phone')
  const id = randomUUID()
  const face = unit.faces[0]!
  await seedUnit(page, id, unit, { photographs: [{ face: face.id, bytes: picture, ...PHOTOGRAPH }] })
  await standBeside(page)
  const happening = boltFound({ face: face.id, hole: face.holes[0]!.id, kind: face.kinds![0]!.id })
  const rows: (string | number)[][] = []
  for (const rate of [1, SLOWED]) {
    await slow(page, rate)
    const took = await page.evaluate(({ id, happening }) => window.beside.parts(id, happening, 15), { id, happening })
    rows.push([
      rate === 1 ? 'nothing slowed' : `the page ${rate} times slower`,
      ...[took.write, took.read, took.fold, took.file, took.sums].map((times) => short(median(times))),
    ])
  }
  print(
    table(
      [
        'each part by itself, median of 15, ms',
        'one entry on disk',
        'all entries read',
        'all folded',
        'unit file made',
        'the sums',
      ],
      rows,
    ),
  )
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
