import { DeviceFault, type EntryHere } from '@gripbook/device'
import { expect, test } from 'vitest'
import { codeLengthFault, idsBefore, pairFault } from './pairing.ts'

test('a code may be typed with spaces, any hyphen and small letters', () => {
  expect(codeLengthFault('0a3d-8mkq-7z2x')).toBeNull()
  expect(codeLengthFault(' 0A3D 8MKQ–7Z2X ')).toBeNull()
  expect(codeLengthFault('0A3D-8MKQ-7Z2')).toEqual({ found: 11, wanted: 12 })
  expect(codeLengthFault('')).toEqual({ found: 0, wanted: 12 })
})

test('a refused pairing is told where it is put right', () => {
  expect(pairFault(new DeviceFault('code-not-valid'))).toEqual({ at: 'code', code: 'code-not-valid' })
  expect(pairFault(new DeviceFault('no-answer'))).toEqual({ at: 'form', code: 'no-answer' })
  const noName = new DeviceFault('refused-by-shop', { code: 'wrong-request', at: 'body/name' })
  expect(pairFault(noName)).toEqual({ at: 'name', code: 'name-missing' })
  expect(pairFault(new DeviceFault('refused-by-shop', { code: 'wrong-secret' }))?.code).toBe('other-browser')
  expect(pairFault(new TypeError('a bug'))).toBeNull()
})

test('who is paired vouches for what waits, and for nothing that came from elsewhere', () => {
  const made = (who: string, state: EntryHere['state']) => ({ event: { who }, state }) as EntryHere
  const entries = [made('a', 'waiting'), made('a', 'refused'), made('b', 'sent'), made('c', 'received')]
  expect(idsBefore('own', entries)).toEqual(['own', 'a'])
  expect(idsBefore('a', entries)).toEqual(['a'])
  const many = Array.from({ length: 30 }, (_, i) => made(`p${i}`, 'waiting'))
  expect(idsBefore('own', many)).toHaveLength(20)
})
