/** Entries that no honest device makes. What must survive: every device still folds them to the same state, without throwing, and work goes on. */
import { expect, test } from 'vitest'
import { canonical } from './canonical.ts'
import { type Hash, hashOf } from './chain.ts'
import { knowledgeOf, nextEntry } from './entry.ts'
import { EVENT_LIMITS, type Event, readEvent } from './events/event.ts'
import { holeMarked } from './events/holeMarked.ts'
import type { Json } from './events/json.ts'
import { readingTaken } from './events/readingTaken.ts'
import { undone } from './events/undone.ts'
import { fold } from './fold.ts'
import { sha256OfText } from './sha256.ts'
import { DEVICES, history, shuffled, UNIT, uuid } from './testing/bench.ts'
import { unitFileOf } from './toUnitFile.ts'
import { pick, type Random, seeded } from './unitFile/testing/random.ts'
import { writeUnitFile } from './unitFile/write.ts'

const hash: Hash = sha256OfText
const [PHONE, TABLET] = DEVICES
const at = { face: 'pan', hole: '1' }
const stamp = (n: number) => ({ id: uuid(n), at: '2026-03-01T09:00:00.000Z', who: 'b' })
const grip = (value: number) => readingTaken({ of: { ...at, quantity: 'grip' }, value })
const rehashed = (event: Event): Event => ({ ...event, hash: hashOf(event, hash) })
const text = (events: readonly Event[]): string => canonical(fold(UNIT, events) as unknown as Json)

/** One thing about an entry forged, so that it still reads as an entry. */
function forged(random: Random, event: Event, all: readonly Event[]): Event {
  const other = pick(random, all)
  const change: Partial<Event> = pick(random, [
    { seq: other.seq },
    { seq: 1 + Math.floor(random() * 1e15) },
    { tick: 1 },
    { tick: EVENT_LIMITS.tick },
    { tick: other.tick },
    { seen: {} },
    { seen: { ...event.seen, [other.device]: Number.MAX_SAFE_INTEGER } },
    { seen: { [event.device]: 3 } },
    { device: other.device },
    { device: uuid(0xd9) },
    { before: other.hash },
    { id: other.id },
    { id: uuid(Math.floor(random() * 1e6)) },
    { at: '0000-01-01T00:00:00.000Z' },
    { at: '9999-12-31T23:59:59.999Z' },
    { body: other.body },
    { body: {} },
    { type: other.type },
    { type: 'undone', body: { event: event.id } },
    { type: 'undone', body: { event: other.id } },
    { type: 'clash-settled', body: { at: ['face'], field: 'there', stands: null } },
    { type: 'clash-settled', body: { at: ['hole', 'face', 'pan', '1'], field: 'step final', stands: other.id } },
    { version: 1 + Math.floor(random() * 3) },
  ])
  return rehashed({ ...event, ...change })
}

test('forged entries fold to the same state in every order of arrival, and the unit file still writes', () => {
  let different = 0
  for (let seed = 0; seed < 400; seed++) {
    const random = seeded(seed)
    const { made } = history(seed + 9_000, 25)
    const all = [...made]
    for (let i = 0; i < 8; i++) {
      const bad = forged(random, pick(random, all), all)
      expect(readEvent(bad), `seed ${seed}`).toMatchObject({ ok: true, value: bad })
      all.push(bad)
    }
    const expected = text(all)
    if (expected !== text(made)) different++
    for (let i = 0; i < 3; i++) expect(text(shuffled(random, all)), `seed ${seed}`).toBe(expected)
    const { unit } = unitFileOf(fold(UNIT, all))
    if (unit !== null) writeUnitFile(unit)
  }
  expect(different).toBeGreaterThan(300)
})

test('an entry with the highest tick that there can be does not stop the work, and what knew it still replaces it', () => {
  const marked = nextEntry(knowledgeOf(UNIT, PHONE, []), { ...stamp(1), ...holeMarked({ ...at, thread: 'M6' }) }, hash)
  const poison = rehashed({
    ...nextEntry(knowledgeOf(UNIT, TABLET, [marked]), { ...stamp(2), ...grip(99) }, hash),
    tick: EVENT_LIMITS.tick,
  })
  const after = nextEntry(knowledgeOf(UNIT, PHONE, [marked, poison]), { ...stamp(3), ...grip(32) }, hash)
  expect(readEvent(after).ok).toBe(true)
  for (const events of [
    [marked, poison, after],
    [after, poison, marked],
  ]) {
    const folded = fold(UNIT, events)
    expect(folded.clashes).toEqual([])
    expect(folded.unit.faces[0]?.holes[0]?.grip).toBe(32)
  }
})

test('an entry that says it had seen everything of a device leaves no list of a million missing numbers', () => {
  const liar = nextEntry(knowledgeOf(UNIT, PHONE, []), { ...stamp(1), ...grip(32) }, hash)
  const { missing } = fold(UNIT, [rehashed({ ...liar, seen: { [TABLET]: Number.MAX_SAFE_INTEGER } })])
  expect(missing).toEqual([{ device: TABLET, from: 1, to: Number.MAX_SAFE_INTEGER }])
})

test('undoings in a ring, of themselves and of nothing, end', () => {
  const first = nextEntry(knowledgeOf(UNIT, PHONE, []), { ...stamp(1), ...undone({ event: uuid(2) }) }, hash)
  const second = nextEntry(knowledgeOf(UNIT, PHONE, [first]), { ...stamp(2), ...undone({ event: uuid(1) }) }, hash)
  const third = nextEntry(
    knowledgeOf(UNIT, PHONE, [first, second]),
    { ...stamp(3), ...undone({ event: uuid(3) }) },
    hash,
  )
  expect(fold(UNIT, [first, second, third]).undone).toEqual([{ event: uuid(1), by: uuid(2) }])
})

test('a device whose copy was put back from a backup makes a second chain: both are kept, and what they contradict each other in is shown', () => {
  const marked = nextEntry(knowledgeOf(UNIT, PHONE, []), { ...stamp(1), ...holeMarked({ ...at, thread: 'M6' }) }, hash)
  const one = nextEntry(knowledgeOf(UNIT, PHONE, [marked]), { ...stamp(2), ...grip(32) }, hash)
  const two = nextEntry(knowledgeOf(UNIT, PHONE, [marked]), { ...stamp(3), ...grip(35) }, hash)
  expect(fold(UNIT, [marked, one, two]).clashes.map(({ field }) => field)).toEqual(['grip'])
})

test('a thousand devices that all say something else of one field are folded, and all are shown', () => {
  const events: Event[] = []
  for (let n = 0; n < 1_000; n++) {
    const device = uuid(0x10000 + n)
    events.push(nextEntry(knowledgeOf(UNIT, device, []), { ...stamp(n + 1), ...grip(n % 7) }, hash))
  }
  expect(fold(UNIT, events).clashes[0]?.entries.length).toBe(1_000)
})
