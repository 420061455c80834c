import { createHash } from 'node:crypto'
import { expect, test } from 'vitest'
import { seeded } from '../testing/seeded.ts'
import { differing, marking, marksOf, stretchWords } from './blocks.ts'

const random = seeded(7)
const some = (bytes: number) => Buffer.from(Array.from({ length: bytes }, () => Math.floor(random() * 256)))

test('a file in pieces has the same marks as in one, and the hash of the whole is its SHA-256', () => {
  const file = some(300_000)
  const marks = marking()
  for (let at = 0; at < file.length; ) {
    const next = at + 1 + Math.floor(random() * 5_000)
    marks.take(file.subarray(at, next))
    at = next
  }
  expect(marks.end()).toEqual(marksOf(file))
  expect(marksOf(file).sha256).toBe(createHash('sha256').update(file).digest('hex'))
  expect(marksOf(Buffer.alloc(0))).toMatchObject({ bytes: 0, blocks: '' })
})

test('a changed byte lies in the one stretch that is told, closely at the beginning and within a part of a large file', () => {
  const file = some(300_000)
  const before = marksOf(file)
  for (const at of [0, 1_023, 1_024, 65_535, 65_536, 200_000, 299_999]) {
    file[at]! ^= 1
    const [place, ...more] = differing(before, marksOf(file))
    file[at]! ^= 1
    expect(more).toEqual([])
    expect(place!.from).toBeLessThanOrEqual(at)
    expect(place!.to).toBeGreaterThan(at)
    expect(place!.to - place!.from).toBeLessThanOrEqual(Math.max(1_024, at / 16))
  }
  expect(differing(before, marksOf(file))).toEqual([])
})

test('a file that is longer or shorter differs from where it ends', () => {
  const file = some(5_000)
  const [place] = differing(marksOf(file), marksOf(file.subarray(0, 4_500)))
  expect(place).toEqual({ from: 4_096, to: 5_000 })
  expect(differing(marksOf(file), marksOf(Buffer.concat([file, Buffer.from('more')])))[0]!.to).toBe(5_004)
  expect([stretchWords({ from: 0, to: 1_024 }), stretchWords({ from: 5, to: 6 })]).toEqual([
    'bytes 0 to 1023',
    'byte 5',
  ])
})
