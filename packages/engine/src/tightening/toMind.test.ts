import { expect, test } from 'vitest'
import { isRough, isToMind } from './toMind.ts'

test('what a person can look up or put right is to be minded, what the sums take for granted is not', () => {
  const holes = ['1']
  expect(
    (
      [
        { what: 'left out', holes },
        { what: 'usual torque', holes },
        { what: 'unit load' },
        { what: 'thick', bendingLength: 4 },
      ] as const
    ).every(isToMind),
  ).toBe(true)
  expect(
    (
      [
        { what: 'estimate' },
        { what: 'flat' },
        { what: 'aluminium' },
        { what: 'thickness' },
        { what: 'bolt stiffness', holes },
        { what: 'torque', holes },
        { what: 'lift-off', share: 0.5 },
      ] as const
    ).some(isToMind),
  ).toBe(false)
})

test('figures are a hint above a twentieth, where an error could turn the ranking round', () => {
  expect([0.05, 0.051].map((error) => isRough({ accuracy: { error, grid: 2 } }))).toEqual([false, true])
})
