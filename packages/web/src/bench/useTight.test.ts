import { expect, test } from 'vitest'
import { isTight } from './useTight.ts'

test.each([
  ['a small phone', { width: 320, height: 568 }, false, true],
  ['a phone whose browser leaves it little', { width: 390, height: 664 }, false, true],
  ['a phone', { width: 390, height: 844 }, false, false],
  ['a phone in gloves', { width: 390, height: 844 }, true, true],
  ['a phone that lies', { width: 844, height: 390 }, false, true],
  ['a desk', { width: 1280, height: 800 }, false, false],
  ['a tablet in gloves', { width: 820, height: 1180 }, true, false],
])('%s', (_, size, gloves, tight) => {
  expect(isTight(size, gloves)).toBe(tight)
})
