import { expect, test } from 'vitest'
import { wrapped } from './wrap.ts'

const letters = (text: string) => text.length

test('lines end at spaces and are no wider than allowed', () => {
  expect(wrapped('one two three four', 9, letters)).toEqual(['one two', 'three', 'four'])
})

test('a word wider by itself is broken between its letters', () => {
  expect(wrapped('a abcdefghij k', 4, letters)).toEqual(['a', 'abcd', 'efgh', 'ij k'])
})

test('a text without spaces goes on where there is room', () => {
  expect(wrapped('名 山田太郎花子', 5, letters)).toEqual(['名 山田太', '郎花子'])
})

test('a line break of the text stays one', () => {
  expect(wrapped('a\n\nb', 9, letters)).toEqual(['a', '', 'b'])
})

test('more lines than asked for end in an ellipsis that fits', () => {
  expect(wrapped('one two three four', 7, letters, 2)).toEqual(['one two', 'three…'])
  expect(wrapped('abcdefghij', 4, letters, 1)).toEqual(['abc…'])
})
