import { chainFaults, type Event, knowledgeOf, learn, nextEntry, noteWritten, sha256OfText } from '@gripbook/record'
import { describe, expect, test } from 'vitest'
import type { TestShop } from './testing/shopServer.ts'
import { allSent, arrived, bench, OTHER, status, tab, title, UNIT, until, without } from './testing/trials.ts'

describe.skipIf(without)(title('sending entries from a real browser'), () => {
  const { shop: openShop, phone: newPhone } = bench()

  test('an entry written out of reach is there after a reload, and is sent once when the shop is back', async () => {
    const shop = await openShop()
    const page = await tab(await newPhone(), shop)
    shop.switches.offline = true
    await page.evaluate((unit) => window.trial.notes(unit, 1, 3), UNIT)
    await page.reload()
    const id = await page.evaluate(() => window.trial.open())
    const here = await page.evaluate((unit) => window.trial.device!.entriesOf(unit), UNIT)
    expect(here.map(({ state, event }) => [state, event.seq, event.device === id])).toEqual([
      ['waiting', 1, true],
      ['waiting', 2, true],
      ['waiting', 3, true],
    ])
    const waiting = await until(
      () => status(page),
      ({ trouble }) => trouble !== null,
    )
    expect(waiting).toMatchObject({ waiting: { entries: 3, since: here[0]!.event.at }, trouble: { why: 'no-answer' } })
    shop.switches.offline = false
    expect(await allSent(page)).toMatchObject({ signedIn: 'yes', trouble: null, person: { id: 'builder-1' } })
    expect(await shop.store().ofUnit(UNIT)).toEqual(here.map(({ event }) => event))
    expect(arrived(shop)).toBe(3)
  })

  test('a new entry, and the network coming back, end a pause at once', async () => {
    const shop = await openShop()
    const phone = await newPhone()
    const page = await tab(phone, shop)
    await page.evaluate(() => window.trial.device!.close())
    await page.evaluate(() => window.trial.open({ patience: { firstPause: 60_000, longestPause: 60_000 } }))
    await until(
      () => status(page),
      ({ signedIn }) => signedIn === 'yes',
    )
    await phone.setOffline(true)
    await page.evaluate((unit) => window.trial.note(unit, 'one'), UNIT)
    await until(
      () => status(page),
      ({ trouble }) => trouble !== null,
    )
    await phone.setOffline(false)
    await allSent(page)
    shop.switches.offline = true
    await page.evaluate((unit) => window.trial.note(unit, 'two'), UNIT)
    await until(
      () => status(page),
      ({ trouble }) => trouble !== null,
    )
    shop.switches.offline = false
    await page.evaluate((unit) => window.trial.note(unit, 'three'), UNIT)
    await allSent(page)
    expect(await shop.store().ofUnit(UNIT)).toHaveLength(3)
  })

  test('two tabs that write a hundred entries each at once make one whole chain, and each is sent once', async () => {
    const shop = await openShop()
    const phone = await newPhone()
    const first = await tab(phone, shop)
    const second = await tab(phone, shop, { pair: false })
    await Promise.all([
      first.evaluate((unit) => window.trial.notes(unit, 1, 100), UNIT),
      second.evaluate((unit) => window.trial.notes(unit, 101, 100), UNIT),
    ])
    await allSent(first)
    const kept = await shop.store().ofUnit(UNIT)
    expect(kept.map(({ seq }) => seq)).toEqual(Array.from({ length: 200 }, (_, i) => i + 1))
    expect(chainFaults(kept, sha256OfText)).toEqual([])
    expect(arrived(shop)).toBe(200)
    const hashes = await Promise.all(
      [first, second].map((page) => page.evaluate((u) => window.trial.stateHash(u), UNIT)),
    )
    expect(hashes[0]).toBe(hashes[1])
  })

  test('what the shop kept and could not say is not lost and not doubled', async () => {
    const shop = await openShop()
    const page = await tab(await newPhone(), shop)
    shop.switches.cutAnswers = 2
    await page.evaluate((unit) => window.trial.notes(unit, 1, 5), UNIT)
    await allSent(page)
    expect(await shop.store().ofUnit(UNIT)).toHaveLength(5)
  })

  test('a refused entry stays with its reason, those after it wait, other units go on', async () => {
    const shop = await openShop()
    const page = await tab(await newPhone(), shop)
    shop.switches.offline = true
    await page.evaluate(async (unit) => {
      const { device, note } = window.trial
      await note(unit, 'before')
      await device!.append(unit, 'builder-1', {
        type: 'unit-released',
        version: 1,
        body: { heads: {}, record: 'c'.repeat(64) },
      })
      await note(unit, 'after')
    }, UNIT)
    await page.evaluate((unit) => window.trial.note(unit, 'elsewhere'), OTHER)
    shop.switches.notAllowed = ['unit-released']
    shop.switches.offline = false
    const states = () =>
      page.evaluate(
        async (unit) =>
          (await window.trial.device!.entriesOf(unit)).map(({ state, refusal }) => [state, refusal?.code ?? null]),
        UNIT,
      )
    await until(states, (seen) => seen[0]![0] === 'sent' && seen[1]![0] === 'refused')
    expect(await states()).toEqual([
      ['sent', null],
      ['refused', 'not-allowed'],
      ['waiting', null],
    ])
    await until(
      () => shop.store().ofUnit(OTHER),
      (kept) => kept.length === 1,
    )
    expect(await status(page)).toMatchObject({ refused: { entries: 1 }, waiting: { entries: 1 } })
    shop.switches.notAllowed = []
    await page.evaluate((unit) => window.trial.device!.tryAgain(unit), UNIT)
    await allSent(page)
    expect(await shop.store().ofUnit(UNIT)).toHaveLength(3)
  })

  test('a refused entry that came to the shop another way is no longer refused, and those behind it go on', async () => {
    const shop = await openShop()
    const page = await tab(await newPhone(), shop)
    shop.switches.notAllowed = ['note-written']
    await page.evaluate((unit) => window.trial.notes(unit, 1, 2), UNIT)
    await until(
      () => status(page),
      ({ refused }) => refused.entries === 1,
    )
    const [first] = await page.evaluate((unit) => window.trial.device!.entriesOf(unit), UNIT)
    await shop.store().append([first!.event])
    shop.switches.notAllowed = []
    await page.evaluate(() => window.trial.device!.close())
    await page.evaluate(() => window.trial.open())
    expect(await allSent(page)).toMatchObject({ refused: { entries: 0 } })
    expect(await shop.store().ofUnit(UNIT)).toHaveLength(2)
  })

  test('on a link that lets only little through at once, less is sent at once', async () => {
    const shop = await openShop()
    const page = await tab(await newPhone(), shop, { patience: { answer: 250 } })
    await allSent(page)
    shop.switches.tooMuch = 9_000
    await page.evaluate((unit) => window.trial.device!.appendAll(unit, 'builder-1', window.trial.many(40)), UNIT)
    await allSent(page)
    expect(await shop.store().ofUnit(UNIT)).toHaveLength(40)
  })

  test('without a session everything waits, and goes on once the device is paired again', async () => {
    const shop = await openShop()
    const page = await tab(await newPhone(), shop)
    await page.evaluate((unit) => window.trial.note(unit, 'one'), UNIT)
    await allSent(page)
    shop.endSessions()
    await page.evaluate((unit) => window.trial.notes(unit, 2, 2), UNIT)
    await until(
      () => status(page),
      ({ signedIn }) => signedIn === 'no',
    )
    expect(await status(page)).toMatchObject({ waiting: { entries: 2 }, refused: { entries: 0 } })
    const wrong = await page.evaluate(() => window.trial.fault(() => window.trial.device!.pair('wrong')))
    expect(wrong?.code).toBe('code-not-valid')
    await page.evaluate(() => window.trial.device!.pair('code', 'Another name'))
    expect(await allSent(page)).toMatchObject({ signedIn: 'yes', person: { name: 'Another name' } })
    await page.evaluate(() => window.trial.device!.signOut())
    expect(await status(page)).toMatchObject({ signedIn: 'no', person: null })
  })

  test('who has been paired stays signed in, however often the network comes back while the shop is asked', async () => {
    const shop = await openShop()
    const page = await tab(await newPhone(), shop, { pair: false })
    await until(
      () => status(page),
      ({ signedIn }) => signedIn === 'no',
    )
    const seen = await page.evaluate(async () => {
      const device = window.trial.device!
      const { port1, port2 } = new MessageChannel()
      const seen = new Set<string>()
      let on = true
      // As often as anything else happens in the page: also between two steps of the round that asks who is signed in.
      port1.onmessage = () => {
        window.dispatchEvent(new Event('online'))
        if (on) port2.postMessage(null)
      }
      port2.postMessage(null)
      await device.pair('code')
      for (let looks = 0; looks < 100; looks++) seen.add((await device.status()).signedIn)
      on = false
      return [...seen]
    })
    expect(seen).toEqual(['yes'])
    await page.evaluate((unit) => window.trial.note(unit, 'one'), UNIT)
    expect(await allSent(page)).toMatchObject({ signedIn: 'yes', trouble: null })
  })

  test('a shop that was set back to an older state gets again what it lost', async () => {
    const shop = await openShop()
    const page = await tab(await newPhone(), shop)
    await page.evaluate((unit) => window.trial.notes(unit, 1, 6), UNIT)
    await page.evaluate((unit) => window.trial.notes(unit, 1, 2), OTHER)
    await allSent(page)
    await shop.setBack(2)
    await page.reload()
    await page.evaluate(() => window.trial.open())
    await until(
      async () => [...(await shop.store().ofUnit(UNIT)), ...(await shop.store().ofUnit(OTHER))].length,
      (count) => count === 8,
    )
    // And where it is noticed only by what the shop answers to the next entry.
    await shop.setBack(1)
    await page.evaluate((unit) => window.trial.note(unit, 'next'), UNIT)
    await until(
      async () => (await shop.store().ofUnit(UNIT)).length,
      (count) => count === 7,
    )
    await allSent(page)
    expect(chainFaults(await shop.store().ofUnit(UNIT), sha256OfText)).toEqual([])
  })

  test('a phone that was set back itself gets its own entries from the shop, and goes on after them', async () => {
    const shop = await openShop()
    const page = await tab(await newPhone(), shop)
    await page.evaluate((unit) => window.trial.notes(unit, 1, 2), UNIT)
    await allSent(page)
    await shop.store().append(await later(shop, 2))
    await page.evaluate(() => window.trial.device!.close())
    await page.evaluate(() => window.trial.open())
    await until(
      () => page.evaluate((unit) => window.trial.device!.entriesOf(unit), UNIT),
      (here) => here.length === 4 && here.every(({ state }) => state === 'sent'),
    )
    await page.evaluate((unit) => window.trial.note(unit, 'goes on'), UNIT)
    await allSent(page)
    expect(chainFaults(await shop.store().ofUnit(UNIT), sha256OfText)).toEqual([])
  })

  test('what a phone wrote after it was set back is refused and kept, never taken for what the shop has', async () => {
    const shop = await openShop()
    const page = await tab(await newPhone(), shop)
    await page.evaluate((unit) => window.trial.notes(unit, 1, 2), UNIT)
    await allSent(page)
    const kept = await later(shop, 2)
    await page.evaluate(() => window.trial.device!.close())
    await shop.store().append(kept)
    shop.switches.offline = true
    await page.evaluate(() => window.trial.open())
    await page.evaluate((unit) => window.trial.note(unit, 'another third'), UNIT)
    shop.switches.offline = false
    const { refused } = await until(
      () => status(page),
      ({ refused }) => refused.entries > 0,
    )
    expect(refused.entries).toBe(1)
    const here = await page.evaluate((unit) => window.trial.device!.entriesOf(unit), UNIT)
    expect(here.map(({ state, refusal }) => refusal?.code ?? state)).toContain('same-number-other-entry')
  })

  test('what is not the shop is not believed, and limits are kept', async () => {
    const shop = await openShop()
    const page = await tab(await newPhone(), shop)
    shop.switches.hotspot = true
    await page.evaluate((unit) => window.trial.notes(unit, 1, 40), UNIT)
    await until(
      () => status(page),
      ({ trouble }) => trouble?.why === 'strange-answer',
    )
    expect((await status(page)).waiting.entries).toBe(40)
    shop.switches.most = 4_000
    shop.switches.hotspot = false
    await allSent(page)
    expect(await shop.store().ofUnit(UNIT)).toHaveLength(40)
    shop.requests.length = 0
    shop.switches.fail = { times: 1, status: 429, headers: { 'retry-after': '1' } }
    await page.evaluate((unit) => window.trial.note(unit, 'one'), UNIT)
    await until(
      () => status(page),
      ({ trouble }) => trouble?.why === 'later',
    )
    await page.evaluate((unit) => window.trial.note(unit, 'two'), UNIT)
    await allSent(page)
    expect(shop.requests[1]!.at - shop.requests[0]!.at).toBeGreaterThan(950)
    shop.switches.fail = { times: 2, status: 500 }
    await page.evaluate((unit) => window.trial.note(unit, 'three'), UNIT)
    await allSent(page)
    expect(await shop.store().ofUnit(UNIT)).toHaveLength(43)
  })

  test('a clock that is a day wrong is told, and the entries are kept all the same', async () => {
    const shop = await openShop()
    const page = await tab(await newPhone(), shop, { ahead: -86_400_000 })
    await page.evaluate((unit) => window.trial.note(unit, 'yesterday'), UNIT)
    const { clock } = await allSent(page)
    expect(clock?.wrong).toBe(true)
    expect(Math.abs(clock!.offBy + 86_400_000)).toBeLessThan(3_000)
    expect(await shop.store().ofUnit(UNIT)).toHaveLength(1)
  })
})

/** Entries that the device of the unit's only chain made after those that the shop has. */
async function later(shop: TestShop, count: number): Promise<Event[]> {
  const kept = await shop.store().ofUnit(UNIT)
  let knowledge = knowledgeOf(UNIT, kept[0]!.device, kept)
  return Array.from({ length: count }, (_, i) => {
    const id = `00000000-0000-4000-8000-0000000000f${i}`
    const given = { id, at: '2026-03-01T09:00:00.000Z', who: 'builder-1', ...noteWritten({ text: `later ${i}` }) }
    const event = nextEntry(knowledge, given, sha256OfText)
    knowledge = learn(knowledge, event)
    return event
  })
}
