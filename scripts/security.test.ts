import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { readTree } from './tidy/tree.ts'

const ROOT = fileURLToPath(new URL('..', import.meta.url))
const PAGE = readFileSync(join(ROOT, 'docs/security.md'), 'utf8')

test('every test that docs/security.md names is there', () => {
  const rows = PAGE.split('\n').filter((line) => /^\| (?!threat|-)/.test(line))
  const titles = rows.map((row) => /“([^”]+)” \|$/.exec(row)?.[1] ?? `no test: ${row}`)
  const tests = readTree(ROOT).filter(({ path }) => path.endsWith('.test.ts') || path.endsWith('storeSuite.ts'))
  const all = tests.map(({ text }) => text).join('\n')
  expect(titles.filter((title) => !all.includes(title))).toEqual([])
  expect(titles.length).toBeGreaterThan(30)
})
