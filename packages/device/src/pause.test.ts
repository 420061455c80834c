import { expect, test } from 'vitest'
import { pauseAfter } from './pause.ts'

const patience = { firstPause: 1_000, longestPause: 60_000 }
const drawn = (byte: number) => () => Uint8Array.of(byte)

test('pauses grow to the longest and no further, and the draw leaves out no more than half', () => {
  const longest = [1, 2, 3, 6, 7, 8, 10_000].map((failures) => pauseAfter(failures, patience, drawn(255)))
  expect(longest).toEqual([1_000, 2_000, 4_000, 32_000, 60_000, 60_000, 60_000])
  expect(pauseAfter(3, patience, drawn(0))).toBe(2_000)
})
