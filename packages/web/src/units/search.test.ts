import { expect, test } from 'vitest'
import { finds, plainText } from './search.ts'

test('case and accents make no difference, on either side', () => {
  expect(finds('getriebe bruck', ['Getriebe der Brücke'])).toBe(true)
  expect(finds('BRÜCKE', ['brucke'])).toBe(true)
  expect(finds('strasse', ['Straße'])).toBe(true)
  expect(finds('sorland', ['Sørland'])).toBe(true)
  expect(finds('Istanbul', ['İSTANBUL'])).toBe(true)
})

test('Arabic is found without its vowel signs, its stretching and its hamza', () => {
  expect(finds('علبة التروس', ['عُلْبَة التُّرُوس'])).toBe(true)
  expect(finds('احمد', ['أحمد'])).toBe(true)
  expect(finds('سلام', ['ســـلام'])).toBe(true)
})

test('Japanese is found in either kana, wide or narrow', () => {
  expect(finds('ぎあ', ['ギアボックス'])).toBe(true)
  expect(finds('ギア', ['ｷﾞｱﾎﾞｯｸｽ'])).toBe(true)
  expect(finds('変速機', ['ヤードローダーの変速機'])).toBe(true)
})

test('a number is the same number in the digits of any script', () => {
  expect(finds('4711', ['٤٧١١'])).toBe(true)
  expect(plainText('१२३')).toBe('123')
  expect(plainText('０９')).toBe('09')
})

test('every word must stand somewhere, in whatever order and field', () => {
  expect(finds('slips loader', ['Yard loader', null, 'Second slips'])).toBe(true)
  expect(finds('slips crane', ['Yard loader', 'Second slips'])).toBe(false)
  expect(finds('   ', ['anything'])).toBe(true)
})
