import { expect, test } from 'vitest'
import { normalBelow } from './normal.ts'

test('the normal distribution is that of printed tables', () => {
  // Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1, P(x), as printed to 15 decimals (from memory)
  expect(normalBelow(1)).toBeCloseTo(0.841344746068543, 14)
  expect(normalBelow(2)).toBeCloseTo(0.977249868051821, 14)
  expect(normalBelow(3)).toBeCloseTo(0.99865010196837, 14)
  expect(normalBelow(-4)).toBeCloseTo(0.0000316712418331, 15)
  expect(normalBelow(2.9999999)).toBeCloseTo(normalBelow(3.0000001), 8)
  expect([normalBelow(-50), normalBelow(50)]).toEqual([0, 1])
})
