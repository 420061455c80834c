import { expect, test } from 'vitest'
import { knowledgeOf, nextEntry } from '../entry.ts'
import { sha256OfText } from '../sha256.ts'
import { DEVICES, UNIT, uuid } from '../testing/bench.ts'
import { EVENT_LIMITS, readEvent } from './event.ts'
import { noteWritten } from './noteWritten.ts'

const event = nextEntry(
  knowledgeOf(UNIT, DEVICES[0], []),
  { id: uuid(1), at: '2024-02-29T09:00:00.000Z', who: 'b', ...noteWritten({ text: 'x' }) },
  sha256OfText,
)

test('an entry reads as itself', () => {
  expect(readEvent(event)).toEqual({ ok: true, value: event })
})

test('what is no entry is refused with the path', () => {
  const cases: [object, string][] = [
    [{ id: 'x' }, 'id'],
    [{ unit: uuid(0xab).toUpperCase() }, 'unit'],
    [{ seq: 0 }, 'seq'],
    [{ seq: 1.5 }, 'seq'],
    [{ seq: '1' }, 'seq'],
    [{ tick: Number.NaN }, 'tick'],
    [{ at: '2026-02-29T09:00:00.000Z' }, 'at'],
    [{ at: '2026-03-01T09:00:00.000+01:00' }, 'at'],
    [{ at: '2026-03-01T09:00:00Z' }, 'at'],
    [{ seen: { phone: 1 } }, 'seen.phone'],
    [{ seen: { [DEVICES[1]]: -1 } }, `seen.${DEVICES[1]}`],
    [{ who: '' }, 'who'],
    [{ who: 'a\u202eb' }, 'who'],
    [{ type: 'Note Written' }, 'type'],
    [{ version: 0 }, 'version'],
    [{ body: [] }, 'body'],
    [{ body: { text: '\ud800' } }, 'body.text'],
    [{ body: { '\udc00': 1 } }, 'body.\udc00'],
    [{ body: { text: 'a\u0000' } }, 'body.text'],
    [{ body: { figure: -0 } }, 'body.figure'],
    [{ body: { figure: undefined } }, 'body.figure'],
    [{ body: { figure: 1n } }, 'body.figure'],
    [{ body: JSON.parse('{"__proto__": {"a": 1}}') as object }, 'body.__proto__'],
    [{ before: '' }, 'before'],
    [{ hash: event.hash.toUpperCase() }, 'hash'],
    [{ extra: 1 }, ''],
  ]
  for (const [change, path] of cases) expect(readEvent({ ...event, ...change }), path).toEqual({ ok: false, path })
  for (const nothing of [null, undefined, 7, 'x', [], {}]) expect(readEvent(nothing).ok).toBe(false)
})

test('what is nested too deep or too long is refused without being followed', () => {
  let deep: unknown = 1
  for (let i = 0; i < 20_000; i++) deep = [deep]
  expect(readEvent({ ...event, body: { deep } }).ok).toBe(false)
  expect(readEvent({ ...event, body: { text: 'x'.repeat(EVENT_LIMITS.text) } })).toEqual({ ok: false, path: '' })
})
