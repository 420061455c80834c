/** A whole job with nothing but the page: taken in, apart, together again on two devices, half of it without signal, released, and proven elsewhere. */
import { copyFile, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fold, openBefore, passedStops, sha256OfText, stateHash } from '@gripbook/record'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { run } from '../../packages/cli/src/testing/served.ts'
import { type Bench, photograph } from './bench.ts'
import { layOut, markHoles, newFace, noteFound, read, takeIn } from './hands.ts'
import type { Beside } from './inPage.ts'
import {
  act,
  bindsAndIsCleared,
  figureBefore,
  goOn,
  heed,
  lookAhead,
  orderTaken,
  partOut,
  readFigure,
  refusesToRelease,
  roundAt,
  sent,
  torque,
  waiting,
  wrenchChosen,
  wrenchTakenOver,
} from './jobHands.ts'
import { standBeside } from './seed.ts'
import { withBench } from './withBench.ts'

let bench: Bench
withBench((opened) => {
  bench = opened
})

/** Two of three across; the bolts of 4 and 5 were put into each other's hole. */
const PLACES = [0, 2, 4, 10, 12, 14]
const FOUND = { 1: 'M6×30', 2: 'M6×45', 3: 'M6×30', 4: 'M6×45', 5: 'M6×30', 6: 'M6×30' }
const GRIPS = [
  ['1', '16.0'],
  ['2', '31.0'],
  ['3', '16.1'],
  ['4', '16.0'],
  ['5', '31.1'],
  ['6', '15.9'],
] as const
const ALL = 6

const IN_A_YEAR = new Date(Date.now() + 365 * 86_400_000).toISOString().slice(0, 10)

const entriesIn = (unit: string) => bench.shop.store.ofUnit(unit)
const ready = (page: Page) => page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))

/** As a device folds it, and as the shop does. */
async function foldedOn(page: Page, unit: string): Promise<string> {
  await standBeside(page)
  return page.evaluate((unit) => (window as unknown as { beside: Beside }).beside.standing(unit), unit)
}
const foldedInShop = async (unit: string) => stateHash(fold(unit, await entriesIn(unit)), sha256OfText)

