import { expect, test } from 'vitest'
import { personHere, writerOf } from './writer.ts'

const away = { signedIn: 'unknown', person: null } as const
const out = { signedIn: 'no', person: null } as const
const ada = { signedIn: 'yes', person: { id: 'ada' } } as const

test('a device that is paired writes as the person whose it is, also when the page is opened without signal', () => {
  expect(writerOf(ada, { own: 'device', person: null })).toBe('ada')
  for (const status of [null, away]) expect(writerOf(status, { own: 'device', person: 'ada' })).toBe('ada')
})

test('who was paired anew is the one who writes, and after signing out nobody is', () => {
  expect(writerOf(ada, { own: 'device', person: 'ben' })).toBe('ada')
  expect(personHere(out, 'ada')).toBeNull()
  expect(writerOf(out, { own: 'device', person: 'ada' })).toBe('device')
  expect(writerOf(away, { own: 'device', person: null })).toBe('device')
})
