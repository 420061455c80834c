import { readFileSync } from 'node:fs'
import { LIMITS } from '@gripbook/record'
import { expect, test } from 'vitest'
import { sizeOfUnit, unitFileFrom } from './readFile.ts'

test('a unit file is read and told how much it holds', () => {
  const read = unitFileFrom(readFileSync(new URL('../../../../demo/yard-loader.json', import.meta.url)))
  expect(read.ok && sizeOfUnit(read.value)).toEqual({ faces: 3, holes: 38, kinds: 14 })
})

test('bytes that are no text are told as such, not guessed at', () => {
  const read = unitFileFrom(new Uint8Array([0xff, 0xfe, 0x41]))
  expect(read).toEqual({ ok: false, faults: [{ code: 'not-utf8', path: [] }] })
})

test('too large a file is not read at all', () => {
  const read = unitFileFrom(new Uint8Array(LIMITS.bytes + 1))
  expect(read.ok || read.faults[0].code).toBe('too-big')
})

test('what is wrong has its path', () => {
  const read = unitFileFrom(new TextEncoder().encode('{"gripbook":"unit/1","faces":[{"id":"a","holes":[{"id":"1"}]}]}'))
  expect(read.ok || read.faults[0]).toMatchObject({ code: 'missing-field', path: ['faces', 0, 'holes', 0, 'thread'] })
})
