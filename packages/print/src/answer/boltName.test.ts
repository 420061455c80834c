import type { Kind } from '@gripbook/engine'
import { expect, test } from 'vitest'
import { boltName, sizeName } from './boltName.ts'

test.each<[Omit<Kind, 'id'>, string]>([
  [{ thread: 'M6', length: 45 }, 'M6×45'],
  [{ thread: 'M6', length: { value: 44.8, plusMinus: 0.1 } }, 'M6×45'],
  [{ thread: 'M6', length: { value: 42.3, plusMinus: 0.1 } }, 'M6×42.3'],
  [{ thread: 'M6', length: { nominal: 40 } }, 'M6×40'],
  [{ thread: '1/4-20', length: { value: 1.5, unit: 'in' } }, '1/4-20×1.5 in'],
  [{ thread: 'M8', length: { atLeast: 38, atMost: 42 } }, 'M8×38–42'],
  [{ thread: 'M8', length: { atMost: 42 } }, 'M8×up to 42'],
  [{ thread: 'M8', length: { atLeast: 38 } }, 'M8×38+'],
  [{ thread: ['M6', '1/4-20'] }, 'M6/1/4-20'],
])('%j is called %s', (kind, name) => {
  expect(sizeName({ id: 'x', ...kind })).toBe(name)
})

test('an id that says the size stands alone', () => {
  const tray = new Map([['M6x45', { id: 'M6x45', thread: 'M6', length: 45 }]])
  expect(boltName('M6x45', tray)).toBe('M6x45')
  expect(boltName('none', tray)).toBe('none')
})