test('from taking in to the release, and the record is proven on another machine', async () => {
  const phone = await bench.openPaired('phone')
  await ready(phone.page)
  const { page } = phone
  let withoutSignal = 0

  // taken in, and what is read and comes out before the face is looked at
  await takeIn(page, 'Reducer of the winch')
  const unit = /\/unit\/([0-9a-f-]{36})/.exec(page.url())![1]!
  await page.getByRole('link', { name: /^Figures/ }).click()
  await figureBefore(page, { usual: 'End play', text: '0.62', least: '0.1', most: '0.5', source: 'manual, 4-12' })
  await page.getByRole('link', { name: 'Back to the unit' }).click()
  await newFace(page, 'End cover', '10')
  const camera = { name: 'face.jpg', mimeType: 'image/jpeg', buffer: await photograph(1600, 1200) }
  await page.getByTestId('camera').first().setInputFiles(camera)
  await page.locator('.stage__photograph').waitFor()
  await sent(page)

  // no signal from here until the bolts are down
  const before = (await entriesIn(unit)).length
  await phone.context.setOffline(true)
  await markHoles(page, PLACES)
  await layOut(page, [
    { length: '30', count: 4 },
    { length: '45', count: 2 },
  ])
  await noteFound(page, FOUND)
  await read(page, GRIPS)
  await page.getByText('6 settled', { exact: true }).waitFor()
  await page.getByText('Swap 4 and 5', { exact: true }).first().waitFor()
  await orderTaken(page)
  await page.getByRole('link', { name: 'Back to the unit' }).click()
  await partOut(page, { what: 'Bracket', face: 'End cover', hole: '3', wayRound: 'Lug towards the drain' })
  await partOut(page, { what: 'Gasket', face: 'End cover' })
  await page.getByRole('link', { name: /^Before release/ }).click()
  const heading = page.getByRole('heading', { name: /things are open$/ })
  await refusesToRelease(
    page,
    Number.parseInt((await heading.textContent())!, 10),
    'The checker or the owner releases.',
  )
  await page.getByRole('link', { name: 'Back to the unit' }).click()

  // by hand first; one is run down before the last is in, with a reason
  await page.getByRole('link', { name: /^End cover/ }).click()
  await page.getByRole('link', { name: /^Put it together/ }).click()
  await act(page, { round: 'Start by hand', action: 'Started by hand', to: ALL - 1, of: ALL, next: 'Run down' })
  await lookAhead(page, 'Run down')
  await page.getByRole('button', { name: 'Head on its seat' }).click()
  await goOn(page, 'Not started by hand yet: hole', 'the hose is in the way of the last one')
  await act(page, { round: 'Start by hand', action: 'Started by hand', from: 5, to: ALL, of: ALL, next: 'Run down' })

  // one binds: nothing goes on until it is out and what it was is told; it starts again by hand
  await act(page, { round: 'Run down', action: 'Head on its seat', from: 1, to: 3, of: ALL, next: 'Snug' })
  const bound = await bindsAndIsCleared(page)
  await roundAt(page, 'Start by hand', 5, ALL)
  await act(page, { round: 'Start by hand', action: 'Started by hand', from: 5, to: ALL, of: ALL, next: 'Run down' })
  await act(page, { round: 'Run down', action: 'Head on its seat', from: 3, to: ALL, of: ALL, next: 'Snug' })
  await page.getByRole('button', { name: 'All 6 left are snug' }).click()
  await roundAt(page, 'Pass 1 of 3', 0, ALL)
  expect(await entriesIn(unit)).toHaveLength(before)
  await phone.context.setOffline(false)
  await page.getByRole('link', { name: 'Back to the face' }).click()
  await sent(page)
  withoutSignal += (await entriesIn(unit)).length - before

  // in the middle of the first pass the work goes on with another person, on another device
  await page.getByRole('link', { name: /^Go on at the bench/ }).click()
  await wrenchChosen(page, IN_A_YEAR)
  await torque(page, { round: 'Pass 1 of 3', to: 3, of: ALL, next: '' }, String)
  await page.getByRole('button', { name: 'More', exact: true }).click()
  await page.getByRole('button', { name: 'Pause' }).click()
  await page.getByText('Paused. Go on from here on any device.').waitFor()
  await sent(page)
  const tablet = await bench.openPaired('tablet')
  const other = tablet.page
  await ready(other)
  await other.goto(page.url())
  const goOnThere = other.getByRole('link', { name: /^Go on at the bench/ })
  await expect.poll(() => goOnThere.textContent(), { timeout: 60_000 }).toMatch(/Pass.*3 of 6.*hole/)
  await goOnThere.click()
  await roundAt(other, 'Pass 1 of 3', 3, ALL)
  await wrenchTakenOver(other, IN_A_YEAR)
  await torque(other, { round: 'Pass 1 of 3', from: 3, to: ALL, of: ALL, next: 'Pass 2 of 3' }, String)

  // without signal again until the face is closed
  await other.getByRole('link', { name: 'Back to the face' }).click()
  await sent(other)
  const between = (await entriesIn(unit)).length
  await tablet.context.setOffline(true)
  await goOnThere.click()
  await torque(other, { round: 'Pass 2 of 3', to: ALL, of: ALL, next: 'Pass 3 of 3' }, String)
  await torque(other, { round: 'Pass 3 of 3', to: ALL, of: ALL, next: 'Witness mark' }, (wanted) => `${wanted + 0.2}`)
  await other.getByRole('button', { name: 'All 6 left are marked' }).click()
  await other.getByRole('heading', { name: 'Close', exact: true }).waitFor()
  await other.getByRole('button', { name: 'The face is closed' }).click()
  await heed(other, 'Still out: Gasket.')
  await other.goto(`${bench.url}/unit/${unit}/finish`)
  await other.getByRole('button', { name: 'Gasket is in' }).click()
  await other.getByText('Gasket is in.').waitFor()
  await other.goto(`${bench.url}/unit/${unit}/face/end-cover/bench`)
  await other.getByRole('button', { name: 'The face is closed' }).click()
  await other.getByRole('heading', { name: 'This face is done' }).waitFor()
  await other.getByRole('link', { name: 'Back to the face' }).click()
  await other.getByRole('link', { name: 'Back to the unit' }).click()
  await other.getByRole('link', { name: /^Figures/ }).click()
  await readFigure(other, 'End play', 'after', '0.32')
  await other.goto(`${bench.url}/unit/${unit}/finish`)
  await refusesToRelease(other, 1, 'Who works here is known when there is signal: sign and release then.')
  expect(await waiting(other)).toBeGreaterThan(ALL * 3)
  expect(await entriesIn(unit)).toHaveLength(between)
  await tablet.context.setOffline(false)
  await sent(other)
  withoutSignal += (await entriesIn(unit)).length - between

  // a third person looks it over, signs and releases
  const third = await bench.openPaired('desk', 'checker')
  const checker = third.page
  await checker.goto(`${bench.url}/unit/${unit}/finish`)
  await checker.getByRole('heading', { name: '1 thing is open' }).waitFor({ timeout: 60_000 })
  await refusesToRelease(checker, 1, 'Not yet: 1 thing is open.')
  expect(openBefore(fold(unit, await entriesIn(unit))).map(({ why }) => why.code)).toEqual(['not-checked'])
  await checker.getByRole('button', { name: 'Sign as checker' }).click()
  await checker.getByRole('heading', { name: 'Nothing is open' }).waitFor()
  await checker.getByRole('button', { name: 'Release the unit' }).click()
  await checker.getByRole('heading', { name: 'Released' }).waitFor()
  await sent(checker)

  // every device and the shop have made the same of it, and no stop was passed without a reason
  await page.goto(`${bench.url}/unit/${unit}/finish`)
  for (const one of [page, other, checker]) {
    await one.getByRole('heading', { name: 'Released' }).waitFor({ timeout: 60_000 })
    await expect.poll(() => foldedOn(one, unit)).toBe(await foldedInShop(unit))
  }
  const entries = await entriesIn(unit)
  const { entries: _, ...state } = fold(unit, entries)
  expect((await bench.shop.owner.ask('GET', `/api/units/${unit}`)).json()).toEqual(JSON.parse(JSON.stringify(state)))
  expect(withoutSignal).toBeGreaterThan(entries.length / 2)
  const folded = fold(unit, entries)
  expect(passedStops(folded)).toEqual([
    expect.objectContaining({
      stop: expect.objectContaining({ gate: 'hand-start', face: 'end-cover' }),
      override: expect.objectContaining({ reason: 'the hose is in the way of the last one' }),
    }),
  ])
  expect([openBefore(folded), folded.sinceRelease, folded.clashes]).toEqual([[], [], []])
  const { holes, closed } = folded.faces['end-cover']!
  expect(closed?.value).toBe(true)
  for (const [hole, { placed, steps }] of Object.entries(holes)) {
    expect(placed?.value).toBe(hole === '2' || hole === '5' ? 'b2' : 'b1')
    expect(steps.final?.value).toEqual({ torque: 10.2 })
  }
  const tightened = entries.flatMap(({ type, body }) => (type === 'pass-torqued' ? [body.tool] : []))
  expect(tightened).toHaveLength(ALL * 3)
  for (const tool of tightened) expect(tool).toMatchObject({ number: 'W4', range: [2, 14], calibratedUntil: IN_A_YEAR })
  const stood = entries.filter(({ type, body }) => type.startsWith('resistance') && body.hole === bound)
  expect(stood.map(({ type }) => type)).toEqual(['resistance-felt', 'resistance-cleared'])
  for (const { context } of [phone, tablet, third]) await context.close()

  await provenElsewhere(unit)
})

