import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, truncateSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type BrowserContext, chromium } from 'playwright-core'
import { describe, expect, test } from 'vitest'
import { CHROMIUM, FLAGS, openPage } from './testing/browser.ts'
import { allSent, bench, status, tab, title, UNIT, until, without } from './testing/trials.ts'

describe.skipIf(without)(title('what lies on the device, in a real browser'), () => {
  const { shop: openShop, phone: newPhone, lastingPhone } = bench()

  test('an entry is there after the browser was killed as soon as it was written, twenty times', async () => {
    const shop = await openShop()
    shop.switches.offline = true
    const profile = mkdtempSync(join(tmpdir(), 'gripbook-profile-'))
    const written: string[] = []
    try {
      for (let time = 0; time <= 20; time++)
        await whileOpen(profile, async (context) => {
          const page = await openPage(context, shop.url)
          await page.evaluate(() => window.trial.open())
          const there = await page.evaluate((unit) => window.trial.device!.entriesOf(unit), UNIT)
          expect(there.map(({ event, state }) => [event.id, event.seq, state])).toEqual(
            written.map((id, index) => [id, index + 1, 'waiting']),
          )
          if (time < 20) written.push(await page.evaluate((unit) => window.trial.note(unit, 'last words'), UNIT))
        })
      expect(written).toHaveLength(20)
    } finally {
      rmSync(profile, { recursive: true, force: true, maxRetries: 10, retryDelay: 100 })
    }
  })

  test('a write that was torn when the browser ended costs nothing that was written before', async () => {
    const shop = await openShop()
    shop.switches.offline = true
    const profile = mkdtempSync(join(tmpdir(), 'gripbook-profile-'))
    const here: number[] = []
    try {
      for (let time = 0; time < 4; time++)
        await whileOpen(profile, async (context) => {
          const page = await openPage(context, shop.url)
          await page.evaluate(() => window.trial.open())
          here.push((await page.evaluate((unit) => window.trial.device!.entriesOf(unit), UNIT)).length)
          await page.evaluate((unit) => window.trial.note(unit, 'one more'), UNIT)
        }).then(() => {
          if (time === 1) tearLog(profile)
        })
      expect(here).toEqual([0, 1, 2, 3])
    } finally {
      rmSync(profile, { recursive: true, force: true, maxRetries: 10, retryDelay: 100 })
    }
  })

  test('when the storage is full, what the shop has makes room, then writing fails with the reason and nothing is lost', async () => {
    const shop = await openShop()
    // Chromium holds only a profile on the disk to the quota that is set here, and remembers how much room there was
    // for as long as a database was open lately: so the quota is set in a browser that has not opened it yet.
    const start = lastingPhone()
    const roomy = await start()
    const before = await tab(roomy, shop)
    const sent = await before.evaluate((unit) => window.trial.picture(unit, 1_000_000, 1), UNIT)
    await allSent(before)
    shop.switches.offline = true
    const waiting = await before.evaluate((unit) => window.trial.picture(unit, 1_000_000, 2), UNIT)
    const { used } = (await status(before)).storage
    await roomy.close()
    const phone = await start()
    const page = await openPage(phone, shop.url)
    const cdp = await phone.newCDPSession(page)
    const origin = shop.url.slice(0, -1)
    const quota = (quotaSize: number) => cdp.send('Storage.overrideQuotaForOrigin', { origin, quotaSize })
    await quota(used! - 100_000)
    await page.evaluate(() => window.trial.open())
    const fault = await page.evaluate(async (unit) => {
      const { fault, device } = window.trial
      for (let i = 0; i < 300; i++) {
        const found = await fault(() =>
          device!.appendAll(
            unit,
            'builder-1',
            Array.from({ length: 20 }, () => window.trial.noteWritten({ text: `${i} ${'x'.repeat(900)}` })),
          ),
        )
        if (found !== null) return found
      }
      return null
    }, UNIT)
    expect(fault?.code).toBe('storage-full')
    expect(await status(page)).toMatchObject({ storage: { full: true } })
    const here = (name: string) =>
      page.evaluate(async (sha) => (await window.trial.device!.photographOf(sha))?.length ?? null, name)
    expect([await here(sent), await here(waiting)]).toEqual([null, 1_000_000])
    const written = await page.evaluate((unit) => window.trial.device!.entriesOf(unit), UNIT)
    await quota(used! + 50_000_000)
    await page.evaluate((unit) => window.trial.note(unit, 'there is room again'), UNIT)
    shop.switches.offline = false
    await page.evaluate(() => window.trial.device!.pair('code'))
    expect(await allSent(page)).toMatchObject({ storage: { full: false } })
    expect(await shop.store().ofUnit(UNIT)).toHaveLength(written.length + 1)
    expect(shop.photographs.has(waiting)).toBe(true)
  })

  test('a database of a newer Gripbook is named and left as it is', async () => {
    const shop = await openShop()
    const page = await openPage(await newPhone(), shop.url)
    const stores = () =>
      page.evaluate(
        () =>
          new Promise<string[]>((done) => {
            const opening = indexedDB.open('gripbook', 70)
            opening.onupgradeneeded = () => opening.result.createObjectStore('of tomorrow')
            opening.onsuccess = () => {
              done([opening.result.version, ...opening.result.objectStoreNames].map(String))
              opening.result.close()
            }
          }),
      )
    const made = await stores()
    const fault = await page.evaluate(() => window.trial.fault(() => window.trial.open()))
    expect(fault).toEqual({ code: 'newer-version', facts: { found: 7, known: 1 } })
    expect(await stores()).toEqual(made)
  })

  test('entries of which it is not known any more what device made them are named and left as they are', async () => {
    const page = await tab(await newPhone(), await openShop(), { pair: false })
    await page.evaluate((unit) => window.trial.note(unit, 'before'), UNIT)
    await page.evaluate(() => window.trial.device!.close())
    const count = (lose: boolean) =>
      page.evaluate(
        (lose) =>
          new Promise<number>((done) => {
            const opening = indexedDB.open('gripbook')
            opening.onsuccess = () => {
              const work = opening.result.transaction(['about', 'entries'], 'readwrite')
              if (lose) work.objectStore('about').delete('self')
              const entries = work.objectStore('entries').count()
              work.oncomplete = () => {
                done(entries.result)
                opening.result.close()
              }
            }
          }),
        lose,
      )
    expect(await count(true)).toBe(1)
    const fault = await page.evaluate(() => window.trial.fault(() => window.trial.open()))
    expect(fault).toEqual({ code: 'damaged', facts: { left: 1 } })
    expect(await count(false)).toBe(1)
  })

  test('a record that was deleted behind the back of the page is told as gone', async () => {
    const page = await tab(await newPhone(), await openShop(), { pair: false })
    await page.evaluate((unit) => window.trial.note(unit, 'never sent'), UNIT)
    const first = await status(page)
    expect(first.replaces).toBeNull()
    await page.evaluate(() => window.trial.device!.close())
    await page.evaluate(
      () =>
        new Promise<void>((done) => {
          indexedDB.deleteDatabase('gripbook').onsuccess = () => done()
        }),
    )
    await page.evaluate(() => window.trial.open())
    const second = await status(page)
    expect([second.replaces, second.device === first.device]).toEqual([first.device, false])
    await page.reload()
    await page.evaluate(() => window.trial.open())
    expect(await status(page)).toMatchObject({ device: second.device, replaces: first.device })
  })

  test('the browser is asked once to keep the record for good, when the device is paired', async () => {
    const page = await tab(await newPhone(), await openShop(), { pair: false })
    await page.evaluate(() => window.trial.device!.close())
    const persistent = () => status(page).then(({ storage }) => storage.persistent)
    await page.evaluate(() => {
      let kept = false
      const estimate = async () => ({ usage: 1, quota: 2 })
      const persist = async () => {
        window.trial.statuses.push('asked')
        kept = true
        return kept
      }
      return window.trial.open({ storage: { estimate, persist, persisted: async () => kept } })
    })
    expect(await persistent()).toBe(false)
    await page.evaluate(() => window.trial.device!.pair('code'))
    await until(persistent, (kept) => kept === true)
    await page.evaluate(() => window.trial.device!.pair('code'))
    await allSent(page)
    expect(await page.evaluate(() => window.trial.statuses)).toEqual(['asked'])
  })

  test('a newer Gripbook in another tab may take the database over; the older one says so and writes no more', async () => {
    const page = await tab(await newPhone(), await openShop(), { pair: false })
    await page.evaluate((unit) => window.trial.note(unit, 'before'), UNIT)
    const version = await page.evaluate(
      () =>
        new Promise<number>((done) => {
          const opening = indexedDB.open('gripbook', 20)
          opening.onsuccess = () => {
            done(opening.result.version)
            opening.result.close()
          }
        }),
    )
    expect(version).toBe(20)
    const fault = await page.evaluate((unit) => window.trial.fault(() => window.trial.note(unit, 'after')), UNIT)
    expect(fault?.code).toBe('storage-closed')
  })

  test('all of it works where the page is not trusted: plain HTTP in the shop, without WebCrypto, locks and storage manager', async () => {
    const shop = await openShop()
    const phone = await newPhone()
    const away = { url: `http://shop.test:${shop.port}/` }
    const first = await tab(phone, away)
    expect(
      await first.evaluate(() => [
        isSecureContext,
        typeof crypto.subtle,
        typeof navigator.locks,
        typeof navigator.storage,
      ]),
    ).toEqual([false, 'undefined', 'undefined', 'undefined'])
    const second = await tab(phone, away, { pair: false })
    await Promise.all([
      first.evaluate((unit) => window.trial.notes(unit, 1, 20), UNIT),
      second.evaluate((unit) => window.trial.notes(unit, 21, 20), UNIT),
      first.evaluate((unit) => window.trial.picture(unit, 5_000), UNIT),
    ])
    const { storage } = await allSent(first)
    expect(storage).toEqual({ used: null, quota: null, persistent: null, full: false })
    expect(await shop.store().ofUnit(UNIT)).toHaveLength(41)
    await until(
      () => shop.photographs.size,
      (size) => size === 1,
    )
    expect(shop.requests.reduce((sum, { entries }) => sum + entries, 0)).toBe(41)
  })

  test('an entry that is not what its type says is not written', async () => {
    const page = await tab(await newPhone(), await openShop(), { pair: false })
    const faults = await page.evaluate(async (unit) => {
      const { fault, device } = window.trial
      const given = (type: string, body: Record<string, never>) =>
        fault(() => device!.append(unit, 'builder-1', { type, version: 1, body }))
      return [await given('note-written', {}), await given('not-a-type', {})]
    }, UNIT)
    expect(faults).toMatchObject([
      { code: 'bad-entry', facts: { path: 'text' } },
      { code: 'bad-entry', facts: { why: 'unknown-type' } },
    ])
    expect(await page.evaluate(() => window.trial.device!.units())).toEqual([])
  })
})

