/**
 * What every store must do, as cases for any test runner: `for (const { title, run } of storeSuite(open)) test(title, run)`. `open` gives a store
 * that is empty, each time; `reopen` gives one on what that one has kept (after closing it, where it has to be closed); a store in memory has none.
 */
import { must } from '@gripbook/engine'
import { canonical } from './canonical.ts'
import { knowledgeOf, nextEntry } from './entry.ts'
import type { Event } from './events/event.ts'
import { inOrder } from './inOrder.ts'
import { sha256OfText } from './sha256.ts'
import type { Position, Store } from './store.ts'

export type StoreCase = { title: string; run: () => Promise<void> }
type Check = (store: Store, reopen: ((store: Store) => Promise<Store>) | undefined) => Promise<void>

export function storeSuite(open: () => Promise<Store>, reopen?: (store: Store) => Promise<Store>): StoreCase[] {
  return Object.entries(CASES).map(([title, check]) => ({ title, run: async () => check(await open(), reopen) }))
}

const uuid = (n: number): string => `00000000-0000-4000-8000-${n.toString(16).padStart(12, '0')}`
const [UNIT, OTHER_UNIT, PHONE, TABLET] = [uuid(0xa1), uuid(0xa2), uuid(0xd1), uuid(0xd2)] as const

/** `count` entries of a device about a unit, in its chain, numbered in their ids from `from`. */
function chain(unit: string, device: string, from: number, count: number): Event[] {
  const made: Event[] = []
  for (let i = 0; i < count; i++) {
    const given = {
      id: uuid(from + i),
      at: `2026-03-01T09:${String(i % 60).padStart(2, '0')}:00.000Z`,
      who: 'builder 1 · 変速機',
      type: 'note-written',
      version: 1,
      body: {
        text: `note ${i}; 'quoted' "twice" \\ ☃ 😀 \n${'%'.repeat(i % 3)}`,
        figures: [0.1, 1e21, -5e-324, null, true],
      },
    }
    made.push(nextEntry(knowledgeOf(unit, device, made), given, sha256OfText))
  }
  return made
}

function same(found: unknown, expected: unknown, what: string): void {
  must(canonical(found as never) === canonical(expected as never), what, { found, expected })
}

async function added(store: Store, batch: readonly Event[], newOnes: number, known = 0): Promise<void> {
  same(await store.append(batch), { ok: true, added: newOnes, known }, 'the batch is kept')
}

async function refused(store: Store, batch: readonly Event[], expected: object[]): Promise<void> {
  const before = await everything(store)
  const answer = await store.append(batch)
  must(!answer.ok, 'the batch is refused', answer)
  same(answer.refusals, expected, 'the refusals name entry and reason')
  same(await everything(store), before, 'nothing of a refused batch is kept')
}

async function everything(store: Store, limit = 7): Promise<Event[]> {
  const events: Event[] = []
  let position: Position | null = null
  for (;;) {
    const page = await store.since(position, limit)
    must(page.events.length <= limit, 'a page holds no more than was asked for', page.events.length)
    events.push(...page.events)
    if (page.events.length === 0) {
      same([page.position, page.more], [position, false], 'an empty page stays where it is')
      return events
    }
    position = page.position
  }
}

