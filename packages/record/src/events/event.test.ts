import fc from 'fast-check'
import { expect, test } from 'vitest'
import { canonical } from '../canonical.ts'
import { hashOf } from '../chain.ts'
import { knowledgeOf, nextEntry } from '../entry.ts'
import { entryText } from '../entryText.ts'
import { sha256OfText } from '../sha256.ts'
import { DEVICES, UNIT, uuid } from '../testing/bench.ts'
import { EVENT_LIMITS, eventSchema, isEnvelope, readEvent } from './event.ts'
import { noteWritten } from './noteWritten.ts'

const event = nextEntry(
  knowledgeOf(UNIT, DEVICES[0], []),
  { id: uuid(1), at: '2024-02-29T09:00:00.000Z', who: 'b', ...noteWritten({ text: 'x' }) },
  sha256OfText,
)

test('an entry reads as itself', () => {
  expect(readEvent(event)).toEqual({ ok: true, value: event, text: entryText(event) })
})

const ODD = [
  null,
  true,
  0,
  -1,
  1.5,
  1e15,
  1e15 + 1,
  2 ** 53,
  '',
  'x',
  'a-b',
  'A',
  uuid(5),
  uuid(0xab).toUpperCase(),
  'f'.repeat(64),
  'F'.repeat(64),
  'x'.repeat(101),
]
const TIMES = [
  '2026-02-29T09:00:00.000Z',
  '2024-02-29T23:59:59.999Z',
  '2026-13-01T00:00:00.000Z',
  '2026-03-01T24:00:00.000Z',
  '2026-03-01T09:00:00Z',
  '0000-01-01T00:00:00.000Z',
]

test('the quick way takes what the schema takes, and nothing else', () => {
  const odd = fc.oneof(
    fc.constantFrom<unknown>(...ODD, ...TIMES, [], {}, { [uuid(6)]: 1 }, { [uuid(6)]: 0 }, { x: 1 }, { a: { b: [1] } }),
    fc.string(),
    fc.integer(),
    fc.double(),
  )
  const names = Object.keys(event)
  const changes = fc.array(fc.tuple(fc.constantFrom(...names, 'more'), fc.option(odd, { nil: undefined })), {
    maxLength: 3,
  })
  let taken = 0
  fc.assert(
    fc.property(changes, (made) => {
      const changed: Record<string, unknown> = { ...event }
      for (const [name, value] of made) {
        if (value === undefined) delete changed[name]
        else changed[name] = value
      }
      const bySchema = eventSchema.safeParse(changed).success
      if (bySchema) taken++
      expect(isEnvelope(changed), JSON.stringify(changed)).toBe(bySchema)
    }),
    { seed: 11, numRuns: 20_000 },
  )
  expect(taken, 'some of them are entries').toBeGreaterThan(1_000)
  for (const nothing of [null, undefined, 1, 'x', [], {}]) expect(isEnvelope(nothing)).toBe(false)
})

test('the text of an entry is its canonical JSON, and without its hash that which was hashed', () => {
  const { hash, ...unhashed } = event
  expect(entryText(event)).toEqual({ whole: canonical(event), hashed: canonical(unhashed) })
  expect(hashOf(unhashed, (text) => text)).toBe(canonical(unhashed))
  expect(hash).toBe(sha256OfText(canonical(unhashed)))
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