/** A browser of its own on a profile that outlives it; whatever comes of the work, it is killed with all its processes right after, without a word. */
async function whileOpen(profile: string, work: (context: BrowserContext) => Promise<void>): Promise<void> {
  const file = join(profile, 'DevToolsActivePort')
  rmSync(file, { force: true })
  const args = [...FLAGS, '--headless=new', '--remote-debugging-port=0', `--user-data-dir=${profile}`, 'about:blank']
  const browser = spawn(CHROMIUM!, args, { detached: true, stdio: 'ignore' })
  const gone = new Promise((done) => browser.once('exit', done))
  try {
    const port = await until(
      () => (existsSync(file) ? readFileSync(file, 'utf8').split('\n')[0]! : ''),
      (text) => text !== '',
    )
    const connection = await chromium.connectOverCDP(`http://127.0.0.1:${port}`)
    await work(connection.contexts()[0]!)
  } finally {
    process.kill(-browser.pid!, 'SIGKILL')
    await gone
  }
}

/** Takes the last bytes off the log of the profile's only database, as a write that the power left unfinished. */
function tearLog(profile: string): void {
  const databases = join(profile, 'Default', 'IndexedDB')
  const folder = join(databases, readdirSync(databases).find((name) => name.endsWith('.leveldb'))!)
  const log = join(folder, readdirSync(folder).find((name) => name.endsWith('.log'))!)
  truncateSync(log, statSync(log).size - 3)
}
