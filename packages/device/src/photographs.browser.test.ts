import { createHash } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { openPage } from './testing/browser.ts'
import { allSent, bench, status, tab, title, UNIT, until, without } from './testing/trials.ts'

const MB = 1_048_576

describe.skipIf(without)(title('sending photographs from a real browser'), () => {
  const { shop: openShop, phone: newPhone } = bench()

  test('an upload that is cut in the middle of a piece goes on where it was cut, also after a reload', async () => {
    const shop = await openShop()
    const page = await tab(await newPhone(), shop)
    shop.switches.offline = true
    const name = await page.evaluate(([unit, bytes]) => window.trial.picture(unit, bytes), [
      UNIT,
      3 * MB + 12_345,
    ] as const)
    expect(await status(page)).toMatchObject({ waiting: { photographs: 1, bytes: 3 * MB + 12_345, entries: 1 } })
    shop.switches.cutUploads = 2
    await page.reload()
    await page.evaluate(() => window.trial.open())
    shop.switches.offline = false
    await allSent(page)
    const kept = shop.photographs.get(name)!
    expect([kept.length, createHash('sha256').update(kept).digest('hex')]).toEqual([3 * MB + 12_345, name])
    // Pieces that were cut went on from where they were: no more than four, and the rest of two.
    expect(shop.requests.filter(({ method, path }) => method === 'PATCH' && path !== 'cut').length).toBeLessThanOrEqual(
      5,
    )
    const here = await page.evaluate(async (sha) => (await window.trial.device!.photographOf(sha))?.length, name)
    expect(here).toBe(3 * MB + 12_345)
  })

  test('an entry written while a photograph is on its way goes before its next piece', async () => {
    const shop = await openShop()
    const page = await tab(await newPhone(), shop)
    await allSent(page)
    shop.requests.length = 0
    shop.switches.slow = 150
    await page.evaluate(
      (bytes) => window.trial.device!.photograph(window.trial.filled(bytes, 2)).then(() => {}),
      6 * MB,
    )
    await until(
      () => shop.requests.filter(({ method }) => method === 'PATCH').length,
      (count) => count >= 1,
    )
    await page.evaluate((unit) => window.trial.note(unit, 'in between'), UNIT)
    await allSent(page)
    const order = shop.requests.map(({ path }) => (path === '/entries' ? 'entries' : 'photograph'))
    expect(order.indexOf('entries')).toBeGreaterThan(0)
    expect(order.indexOf('entries')).toBeLessThan(order.lastIndexOf('photograph'))
  })

  test('on a link that lets only little through at once, pieces are halved until they come through', async () => {
    const shop = await openShop()
    const page = await tab(await newPhone(), shop, { patience: { answer: 250 } })
    await allSent(page)
    shop.switches.tooMuch = 600_000
    const name = await page.evaluate(
      (bytes) => window.trial.device!.photograph(window.trial.filled(bytes, 3)).then((kept) => kept.photograph),
      1.5 * MB,
    )
    await allSent(page)
    expect(shop.photographs.get(name)?.length).toBe(1.5 * MB)
  })

  for (const [how, given] of [
    ['locks', {}],
    ['a lease, without locks', { locks: null }],
  ] as const)
    test(`a tab that is awake keeps its turn by ${how}, however long an upload takes`, async () => {
      const shop = await openShop()
      const phone = await newPhone()
      const patience = { turn: 300 }
      const one = await tab(phone, shop, { patience, ...given })
      const two = await tab(phone, shop, { patience, pair: false, ...given })
      await allSent(one)
      shop.requests.length = 0
      shop.switches.slow = 200
      await one.evaluate(
        (bytes) => window.trial.device!.photograph(window.trial.filled(bytes, 4)).then(() => {}),
        3 * MB,
      )
      await allSent(two)
      expect(shop.requests.filter(({ method }) => method === 'PATCH')).toHaveLength(3)
    })

  test('a tab that was put to sleep in its turn is not waited for', async () => {
    const shop = await openShop()
    const phone = await newPhone()
    const asleep = await openPage(phone, shop.url)
    await asleep.evaluate(
      () =>
        new Promise<void>((taken) => {
          void navigator.locks.request('gripbook-send:gripbook', () => {
            taken()
            return new Promise(() => {})
          })
        }),
    )
    const page = await tab(phone, shop, { patience: { turn: 300 } })
    await page.evaluate((unit) => window.trial.note(unit, 'one'), UNIT)
    await allSent(page)
    expect(await shop.store().ofUnit(UNIT)).toHaveLength(1)
  })

  test('a device that is closed stops in the middle of an upload, and goes on there when it is opened', async () => {
    const shop = await openShop()
    const page = await tab(await newPhone(), shop)
    await allSent(page)
    shop.switches.slow = 200
    const name = await page.evaluate(
      (bytes) => window.trial.device!.photograph(window.trial.filled(bytes, 5)).then((kept) => kept.photograph),
      4 * MB,
    )
    const sent = () => shop.requests.filter(({ method }) => method === 'PATCH').length
    await until(sent, (count) => count >= 2)
    await page.evaluate(() => window.trial.device!.close())
    expect(sent()).toBeLessThan(4)
    await page.evaluate(() => window.trial.open())
    await allSent(page)
    expect(shop.photographs.get(name)?.length).toBe(4 * MB)
    expect(sent()).toBeLessThanOrEqual(5)
  })

  test('a shop that lost photographs with their entries is offered both again', async () => {
    const shop = await openShop()
    const page = await tab(await newPhone(), shop)
    const name = await page.evaluate((unit) => window.trial.picture(unit, 5_000), UNIT)
    await allSent(page)
    await until(
      () => shop.photographs.size,
      (size) => size === 1,
    )
    shop.photographs.clear()
    await shop.setBack(0)
    await page.reload()
    await page.evaluate(() => window.trial.open())
    await until(
      () => shop.photographs.has(name),
      (there) => there,
    )
    expect(await shop.store().ofUnit(UNIT)).toHaveLength(1)
  })

  test('photographs that the shop has stay within their bounds, the one not looked at for longest goes first', async () => {
    const shop = await openShop()
    const page = await tab(await newPhone(), shop)
    await page.evaluate(() => window.trial.device!.close())
    await page.evaluate(() => window.trial.open({ cacheBytes: 25_000 }))
    const names: string[] = []
    for (const seed of [1, 2, 3, 4]) {
      names.push(await page.evaluate(([unit, seed]) => window.trial.picture(unit, 10_000, seed), [UNIT, seed] as const))
      await allSent(page)
    }
    const left = () =>
      page.evaluate(
        (all) => Promise.all(all.map(async (name) => (await window.trial.device!.photographOf(name)) !== null)),
        names,
      )
    await until(left, (there) => there.filter(Boolean).length === 2)
    expect(await left()).toEqual([false, false, true, true])
    expect(shop.photographs.size).toBe(4)
  })

  test('nothing is no photograph', async () => {
    const page = await tab(await newPhone(), await openShop(), { pair: false })
    const fault = await page.evaluate(() => window.trial.fault(() => window.trial.device!.photograph(new Blob([]))))
    expect(fault?.code).toBe('no-bytes')
  })
})
