import { expect, test } from 'vitest'
import * as classes from '../../published/iso-898-1.ts'
import * as breaking from '../../published/iso-898-7.ts'
import * as sae from '../../published/sae-j429.ts'
import * as strip from '../../published/stripping.ts'
import * as books from '../../published/torque-books.ts'
import * as vdi from '../../published/vdi-2230.ts'
import * as worked from '../../published/worked-examples.ts'
import * as wrenches from '../../published/wrenches.ts'
import { failures } from './testing/check.ts'
import { jointChecks } from './testing/jointChecks.ts'

// the sums run inside the tests, never while they are collected: a sum that breaks must fail a test
const tables = [classes, breaking, sae, strip, books, vdi, worked, wrenches].flatMap((module) => Object.values(module))

test.each(tables.map(({ source, table, basis }) => [`${source}, ${table}`, basis]))(
  '[JO1] figures of joints agree with %s (%s)',
  (source, basis) => {
    const checks = jointChecks().filter((check) => check.source.startsWith(source as string) && check.basis === basis)
    expect(checks.length).toBeGreaterThan(0)
    expect(failures(checks)).toEqual([])
  },
)

test('there are enough published figures for joints, and most of them were seen', () => {
  const all = jointChecks()
  expect(failures(all)).toEqual([])
  expect(all.length).toBeGreaterThan(550)
  expect(all.filter(({ basis }) => basis === 'seen').length).toBeGreaterThan(all.length / 2)
})
