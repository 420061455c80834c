import { isPrintable } from '@gripbook/record'
import { expect, test } from 'vitest'
import { given, lines, oneLine } from './texts.ts'

test('what was pasted with line ends, tabs and hidden signs comes to one line that prints', () => {
  const text = oneLine(' Gear\tbox\u202e of\r\nthe \u0007loader ')!
  expect(text).toBe('Gear box of the loader')
  expect(isPrintable(text)).toBe(true)
})

test('a text with lines keeps them', () => {
  expect(lines('Slips\r\nin second \u2067')).toBe('Slips\nin second')
})

test('nothing but blanks is nothing', () => {
  expect(oneLine(' \n ')).toBeUndefined()
  expect(given('name', oneLine(' '))).toEqual({})
  expect(given('name', 'a')).toEqual({ name: 'a' })
})

test('Arabic with its own direction marks is left as it is', () => {
  expect(oneLine('علبة \u200fالتروس')).toBe('علبة \u200fالتروس')
})
