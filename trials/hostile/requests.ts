/** Requests that nobody should send: right ones made wrong at random, from a seed, so that whatever is found can be sent again. */
import type { InjectOptions } from 'fastify'

export type Random = () => number

export type Wrong = { request: InjectOptions /** What was done to it, for the report. */; how: string[] }

/** What the trial knows of the shop that it attacks. */
export type Target = {
  cookies: { owner: string; builder: string; viewer: string; ended: string }
  unit: string
  photograph: string
  /** Entries that are kept already: sent as they are they are known, changed in any way they must be refused. */
  kept: readonly object[]
  /** A code that was used up. */
  usedCode: string
}

const NASTY = [
  '',
  ' ',
  '\u0000',
  '\ud800',
  '../../../../etc/passwd',
  '..\\..\\windows\\system.ini',
  "'; drop table record_entry; --",
  "1' or '1'='1",
  '$1',
  '#{7*7}',
  '{{7*7}}',
  '<script>alert(1)</script>',
  '__proto__',
  'constructor',
  'toString',
  'NaN',
  '1e999',
  '-0',
  '٣',
  'ﬀ'.repeat(50),
  '\u202e',
  'a'.repeat(10_000),
  '\r\nset-cookie: gripbook=forged',
  '%',
  '%00',
  '%2e%2e%2f',
  'null',
  'undefined',
  '[object Object]',
  '00000000-0000-4000-8000-000000000000',
  'ffffffff-ffff-ffff-ffff-ffffffffffff',
]
const NASTY_VALUES: readonly unknown[] = [
  null,
  true,
  0,
  -1,
  1.5,
  1e308,
  Number.MAX_SAFE_INTEGER + 2,
  [],
  {},
  [[[[[[]]]]]],
  { __proto__: null, admin: true },
  ...NASTY,
]
const TYPES = [
  'text/plain',
  'application/xml',
  'multipart/form-data; boundary=x',
  'application/json; charset=utf-16',
  'application/x-www-form-urlencoded',
  'image/jpeg',
  'application/octet-stream',
  'nonsense',
  '',
]
const METHODS = ['GET', 'HEAD', 'POST', 'PUT', 'PATCH', 'DELETE', 'OPTIONS'] as const
const HEADERS = [
  'host',
  'origin',
  'cookie',
  'content-type',
  'last-event-id',
  'sec-fetch-site',
  'upload-offset',
  'upload-length',
  'upload-complete',
  'x-forwarded-for',
  'x-forwarded-host',
  'if-none-match',
  'range',
  'accept',
  'expect',
]

const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random() * list.length)]!
/** Half a surrogate pair cannot stand in an address. */
const sayable = (text: string): string => text.replace(/\p{Surrogate}/gu, '?')
const uuidOf = (random: Random): string =>
  'xxxxxxxx-xxxx-4xxx-8xxx-xxxxxxxxxxxx'.replace(/x/g, () => Math.floor(random() * 16).toString(16))

/** A request that would be right, but for what it asks: nothing in it may change the record. */
function rightOne(random: Random, target: Target): InjectOptions & { headers: Record<string, string> } {
  const { builder, owner, viewer } = target.cookies
  const as = (cookie: string, more: Record<string, string> = {}) => ({ host: 'localhost', cookie, ...more })
  const entries = [pick(random, target.kept)]
  const octets = {
    'content-type': 'application/octet-stream',
    'upload-offset': '0',
    'upload-length': '20',
    'upload-complete': '?1',
  }
  return pick<() => InjectOptions & { headers: Record<string, string> }>(random, [
    () => ({ method: 'POST', url: '/api/entries', headers: as(builder), payload: { entries } }),
    () => ({ method: 'POST', url: '/api/entries', headers: as(viewer), payload: { entries } }),
    () => ({ method: 'GET', url: '/api/entries?limit=5', headers: as(builder) }),
    () => ({ method: 'GET', url: '/api/units?limit=5', headers: as(viewer) }),
    () => ({ method: 'GET', url: `/api/units/${target.unit}`, headers: as(viewer) }),
    () => ({ method: 'GET', url: `/api/units/${target.unit}/heads`, headers: as(builder) }),
    () => ({ method: 'GET', url: `/api/units/${target.unit}/archive`, headers: as(owner) }),
    () => ({
      method: 'POST',
      url: `/api/units/${target.unit}/missing`,
      headers: as(builder),
      payload: { have: {}, limit: 3 },
    }),
    () => ({ method: 'GET', url: `/api/photographs/${target.photograph}?size=320`, headers: as(viewer) }),
    () => ({ method: 'HEAD', url: `/api/photographs/${target.photograph}/upload`, headers: as(builder) }),
    () => ({
      method: 'PATCH',
      url: `/api/photographs/${target.photograph.replace(/^./, 'f')}/upload`,
      headers: as(builder, octets),
      payload: Buffer.from('no photograph at all'),
    }),
    () => ({
      method: 'POST',
      url: '/api/archives',
      headers: as(owner, { 'content-type': 'application/zip' }),
      payload: Buffer.from('PK\u0003\u0004 no archive'),
    }),
    () => ({
      method: 'POST',
      url: '/api/pairing',
      headers: as(''),
      payload: { code: target.usedCode, device: { id: uuidOf(random), secret: 'a'.repeat(64), name: 'phone' } },
    }),
    () => ({ method: 'POST', url: '/api/codes', headers: as(builder), payload: { name: 'A friend', role: 'owner' } }),
    () => ({ method: 'PATCH', url: `/api/people/${uuidOf(random)}`, headers: as(owner), payload: { role: 'viewer' } }),
    () => ({ method: 'PATCH', url: `/api/people/${uuidOf(random)}`, headers: as(builder), payload: { role: 'owner' } }),
    () => ({ method: 'DELETE', url: `/api/sessions/${uuidOf(random)}`, headers: as(owner) }),
    // As one whose session has ended: with a good one, "sent as DELETE" would sign out, and rightly.
    () => ({ method: 'GET', url: '/api/session', headers: as(target.cookies.ended) }),
    () => ({ method: 'GET', url: '/api/people', headers: as(builder) }),
    () => ({ method: 'GET', url: '/api/metrics', headers: as(viewer) }),
    () => ({ method: 'GET', url: '/api/openapi.json', headers: as('') }),
  ])()
}

