import { expect, test } from 'vitest'
import { asThinAsInches } from './thickness.ts'

test('a thickness that is thought in inches and typed without its unit is told as the mm that it stands for', () => {
  expect(asThinAsInches('5/16', 'mm')).toBe(0.3125)
  expect(asThinAsInches('0,31', 'mm')).toBe(0.31)
  for (const text of ['5/16 in', '0.31"', '8', '8 to 9', '0.5 mm', '', 'thick', '0']) {
    expect([text, asThinAsInches(text, 'mm')]).toEqual([text, null])
  }
  expect(asThinAsInches('0.31', 'in')).toBeNull()
})
