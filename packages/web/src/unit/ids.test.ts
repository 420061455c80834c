import { expect, test } from 'vitest'
import { idFromName, idsUsed, nextPartId } from './ids.ts'

test('a face gets its id from its name, in any script', () => {
  expect(idFromName('Pump cover', new Set(), 'face')).toBe('pump-cover')
  expect(idFromName('  Deckel (vorn) ', new Set(), 'face')).toBe('deckel-vorn')
  expect(idFromName('غطاء المضخة', new Set(), 'face')).toBe('غطاء-المضخة')
  expect(idFromName('ポンプカバー', new Set(), 'face')).toBe('ポンプカバー')
  expect(idFromName('…', new Set(), 'face')).toBe('face')
  expect(idFromName('W'.repeat(100), new Set(), 'face')).toHaveLength(60)
})

test('an id that was ever used is not used again', () => {
  const entries = [
    { body: { face: 'pump-cover' } },
    { body: { of: { face: 'pan', hole: '1' } } },
    { body: { face: 'pump-cover', reason: 'struck out' } },
    { body: null },
  ]
  const used = idsUsed(entries, 'face')
  expect([...used]).toEqual(['pump-cover', 'pan'])
  expect(idFromName('Pump cover', used, 'face')).toBe('pump-cover-2')
  expect(idFromName('Pump cover', new Set([...used, 'pump-cover-2']), 'face')).toBe('pump-cover-3')
})

test('parts are counted by what they are', () => {
  expect(nextPartId('check ball', new Set())).toBe('check-ball-1')
  expect(nextPartId('seal', new Set(['seal-1', 'seal-2', 'clip-3']))).toBe('seal-3')
})