type Change = (request: InjectOptions & { headers: Record<string, string> }, random: Random, target: Target) => string

const CHANGES: readonly Change[] = [
  (request, random) => {
    const body = request.payload
    if (typeof body !== 'object' || body === null || Buffer.isBuffer(body)) return 'nothing'
    const changed = JSON.parse(JSON.stringify(body)) as object
    const path = changeInside(changed, random)
    request.payload = changed
    return `${path} changed`
  },
  (request, random) => {
    const text =
      typeof request.payload === 'object' && !Buffer.isBuffer(request.payload)
        ? JSON.stringify(request.payload)
        : String(request.payload ?? '')
    const at = Math.floor(random() * text.length)
    request.payload = pick(random, [
      text.slice(0, at),
      `${text.slice(0, at)}${pick(random, NASTY)}${text.slice(at)}`,
      `\ufeff${text}`,
      text.replaceAll('"', "'"),
      text + text,
      `${'['.repeat(50_000)}`,
      `{"entries":${'['.repeat(5_000)}${']'.repeat(5_000)}}`,
      `{"__proto__":{"admin":true},${text.slice(1)}`,
      `{"constructor":{"prototype":{"admin":true}},${text.slice(1)}`,
      'a'.repeat(random() < 0.02 ? 5_000_000 : 1_000),
    ])
    request.headers['content-type'] ??= 'application/json'
    return 'text of the body changed'
  },
  (request, random) => {
    const bytes = Buffer.from(Array.from({ length: Math.floor(random() * 300) }, () => Math.floor(random() * 256)))
    request.payload = bytes
    request.headers['content-type'] ??= 'application/json'
    return 'random bytes as the body'
  },
  (request, random) => {
    const type = pick(random, TYPES)
    request.headers['content-type'] = type
    if (typeof request.payload === 'object' && !Buffer.isBuffer(request.payload))
      request.payload = JSON.stringify(request.payload)
    return `sent as ${type}`
  },
  (request, random) => {
    const url = String(request.url)
    const pieces = url.split('/')
    pieces[1 + Math.floor(random() * (pieces.length - 1))] = encodeURI(sayable(pick(random, NASTY)).slice(0, 3_000))
    request.url = pick(random, [
      pieces.join('/'),
      `${url}/${encodeURIComponent('../'.repeat(5))}`,
      url.replace('/api/', '/api/../api/'),
      url.replace('/api/', '/api//'),
      `${url}%`,
      `${url}%00`,
      url.toUpperCase(),
      `${url}${url.includes('?') ? '&' : '?'}${encodeURIComponent(pick(random, ['limit', 'after', 'size', 'x']))}=${encodeURIComponent(sayable(pick(random, NASTY)))}`,
      `/${'a'.repeat(7_000)}`,
    ])
    return 'address changed'
  },
  (request, random) => {
    const method = pick(random, METHODS)
    request.method = method
    return `sent as ${method}`
  },
  (request, random) => {
    const name = pick(random, HEADERS)
    const value = pick(random, NASTY)
      .replace(/[^\x20-\x7e]/g, '?')
      .slice(0, 4_000)
    request.headers[name] = name === 'host' && value.trim() === '' ? 'elsewhere.example' : value
    return `${name} changed`
  },
  (request, random, { cookies }) => {
    request.headers.cookie = pick(random, [
      '',
      cookies.ended,
      'gripbook=',
      `gripbook=${'A'.repeat(43)}`,
      `${cookies.viewer}x`,
      `gripbook=${uuidOf(random)}; gripbook=x`,
      'a=b; '.repeat(400),
    ])
    return 'another cookie'
  },
]

export function wrongRequest(random: Random, target: Target): Wrong {
  const request = rightOne(random, target)
  const how = [`${request.method} ${request.url}`]
  const changes = 1 + Math.floor(random() * 3)
  for (let i = 0; i < changes; i++) how.push(pick(random, CHANGES)(request, random, target))
  return { request, how }
}

/** Changes one value, somewhere: replaced, taken out, doubled, or one more beside it. Gives the path. */
function changeInside(value: object, random: Random): string {
  const names = Object.keys(value)
  const name = pick(random, names)
  if (name === undefined) return 'nothing'
  const holder = value as Record<string, unknown>
  const inner = holder[name]
  if (typeof inner === 'object' && inner !== null && random() < 0.8) return `${name}.${changeInside(inner, random)}`
  const chance = random()
  if (chance < 0.15 && !Array.isArray(value)) delete holder[name]
  else if (chance < 0.25) holder[`${name}2`] = inner
  else if (chance < 0.3 && Array.isArray(value)) value.push(...Array.from({ length: 2_500 }, () => inner))
  else holder[name] = pick(random, NASTY_VALUES)
  return name
}
