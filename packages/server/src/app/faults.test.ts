import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { FAULTS, problem } from './faults.ts'

const PAGE = readFileSync(new URL('../../../../docs/server.md', import.meta.url), 'utf8')

test('docs/server.md lists every fault with its status and words, and no other', () => {
  const table = PAGE.slice(PAGE.indexOf('| code | status | words |'))
  const rows = [...table.matchAll(/^\| `([a-z-]+)` \| (\d{3}) \| (.+) \|$/gm)].map(([, ...row]) => row)
  expect(rows).toEqual(Object.entries(FAULTS).map(([code, { status, words }]) => [code, String(status), words]))
})

test('a problem document holds code, status and words, which details cannot replace', () => {
  expect(problem('wrong-host', { status: 200, at: 'body' })).toEqual({
    status: 421,
    code: 'wrong-host',
    title: FAULTS['wrong-host'].words,
    at: 'body',
  })
})
