import { randomBytes } from 'node:crypto'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { newCode, readCode } from './code.ts'

const seed = { seed: 20_260_302 }
const code = fc.uint8Array({ minLength: 12, maxLength: 12 }).map((bytes) => newCode(() => Buffer.from(bytes)))

test('a code is twelve letters and figures in three groups, and none of them is I, L, O or U', () => {
  fc.assert(
    fc.property(code, (made) => {
      expect(made).toMatch(/^[0-9A-HJKMNP-TV-Z]{4}(-[0-9A-HJKMNP-TV-Z]{4}){2}$/)
    }),
    seed,
  )
})

test('a code is read back however a person types it: small letters, spaces, dashes, O for 0, I and L for 1', () => {
  const asTyped = fc.tuple(code, fc.array(fc.nat(5), { minLength: 14, maxLength: 14 })).map(([made, choices]) => ({
    made,
    typed: [...made]
      .map((letter, i) => {
        const choice = choices[i]!
        if (letter === '-') return ['-', '', ' ', ' – ', '\t', '--'][choice]!
        if (letter === '0') return ['0', 'O', 'o', '0', 'O', ' o'][choice]!
        if (letter === '1') return ['1', 'I', 'i', 'L', 'l', '1 '][choice]!
        return choice % 2 === 0 ? letter : letter.toLowerCase()
      })
      .join(''),
  }))
  fc.assert(
    fc.property(asTyped, ({ made, typed }) => {
      expect(readCode(typed)).toBe(made)
    }),
    seed,
  )
})

test('what cannot be a code is none: too short, too long, a letter that there is not', () => {
  for (const typed of ['', 'ABCD-EFGH', 'ABCD-EFGH-JKMN-P', 'UUUU-UUUU-UUUU', 'ABCD-EFGH-JK!N', 'ÄBCD-EFGH-JKMN'])
    expect(readCode(typed), typed).toBeNull()
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 30 }), (typed) => {
      const read = readCode(typed)
      expect(read === null || readCode(read) === read).toBe(true)
    }),
    seed,
  )
})

test('every character of the alphabet comes up, at every place, about as often as any other', () => {
  const counts = new Map<string, number>()
  for (let i = 0; i < 4_000; i++)
    for (const letter of newCode(randomBytes).replaceAll('-', '')) counts.set(letter, (counts.get(letter) ?? 0) + 1)
  expect(counts.size).toBe(32)
  // 48,000 characters, 1,500 each; 250 is six and a half standard deviations.
  for (const count of counts.values()) expect(Math.abs(count - 1_500)).toBeLessThan(250)
})
