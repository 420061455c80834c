import { expect, test } from 'vitest'
import { namesOf } from './kindNames.ts'

test('bolts of one thread are called by their length beside a mark, and with it in a sentence', () => {
  const names = namesOf([
    { id: 'a', thread: 'M6', length: 30 },
    { id: 'b', thread: 'M6', length: 45 },
  ])
  expect([...names.short]).toEqual([
    ['a', '×30'],
    ['b', '×45'],
  ])
  expect(names.long.get('b')).toBe('M6×45')
})

test('bolts that would be called alike are told apart by their feature, and by their id where that is alike too', () => {
  const names = namesOf([
    { id: 'a', thread: 'M6', length: 45 },
    { id: 'b', thread: 'M6', length: 45, features: ['stud end'] },
    { id: 'c', thread: 'M8', length: 45 },
    { id: 'd', thread: 'M8', length: 45 },
  ])
  expect([...names.short.values()]).toEqual(['M6×45', 'M6×45 stud end', 'M8×45 c', 'M8×45 d'])
})
