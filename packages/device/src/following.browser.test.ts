import { type Event, nextEntry, noteWritten, sha256OfText } from '@gripbook/record'
import { describe, expect, test } from 'vitest'
import { allSent, bench, OTHER, tab, title, UNIT, until, without } from './testing/trials.ts'

describe.skipIf(without)(title('what others do, in a real browser'), () => {
  const { shop: openShop, phone: newPhone } = bench()

  test('two devices that worked out of reach have the same unit once both have been back', async () => {
    const shop = await openShop()
    const pages = [await tab(await newPhone(), shop), await tab(await newPhone(), shop)]
    for (const page of pages) await allSent(page)
    shop.switches.offline = true
    for (const [index, page] of pages.entries())
      await page.evaluate(
        ([unit, from]) => {
          window.trial.device!.follow(unit)
          return window.trial.notes(unit, from, 30)
        },
        [UNIT, index * 100] as const,
      )
    shop.switches.offline = false
    const hashes = () => Promise.all(pages.map((page) => page.evaluate((unit) => window.trial.stateHash(unit), UNIT)))
    await until(
      async () => (await pages[0]!.evaluate((unit) => window.trial.device!.entriesOf(unit), UNIT)).length,
      (count) => count === 60,
    )
    await until(hashes, ([a, b]) => a === b)
    expect(await shop.store().ofUnit(UNIT)).toHaveLength(60)
    // What comes now comes by the stream, and says that it knew of all before it.
    shop.requests.length = 0
    await pages[0]!.evaluate((unit) => window.trial.note(unit, 'live'), UNIT)
    await until(
      async () => (await pages[1]!.evaluate((unit) => window.trial.device!.unitOf(unit), UNIT)).entries.length,
      (count) => count === 61,
    )
    const [last] = (await shop.store().ofUnit(UNIT)).slice(-1)
    expect(Object.values(last!.seen)).toEqual([30])
  })

  test('a watcher in another tab hears of an entry', async () => {
    const shop = await openShop()
    const phone = await newPhone()
    const [one, two] = [await tab(phone, shop), await tab(phone, shop, { pair: false })]
    await two.evaluate((unit) => {
      window.trial.device!.watch(unit, ({ entries }) => window.trial.statuses.push(entries.length))
    }, UNIT)
    await until(
      () => two.evaluate(() => window.trial.statuses),
      (seen) => seen.length > 0,
    )
    await one.evaluate((unit) => window.trial.note(unit, 'one'), UNIT)
    await until(
      () => two.evaluate(() => window.trial.statuses),
      (seen) => seen.includes(1),
    )
    expect(await two.evaluate(() => window.trial.device!.units())).toEqual([UNIT])
  })

  test('where no stream comes through, the shop is asked again and again', async () => {
    const shop = await openShop()
    shop.switches.noStream = true
    const [one, two] = [await tab(await newPhone(), shop), await tab(await newPhone(), shop)]
    await two.evaluate((unit) => void window.trial.device!.follow(unit), UNIT)
    await until(
      () => shop.requests.filter(({ path }) => path === '/live').length,
      (asked) => asked >= 2,
    )
    await one.evaluate((unit) => window.trial.note(unit, 'one'), UNIT)
    await until(
      () => two.evaluate((unit) => window.trial.device!.entriesOf(unit), UNIT),
      (seen) => seen.length === 1,
    )
  })

  test('what cannot be fetched when a unit is first looked at is fetched later, beside a stream that goes on', async () => {
    const shop = await openShop()
    const [one, two] = [await tab(await newPhone(), shop), await tab(await newPhone(), shop)]
    await one.evaluate((unit) => window.trial.note(unit, 'one'), UNIT)
    await allSent(one)
    await two.evaluate((unit) => void window.trial.device!.follow(unit), OTHER)
    await until(
      () => shop.streams(),
      (count) => count === 1,
    )
    await until(
      () => shop.requests.filter(({ path }) => path.endsWith('/missing')).length,
      (asked) => asked === 2,
    )
    await allSent(two)
    shop.switches.fail = { times: 1, status: 503 }
    await two.evaluate((unit) => void window.trial.device!.follow(unit), UNIT)
    await until(
      () => two.evaluate((unit) => window.trial.device!.entriesOf(unit), UNIT),
      (seen) => seen.length === 1,
    )
    expect(shop.switches.fail.times).toBe(0)
  })

  test('an entry that was changed on the way is told and not stored, and one that comes early counts when its turn comes', async () => {
    const shop = await openShop()
    const page = await tab(await newPhone(), shop)
    const device = '00000000-0000-4000-8000-0000000000d1'
    const made = ['one', 'two', 'three'].reduce<Event[]>((before, text, i) => {
      const known = { unit: UNIT, device, seq: i, last: before[i - 1]?.hash ?? null, tick: i, seen: {} }
      const given = { id: `00000000-0000-4000-8000-00000000000${i}`, at: '2026-03-01T09:00:00.000Z', who: 'b' }
      return before.concat(nextEntry(known, { ...given, ...noteWritten({ text }) }, sha256OfText))
    }, [])
    await page.evaluate((unit) => {
      window.trial.device!.watchNotStored((all) => window.trial.statuses.push(...all.map(({ code }) => code)))
      window.trial.device!.follow(unit)
    }, UNIT)
    await until(
      () => shop.streams(),
      (count) => count === 1,
    )
    shop.tell([made[2]!, { ...made[0]!, body: { text: 'changed' } }])
    await until(
      () => page.evaluate(() => window.trial.statuses),
      (seen) => seen.includes('wrong-hash'),
    )
    shop.tell([made[0]!, made[1]!, made[1]!])
    await until(
      () => page.evaluate((unit) => window.trial.device!.entriesOf(unit), UNIT),
      (seen) => seen.length === 3,
    )
    await page.evaluate((unit) => window.trial.note(unit, 'after'), UNIT)
    const [last] = (await page.evaluate((unit) => window.trial.device!.entriesOf(unit), UNIT)).slice(-1)
    expect(last?.event.seen).toEqual({ [device]: 3 })
  })
})
