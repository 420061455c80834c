import { expect, test } from 'vitest'
import { cleaned, runsOf } from './runs.ts'

const latin = (letter: number) => letter < 0x0530
const hebrew = (letter: number) => latin(letter) || (letter >= 0x0590 && letter < 0x0600)

test('a text is cut where the font changes, and spaces inside a name stay with it', () => {
  expect(runsOf('by 山田 太郎 here', [latin])).toEqual([
    { text: 'by ', font: 0, turned: false },
    { text: '山田 太郎', font: -1, turned: false },
    { text: ' here', font: 0, turned: false },
  ])
})

test('a name from right to left is a run of its own, without the space after it', () => {
  expect(runsOf('דוד לוי M6', [hebrew])).toEqual([
    { text: 'דוד לוי', font: 0, turned: true },
    { text: ' M6', font: 0, turned: false },
  ])
})

test('the first font that holds a whole grapheme draws it', () => {
  const accents = (letter: number) => latin(letter) || letter === 0x0301
  expect(runsOf('e\u0301', [(letter) => letter === 0x65, accents])).toEqual([
    { text: 'e\u0301', font: 1, turned: false },
  ])
})

test('control characters, halves of a pair and marks that turn the direction are left out', () => {
  expect(cleaned('a\u0000b\ud800c\u202ed\u2066e\u2069\nf')).toBe('abcde f')
})
