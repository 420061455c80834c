import { expect, test } from 'vitest'
import { asker, type Heard, meaningOf } from './ask.ts'

const answer = (status: number, text: string, headers: Record<string, string> = {}) =>
  meaningOf({ status, headers: new Headers(headers) }, text, Date.parse('2026-03-01T09:00:00Z'))

test('an answer is believed only as JSON, or when it says nothing by 204', () => {
  expect(answer(200, '{"added":1}')).toEqual({ ok: true, status: 200, body: { added: 1 } })
  expect(answer(204, '')).toEqual({ ok: true, status: 204, body: null })
  for (const text of ['', '<h1>Sign in</h1>', '[]', '"added"', 'null', '{"added":1'])
    expect(answer(200, text)).toEqual({ ok: false, why: 'strange-answer', status: 200 })
})

test('a refusal names its code; one without is of something on the way', () => {
  expect(answer(422, '{"status":422,"code":"bad-entry","title":"…","index":3,"path":"body"}')).toEqual({
    ok: false,
    why: 'refused',
    status: 422,
    code: 'bad-entry',
    facts: { index: 3, path: 'body' },
  })
  expect(answer(404, 'not found')).toEqual({ ok: false, why: 'strange-answer', status: 404 })
  expect(answer(413, '<h1>too large</h1>')).toMatchObject({ why: 'refused', code: 'too-large' })
})

test('a shop that cannot at the moment says how long to wait, in seconds or by a date, never more than an hour', () => {
  const wait = (after: string) => answer(503, '', { 'retry-after': after })
  expect(answer(500, '')).toEqual({ ok: false, why: 'later', status: 500, after: 0 })
  expect(wait('7')).toMatchObject({ after: 7_000 })
  expect(wait('Sun, 01 Mar 2026 09:00:30 GMT')).toMatchObject({ after: 30_000 })
  expect(wait('999999')).toMatchObject({ after: 3_600_000 })
  expect(wait('soon')).toMatchObject({ after: 0 })
  expect(wait('Sun, 01 Mar 2026 08:00:00 GMT')).toMatchObject({ after: 0 })
})

test('an answer that does not come in time, or to a device that is closed, is none, and the shop’s clock is heard from one that does', async () => {
  const heard: Heard[] = []
  let now = Date.parse('2026-03-01T09:00:00.000Z')
  const patience = { answer: 20, turn: 1, firstPause: 1, longestPause: 1, idle: 1, silence: 1, poll: 1 }
  const { signal } = new AbortController()
  const place = (fetch: (url: string, init?: RequestInit) => Promise<Response>) =>
    asker({ base: '/api', clock: () => now, patience, fetch }, signal, (one) => heard.push(one))
  const unending = (_: string, init?: RequestInit) =>
    new Promise<Response>((_, fail) => init!.signal!.addEventListener('abort', () => fail(new Error('aborted'))))
  const never = place(unending)
  expect(await never({ method: 'GET', path: '/session' })).toEqual({ ok: false, why: 'no-answer' })
  const ending = new AbortController()
  const closing = asker(
    { base: '/api', clock: () => now, patience: { ...patience, answer: 60_000 }, fetch: unending },
    ending.signal,
    () => {},
  )
  const asked = closing({ method: 'GET', path: '/session' })
  ending.abort()
  expect(await asked).toEqual({ ok: false, why: 'no-answer' })
  expect(await closing({ method: 'GET', path: '/session' })).toEqual({ ok: false, why: 'no-answer' })
  const dated = place(async () => {
    now += 1_000
    return new Response('{}', { headers: { date: 'Sun, 01 Mar 2026 10:00:00 GMT' } })
  })
  expect(await dated({ method: 'GET', path: '/session' })).toMatchObject({ ok: true })
  // An hour ahead: the middle of its second against the middle of the round trip.
  expect(heard).toEqual([{ ahead: 3_600_000 }])
  const slow = place(async () => {
    now += 60_000
    return new Response('{}', { headers: { date: 'Sun, 01 Mar 2026 10:00:00 GMT' } })
  })
  await slow({ method: 'GET', path: '/session' })
  expect(heard[1]).toEqual({ ahead: null })
  const hotspot = place(async () => new Response('<h1>hello</h1>'))
  await hotspot({ method: 'GET', path: '/session' })
  expect(heard).toHaveLength(2)
})
