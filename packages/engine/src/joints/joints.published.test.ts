import { expect, test } from 'vitest'
import { bySource, failures } from './testing/check.ts'
import { jointChecks } from './testing/jointChecks.ts'

test.each(bySource(jointChecks()))('[JO1] figures of joints agree with %s', (_, checks) => {
  expect(failures(checks)).toEqual([])
})

test('there are enough published figures for joints, and most of them were seen', () => {
  const all = jointChecks()
  expect(all.length).toBeGreaterThan(550)
  expect(all.filter(({ basis }) => basis === 'seen').length).toBeGreaterThan(all.length / 2)
})
