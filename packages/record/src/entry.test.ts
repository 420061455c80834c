import { expect, test } from 'vitest'
import { knowledgeOf, learn, nextEntry } from './entry.ts'
import type { Event } from './events/event.ts'
import { noteWritten } from './events/noteWritten.ts'
import { sha256OfText } from './sha256.ts'
import { DEVICES, UNIT, uuid } from './testing/bench.ts'

const [PHONE, TABLET] = DEVICES

function notes(device: string, count: number, at = '2026-03-01T09:00:00.000Z'): Event[] {
  const made: Event[] = []
  for (let n = 0; n < count; n++) {
    const id = uuid(made.length + (device === PHONE ? 100 : 200))
    made.push(
      nextEntry(knowledgeOf(UNIT, device, made), { id, at, who: 'b', ...noteWritten({ text: 'x' }) }, sha256OfText),
    )
  }
  return made
}

test('entries of a device count up, each on the one before', () => {
  const [a, b, c] = notes(PHONE, 3) as [Event, Event, Event]
  expect([a.seq, b.seq, c.seq]).toEqual([1, 2, 3])
  expect([a.before, b.before, c.before]).toEqual([null, a.hash, b.hash])
  expect([b.tick - a.tick, c.tick - b.tick]).toEqual([1, 1])
})

test('a device has seen another’s entries only as far as none is missing', () => {
  const theirs = notes(TABLET, 4)
  const known = knowledgeOf(UNIT, PHONE, [theirs[3]!, theirs[1]!, theirs[0]!])
  expect(known.seen).toEqual({ [TABLET]: 2 })
  expect(known.tick).toBe(theirs[1]!.tick)
  expect(knowledgeOf(UNIT, PHONE, theirs.toReversed()).seen).toEqual({ [TABLET]: 4 })
})

test('an entry that comes again, or of another unit, is nothing new', () => {
  const theirs = notes(TABLET, 2)
  const known = knowledgeOf(UNIT, PHONE, theirs)
  expect(learn(known, theirs[0]!)).toBe(known)
  expect(learn(known, { ...theirs[1]!, seq: 3, unit: uuid(0xb) })).toBe(known)
})

test('what is no time is refused', () => {
  const known = knowledgeOf(UNIT, PHONE, [])
  const given = { id: uuid(1), at: 'noon', who: 'b', ...noteWritten({ text: 'x' }) }
  expect(() => nextEntry(known, given, sha256OfText)).toThrow('no time')
})