const CASES: Record<string, Check> = {
  'an empty store answers, and an empty batch is nothing': async (store) => {
    await added(store, [], 0)
    same(await store.since(null, 10), { events: [], position: null, more: false }, 'nothing since the beginning')
    same([await store.ofUnit(UNIT), await store.heads(UNIT), await store.units()], [[], [], []], 'nothing of any unit')
  },

  'what was kept is read back to the letter': async (store) => {
    const events = chain(UNIT, PHONE, 1, 5)
    await added(store, events, 5)
    same(await store.ofUnit(UNIT), events, 'the unit holds its entries')
    same(await everything(store), events, 'they are read since the beginning')
    same(await store.heads(UNIT), [{ device: PHONE, seq: 5, hash: events[4]!.hash }], 'the head is the last entry')
    same(await store.units(), [UNIT], 'the unit is listed')
  },

  'sending again changes nothing: one, a batch, an overlap, twice in one batch': async (store) => {
    const events = chain(UNIT, PHONE, 1, 6)
    await added(store, events.slice(0, 3), 3)
    await added(store, events.slice(0, 1), 0, 1)
    await added(store, events.slice(0, 3), 0, 3)
    await added(store, events.slice(1, 5), 2, 2)
    await added(store, [events[5]!, events[5]!], 1, 1)
    same(await everything(store), events, 'each is there once')
  },

  'names in another order are the same entry': async (store) => {
    const [event] = chain(UNIT, PHONE, 1, 1)
    await added(store, [event!], 1)
    const turned = Object.fromEntries(Object.entries(event!).reverse()) as Event
    await added(store, [turned], 0, 1)
  },

  'the same id with another content is refused': async (store) => {
    const [event] = chain(UNIT, PHONE, 1, 1)
    const [other] = chain(UNIT, TABLET, 1, 1)
    await added(store, [event!], 1)
    await refused(store, [other!], [{ index: 0, id: uuid(1), code: 'same-id-other-content' }])
    const [elsewhere] = chain(OTHER_UNIT, PHONE, 1, 1)
    await refused(store, [elsewhere!], [{ index: 0, id: uuid(1), code: 'same-id-other-content' }])
  },

  'the same id with another content inside one batch is refused': async (store) => {
    await refused(
      store,
      [...chain(UNIT, PHONE, 1, 1), ...chain(UNIT, TABLET, 1, 1)],
      [{ index: 1, id: uuid(1), code: 'same-id-other-content' }],
    )
  },

  'a second entry with a number that is taken is refused, and the kept one named': async (store) => {
    await added(store, chain(UNIT, PHONE, 1, 2), 2)
    await refused(store, chain(UNIT, PHONE, 50, 1), [
      { index: 0, id: uuid(50), code: 'same-number-other-entry', kept: uuid(1) },
    ])
  },

  'an entry whose content was changed after hashing is refused': async (store) => {
    const [first, second] = chain(UNIT, PHONE, 1, 2)
    await refused(
      store,
      [first!, { ...second!, body: { ...second!.body, text: 'changed' } }],
      [{ index: 1, id: uuid(2), code: 'wrong-hash' }],
    )
    await refused(store, [{ ...first!, who: 'someone else' }], [{ index: 0, id: uuid(1), code: 'wrong-hash' }])
  },

  'a gap is refused with the number to send from, and only the first of a chain is named': async (store) => {
    const events = chain(UNIT, PHONE, 1, 6)
    await added(store, events.slice(0, 2), 2)
    await refused(store, events.slice(3), [{ index: 0, id: uuid(4), code: 'missing-before', expected: 3 }])
    await refused(store, [events[3]!, events[2]!], [{ index: 0, id: uuid(4), code: 'missing-before', expected: 3 }])
    await added(store, events.slice(2), 4)
  },

  'an entry that follows another than the kept one is refused': async (store) => {
    const ours = chain(UNIT, PHONE, 1, 2)
    const theirs = chain(UNIT, PHONE, 60, 2)
    await added(store, ours.slice(0, 1), 1)
    await refused(store, [theirs[1]!], [{ index: 0, id: uuid(61), code: 'broken-chain' }])
  },

  'an entry that is no entry is refused with the path': async (store) => {
    const [event] = chain(UNIT, PHONE, 1, 1)
    await refused(store, [{ ...event!, seq: 0 }], [{ index: 0, id: uuid(1), code: 'malformed', path: 'seq' }])
    const nul = { ...event!, body: { text: 'a\u0000b' } }
    await refused(store, [nul], [{ index: 0, id: uuid(1), code: 'malformed', path: 'body.text' }])
  },

  'one bad entry refuses the batch, and the good ones of it can be sent alone': async (store) => {
    const good = chain(UNIT, PHONE, 1, 3)
    const bad = chain(OTHER_UNIT, TABLET, 20, 2)[1]!
    await refused(store, [...good, bad], [{ index: 3, id: uuid(21), code: 'missing-before', expected: 1 }])
    await added(store, good, 3)
  },

  'units and devices are chains of their own': async (store) => {
    const [a, b, c] = [chain(UNIT, PHONE, 1, 3), chain(UNIT, TABLET, 11, 2), chain(OTHER_UNIT, PHONE, 21, 2)] as const
    await added(store, [a[0]!, b[0]!, c[0]!, a[1]!, c[1]!, b[1]!, a[2]!], 7)
    same(await store.ofUnit(UNIT), [...a, ...b].sort(inOrder), 'a unit’s entries come in the order of the record')
    same(await store.ofUnit(OTHER_UNIT), c, 'the other unit has its own')
    same(
      await store.heads(UNIT),
      [
        { device: PHONE, seq: 3, hash: a[2]!.hash },
        { device: TABLET, seq: 2, hash: b[1]!.hash },
      ],
      'each device has its head',
    )
    same(await store.units(), [UNIT, OTHER_UNIT], 'both units are listed')
  },

  'reading on from a position gives what came since, page by page': async (store) => {
    const events = chain(UNIT, PHONE, 1, 10)
    await added(store, events.slice(0, 4), 4)
    const first = await store.since(null, 3)
    same([first.events, first.more], [events.slice(0, 3), true], 'the first page')
    const second = await store.since(first.position, 3)
    same([second.events, second.more], [events.slice(3, 4), false], 'the rest')
    same(await store.since(second.position, 3), { events: [], position: second.position, more: false }, 'no news')
    await added(store, events.slice(4), 6)
    same((await store.since(second.position, 100)).events, events.slice(4), 'what came since')
    same((await store.since(first.position, 100)).events, events.slice(3), 'an old position still serves')
  },

  'whoever has some of a unit is given the rest, page by page, and nothing of another unit': async (store) => {
    const [a, b] = [chain(UNIT, PHONE, 1, 5), chain(UNIT, TABLET, 11, 4)] as const
    await added(store, [...a.slice(0, 3), ...b, ...a.slice(3), ...chain(OTHER_UNIT, PHONE, 21, 2)], 11)
    const have: Record<string, number> = { [PHONE]: 2, [uuid(0xd9)]: 7 }
    const got: Event[] = []
    for (let more = true; more; ) {
      const page = await store.beyond(UNIT, have, 3)
      must(page.events.length <= 3, 'a page holds no more than was asked for', page.events.length)
      for (const event of page.events) {
        same(event.seq, (have[event.device] ?? 0) + 1, 'a device’s entries come in order')
        have[event.device] = event.seq
      }
      got.push(...page.events)
      more = page.more
    }
    same(got.sort(inOrder), [...a.slice(2), ...b].sort(inOrder), 'what was lacking came, once')
    same(await store.beyond(UNIT, have, 3), { events: [], more: false }, 'then nothing is lacking')
    same(await store.beyond(uuid(0xaf), {}, 3), { events: [], more: false }, 'nothing of a unit that is not known')
  },

  'from the end on, only what comes later is read': async (store) => {
    same(await store.end(), null, 'an empty store has no end to go on from')
    const events = chain(UNIT, PHONE, 1, 5)
    await added(store, events.slice(0, 3), 3)
    const end = await store.end()
    same(await store.since(end, 10), { events: [], position: end, more: false }, 'nothing yet')
    await added(store, events.slice(3), 2)
    same((await store.since(end, 10)).events, events.slice(3), 'what came later')
  },

  'calls at the same time end as one after the other': async (store) => {
    const devices = [0, 1, 2, 3, 4, 5, 6, 7].map((n) => chain(UNIT, uuid(0xd10 + n), 100 * (n + 1), 5))
    const answers = await Promise.all(devices.flatMap((events) => [store.append(events), store.append(events)]))
    must(
      answers.every((answer) => answer.ok && answer.added + answer.known === 5),
      'every call was answered',
      answers,
    )
    same(
      answers.reduce((sum, answer) => sum + (answer.ok ? answer.added : 0), 0),
      40,
      'each entry was new once',
    )
    same(await store.ofUnit(UNIT), devices.flat().sort(inOrder), 'each is there once')
    const read = await everything(store)
    for (const events of devices)
      same(
        read.filter((event) => event.device === events[0]!.device),
        events,
        'a device’s entries come in order',
      )
  },

  'a batch of a thousand is kept': async (store) => {
    const events: Event[] = []
    for (let n = 0; n < 20; n++) events.push(...chain(UNIT, uuid(0xe00 + n), 1_000 * (n + 1), 50))
    await added(store, events, 1_000)
    same((await everything(store, 300)).length, 1_000, 'all are read')
  },

  'what was acknowledged is there after opening again': async (store, reopen) => {
    const events = chain(UNIT, PHONE, 1, 4)
    await added(store, events.slice(0, 3), 3)
    const { position } = await store.since(null, 2)
    const again = reopen === undefined ? store : await reopen(store)
    same(await again.ofUnit(UNIT), events.slice(0, 3), 'the entries are there')
    same((await again.since(position, 10)).events, events.slice(2, 3), 'a position still serves')
    await added(again, events, 1, 3)
  },
}
