import type { EntryHere } from '@gripbook/device'
import { expect, test } from 'vitest'
import { byReason } from './refusedHere.ts'
import { troubleOf } from './trouble.ts'

const entry = (state: EntryHere['state'], code?: string) =>
  ({ event: {}, state, ...(code === undefined ? {} : { refusal: { code, facts: {} } }) }) as EntryHere

test('refused entries are gathered by reason, the most frequent first', () => {
  const found = byReason([
    entry('sent'),
    entry('refused', 'other-device'),
    entry('refused', 'not-allowed'),
    entry('refused', 'not-allowed'),
    entry('waiting'),
  ])
  expect(found.map(({ entries }) => entries)).toEqual([2, 1])
  expect(found[0]!.why).toContain('role')
})

test('what stands in the way of sending has one name each', () => {
  expect(troubleOf(null)).toBeNull()
  expect(troubleOf({ ok: false, why: 'no-answer' })).toBe('no answer')
  expect(troubleOf({ ok: false, why: 'strange-answer', status: 200 })).toBe('not the shop')
  expect(troubleOf({ ok: false, why: 'later', status: 503, after: 0 })).toBe('shop busy')
  expect(troubleOf({ ok: false, why: 'refused', status: 401, code: 'not-signed-in', facts: {} })).toBe('signed out')
  expect(troubleOf({ ok: false, why: 'refused', status: 413, code: 'too-large', facts: {} })).toMatchObject({
    code: 'too-large',
  })
})
