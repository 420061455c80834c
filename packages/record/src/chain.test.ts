import { expect, test } from 'vitest'
import { chainFaults, type Hash, hashOf, movedFaults } from './chain.ts'
import { knowledgeOf, nextEntry } from './entry.ts'
import type { Event } from './events/event.ts'
import { sha256OfText } from './sha256.ts'

const uuid = (n: number): string => `00000000-0000-4000-8000-${n.toString(16).padStart(12, '0')}`
const UNIT = uuid(0xa)
const [PHONE, TABLET] = [uuid(0xd1), uuid(0xd2)]
const hash: Hash = sha256OfText

/** Ten entries of two devices that see each other's at once. */
function story(): Event[] {
  const events: Event[] = []
  for (let i = 1; i <= 10; i++) {
    const given = {
      id: uuid(i),
      at: '2026-03-01T09:00:00.000Z',
      who: 'b',
      type: 'note-written',
      version: 1,
      body: { text: `${i}` },
    }
    events.push(nextEntry(knowledgeOf(UNIT, i % 3 === 0 ? TABLET : PHONE, events), given, hash))
  }
  return events
}

test('a whole record has no fault, in whatever order it lies', () => {
  expect(chainFaults(story(), hash)).toEqual([])
  expect(chainFaults(story().reverse(), hash)).toEqual([])
  expect(chainFaults([], hash)).toEqual([])
})

test('[RE5] a changed byte in any field of any entry is named', () => {
  for (let i = 0; i < 10; i++) {
    for (const change of [
      { who: 'c' },
      { at: '2026-03-01T09:00:00.001Z' },
      { body: { text: 'other' } },
      { type: 'decided' },
      { version: 2 },
      { tick: 7 },
    ]) {
      const events = story()
      events[i] = { ...events[i]!, ...change }
      expect(chainFaults(events, hash)).toEqual([
        { event: uuid(i + 1), device: events[i]!.device, seq: events[i]!.seq, code: 'changed' },
      ])
    }
  }
})

test('an entry that was changed and hashed anew no longer carries the one after it', () => {
  const events = story()
  const forged = { ...events[3]!, who: 'c' }
  events[3] = { ...forged, hash: hashOf(forged, hash) }
  expect(chainFaults(events, hash)).toEqual([
    { event: uuid(5), device: PHONE, seq: 4, code: 'does-not-follow', before: uuid(4) },
  ])
})

test('[RE5] a missing entry is named by its number and by the one after it', () => {
  const events = story().filter((event) => event.id !== uuid(4))
  expect(chainFaults(events, hash)).toEqual([
    { event: uuid(5), device: PHONE, seq: 4, code: 'missing', from: 3, to: 3 },
  ])
  const headless = story().filter((event) => event.device !== PHONE || event.seq > 2)
  expect(chainFaults(headless, hash)).toEqual([
    { event: uuid(4), device: PHONE, seq: 3, code: 'missing', from: 1, to: 2 },
  ])
})

test('an end that was cut off is found by the heads that a manifest holds', () => {
  const events = story().filter((event) => event.device !== TABLET && event.seq < 6)
  expect(chainFaults(events, hash)).toEqual([])
  expect(chainFaults(events, hash, { [PHONE]: 7, [TABLET]: 3 })).toEqual([
    { event: '', device: PHONE, seq: 7, code: 'missing', from: 6, to: 7 },
    { event: '', device: TABLET, seq: 3, code: 'missing', from: 1, to: 3 },
  ])
})

test('two entries that changed places by their numbers are named', () => {
  const events = story()
  const [a, b] = [events[3]!, events[4]!]
  events[3] = { ...a, seq: b.seq }
  events[4] = { ...b, seq: a.seq }
  const found = chainFaults(events, hash)
  expect(found.filter((fault) => fault.code === 'changed').map((fault) => fault.event)).toEqual([b.id, a.id])
  expect(found.some((fault) => fault.code === 'does-not-follow' || fault.code === 'wrong-tick')).toBe(true)
})

test('a list that claims an order names what was moved in it', () => {
  const events = story()
  expect(movedFaults(events)).toEqual([])
  const moved = [...events.slice(0, 3), ...events.slice(4, 8), events[3]!, ...events.slice(8)]
  expect(movedFaults(moved)).toEqual([{ event: uuid(4), device: PHONE, seq: 3, code: 'moved', after: uuid(8) }])
})

test('a number used twice, and an id used twice, are named', () => {
  const events = story()
  const twin = nextEntry(
    knowledgeOf(UNIT, TABLET, events.slice(0, 5)),
    {
      id: uuid(99),
      at: '2026-03-01T09:00:00.000Z',
      who: 'b',
      type: 'note-written',
      version: 1,
      body: { text: 'twin' },
    },
    hash,
  )
  const faults = chainFaults([...events, twin], hash)
  expect(faults.some((fault) => fault.code === 'number-twice' && fault.device === TABLET && fault.seq === 2)).toBe(true)
  expect(chainFaults([...story(), story()[9]!], hash).map((fault) => fault.code)).toContain('id-twice')
})

test('an entry with a tick that nothing gives is named', () => {
  const events = story()
  const late = { ...events[9]!, tick: events[9]!.tick + 1_000 }
  events[9] = { ...late, hash: hashOf(late, hash) }
  expect(chainFaults(events, hash)).toEqual([
    { event: uuid(10), device: PHONE, seq: 7, code: 'wrong-tick', expected: late.tick - 1_000 },
  ])
})

test('an entry that stands before what it had seen is named', () => {
  const events = story()
  const early = { ...events[9]!, tick: 5, before: events[7]!.hash }
  events[9] = { ...early, hash: hashOf(early, hash) }
  expect(chainFaults(events, hash).map((fault) => [fault.code, fault.event])).toContainEqual(['wrong-tick', uuid(10)])
})

test('a device with a wrong clock is still put after what it had seen', () => {
  const first = nextEntry(
    knowledgeOf(UNIT, PHONE, []),
    { id: uuid(1), at: '2099-01-01T00:00:00.000Z', who: 'b', type: 'note-written', version: 1, body: {} },
    hash,
  )
  const second = nextEntry(
    knowledgeOf(UNIT, TABLET, [first]),
    { id: uuid(2), at: '2001-01-01T00:00:00.000Z', who: 'b', type: 'note-written', version: 1, body: {} },
    hash,
  )
  expect(second.tick).toBe(first.tick + 1)
  expect(second.seen).toEqual({ [PHONE]: 1 })
  expect(chainFaults([second, first], hash)).toEqual([])
})
