import { expect, test } from 'vitest'
import { hostileTrial } from './trial.ts'

test('[RE8] wrong requests of every kind are refused in words, nothing fails, nothing is written', async () => {
  const { sent, byStatus, rawSent } = await hostileTrial(2_000, 1, () => {})
  expect([sent, rawSent]).toEqual([2_000, 200])
  const refused = Object.entries(byStatus).reduce(
    (sum, [status, count]) => sum + (Number(status) >= 400 ? count : 0),
    0,
  )
  expect(refused, 'most of them are wrong indeed').toBeGreaterThan(1_000)
  for (const status of [400, 401, 403, 404, 415, 421, 422])
    expect(byStatus[status], `some ${status}`).toBeGreaterThan(0)
})
