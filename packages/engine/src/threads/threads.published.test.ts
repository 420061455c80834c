import { expect, test } from 'vitest'
import * as heads from '../../published/heads.ts'
import * as areas from '../../published/stress-areas.ts'
import * as limits from '../../published/thread-limits.ts'
import { failures } from '../joints/testing/check.ts'
import { threadChecks } from './testing/threadChecks.ts'

// the sums run inside the tests, never while they are collected: a sum that breaks must fail a test
const tables = [heads, areas, limits].flatMap((module) => Object.values(module))

test.each(tables.map(({ source, table, basis }) => [`${source}, ${table}`, basis]))(
  '[JO1] figures of threads agree with %s (%s)',
  (source, basis) => {
    const checks = threadChecks().filter((check) => check.source.startsWith(source as string) && check.basis === basis)
    expect(checks.length).toBeGreaterThan(0)
    expect(failures(checks)).toEqual([])
  },
)

test('there are enough published figures for threads, and most of them were seen', () => {
  const all = threadChecks()
  expect(failures(all)).toEqual([])
  expect(all.length).toBeGreaterThan(300)
  expect(all.filter(({ basis }) => basis === 'seen').length).toBeGreaterThan(all.length / 2)
})
