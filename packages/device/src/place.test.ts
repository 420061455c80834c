import { expect, test } from 'vitest'
import { hexOf, uuidOf } from './place.ts'

test('an id from random bytes is a UUID of version 4, and the bytes are left as they were', () => {
  const bytes = new Uint8Array(16).fill(0xff)
  expect(uuidOf(bytes)).toBe('ffffffff-ffff-4fff-bfff-ffffffffffff')
  expect(uuidOf(new Uint8Array(16))).toBe('00000000-0000-4000-8000-000000000000')
  expect(() => uuidOf(new Uint8Array(15))).toThrow('too few random bytes')
  expect(hexOf(bytes)).toBe('f'.repeat(32))
})