/** Printed from the shop's record; then only the paper and its archive are taken to a machine that knows nothing of the shop. */
async function provenElsewhere(unit: string): Promise<void> {
  const shop = join(bench.shop.folder, 'shop')
  const elsewhere = await mkdtemp(join(tmpdir(), 'gb-elsewhere-'))
  try {
    const printed = join(bench.shop.folder, 'winch.pdf')
    const made = await run(['record', unit, '-o', printed, '--data', shop, '--address', bench.url])
    expect([made.err, made.status]).toEqual(['', 0])
    const data = join(elsewhere, 'data')
    await mkdir(data)
    const check = (file: string) => run(['check', join(elsewhere, file), '--data', data])
    for (const ending of ['pdf', 'zip'])
      await copyFile(printed.replace('pdf', ending), join(elsewhere, `winch.${ending}`))
    const paper = await check('winch.pdf')
    expect([paper.out, paper.status]).toEqual([expect.stringContaining('The build record is whole.'), 0])
    expect(paper.out).toContain('It fits the archive beside it')
    const archive = await check('winch.zip')
    expect([archive.out, archive.status]).toEqual([expect.stringContaining('The archive is whole.'), 0])

    for (const ending of ['pdf', 'zip']) {
      const bytes = await readFile(join(elsewhere, `winch.${ending}`))
      const middle = Math.floor(bytes.length / 2)
      bytes[middle]! ^= 1
      await writeFile(join(elsewhere, `changed.${ending}`), bytes)
      const { status, out } = await check(`changed.${ending}`)
      expect([status, out]).toEqual([1, expect.stringContaining('is not whole')])
      const places = [...out.matchAll(/bytes? (\d+)(?: to (\d+))?/g)]
      const named = places.some(([, from, to]) => Number(from) <= middle && middle <= Number(to ?? from))
      expect(named, `byte ${middle}: ${out}`).toBe(true)
    }
    expect(await readdir(data)).toEqual([])
  } finally {
    await rm(elsewhere, { recursive: true, force: true })
  }
}
