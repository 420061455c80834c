import { expect, test } from 'vitest'
import { bySource, failures } from '../joints/testing/check.ts'
import { threadChecks } from './testing/threadChecks.ts'

test.each(bySource(threadChecks()))('[JO1] figures of threads agree with %s', (_, checks) => {
  expect(failures(checks)).toEqual([])
})

test('there are enough published figures for threads, and most of them were seen', () => {
  const all = threadChecks()
  expect(all.length).toBeGreaterThan(300)
  expect(all.filter(({ basis }) => basis === 'seen').length).toBeGreaterThan(all.length / 2)
})
