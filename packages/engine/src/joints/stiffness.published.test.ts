import { expect, test } from 'vitest'
import { failures } from './testing/check.ts'
import { stiffnessChecks } from './testing/stiffnessChecks.ts'

test('stiffnesses of bolts and of what they clamp agree with worked answers and with the sums of VDI 2230', () => {
  const checks = stiffnessChecks()
  expect(checks.length).toBeGreaterThan(15)
  expect(failures(checks)).toEqual([])
})
