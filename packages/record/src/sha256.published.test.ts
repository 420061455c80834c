import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { sha256, sha256OfText } from './sha256.ts'

test('FIPS 180-4: the examples of its secure hash standard page', () => {
  expect(sha256OfText('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
  expect(sha256OfText('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq')).toBe(
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  )
  expect(sha256OfText('a'.repeat(1_000_000))).toBe('cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0')
  expect(sha256(new Uint8Array())).toBe('e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855')
})

test('it gives what another implementation gives, for bytes of every length up to three blocks', () => {
  for (let length = 0; length <= 192; length++) {
    const bytes = Uint8Array.from({ length }, (_, i) => (i * 151 + length) & 255)
    expect(sha256(bytes)).toBe(createHash('sha256').update(bytes).digest('hex'))
  }
})

test('a text is hashed as its UTF-8', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      expect(sha256OfText(text)).toBe(createHash('sha256').update(text, 'utf8').digest('hex'))
    }),
    { seed: 11, numRuns: 500 },
  )
})
