import { existsSync, readFileSync } from 'node:fs'
import { beforeAll, expect, test } from 'vitest'
import type { Unit } from '../unit.ts'
import type { FaceAnswer } from './answer.ts'
import { place } from './place.ts'

/** The demo stands at the root of the repository. A mutation run copies the source without it, to a folder inside the repository. */
function demoFile(from = new URL('.', import.meta.url)): string {
  const file = new URL('demo/yard-loader.json', from)
  const up = new URL('..', from)
  return existsSync(file) || up.href === from.href ? readFileSync(file, 'utf8') : demoFile(up)
}

/** The table "The truth" of demo/README.md. */
const TRUTH: Record<string, Record<string, number[]>> = {
  'control-block': {
    c25: [1, 3, 10],
    c35: [4, 6, 11, 13],
    c40: [5, 8, 12],
    c45: [2, 9, 15, 16],
    c45s: [7, 14],
    c55: [17, 18],
  },
  'pump-cover': { p30: [1, 3, 5, 7], p35: [2, 6], p45: [4, 8] },
  'bell-housing': { b40: [1, 4, 5, 7, 8], b50: [2, 11, 12], b50s: [3, 9], b65: [6, 10] },
}

let unit: Unit
let block: FaceAnswer
let cover: FaceAnswer
let bell: FaceAnswer

beforeAll(async () => {
  unit = JSON.parse(demoFile())
  ;[block, cover, bell] = (await place(unit)).faces as [FaceAnswer, FaceAnswer, FaceAnswer]
})

const settledIn = (face: FaceAnswer) =>
  Object.entries(face.holes).flatMap(([id, { verdict }]) => (verdict === 'settled' ? [Number(id)] : []))
const holesFrom1 = (count: number) => Array.from({ length: count }, (_, i) => i + 1)

test('every settled hole has the bolt of the truth, and every open one may have it', () => {
  for (const face of [block, cover, bell])
    for (const [kind, holes] of Object.entries(TRUTH[face.face]!))
      for (const hole of holes) {
        const { verdict, best, may } = face.holes[hole]!
        if (verdict === 'settled') expect([hole, best, may]).toEqual([hole, kind, [kind]])
        if (verdict === 'open') expect(may).toContain(kind)
      }
})

test('control block: 4 and 9 swap, and nothing else changes', () => {
  expect(block.feasible).toBe(true)
  expect(block.changes).toEqual({
    count: 2,
    cycles: [
      [
        { hole: '4', from: 'c45', to: 'c35' },
        { hole: '9', from: 'c35', to: 'c45' },
      ],
    ],
  })
  expect(block.holes['4']?.asFound).toMatchObject({ kind: 'c45', verdict: 'must change' })
  expect(block.holes['9']?.asFound).toMatchObject({ kind: 'c35', verdict: 'must change' })
})

test('control block: 16 holes are settled, 11 and 12 are open between two kinds', () => {
  expect(settledIn(block)).toEqual(holesFrom1(18).filter((hole) => hole !== 11 && hole !== 12))
  for (const id of ['11', '12']) {
    expect(block.holes[id]).toMatchObject({ verdict: 'open', may: ['c35', 'c40'] })
    expect(block.holes[id]?.asFound?.verdict).toBe('may stay')
    expect(block.holes[id]).not.toHaveProperty('proven')
  }
})

test('control block: what was found in 11 and 12 is the likelier, and the two go together', () => {
  const at11 = block.holes['11']!.likely
  const at12 = block.holes['12']!.likely
  expect(at11.c35!).toBeGreaterThan(0.5)
  expect(at12.c40!).toBeCloseTo(at11.c35!, 9)
  expect(at11.c35! + at11.c40!).toBeCloseTo(1, 9)
  expect(block.holes['11']?.best).toBe('c35')
  expect(block.likelihood).toEqual({ method: 'exact' })
})

test('control block: one grip, at 11 or 12, settles both', () => {
  expect(block.next?.reading.quantity).toBe('grip')
  expect(['11', '12']).toContain(block.next?.reading.of)
  expect(block.next?.settles).toEqual(['11', '12'])
})

test('control block: one M6×25 is left over', () => {
  expect(block.leftOver).toEqual({ c25: 1 })
  expect(block.missing).toBe(0)
  expect(block.wanted).toEqual([])
})

test('pump cover: all holes are settled, 6 takes the M8×35 and the yellow M8×25 is left over', () => {
  expect(settledIn(cover)).toEqual(holesFrom1(8))
  expect(cover.holes['6']?.asFound).toMatchObject({ kind: 'p25', verdict: 'must change' })
  expect(cover.changes).toEqual({ count: 1, cycles: [[{ hole: '6', from: 'p25', to: 'p35' }]] })
  expect(cover.leftOver).toEqual({ p25: 1 })
  expect(cover.next).toBeNull()
  expect(cover.conflict).toBeNull()
})

test('pump cover: the readings alone prove every hole', () => {
  expect(Object.values(cover.holes).every(({ proven }) => proven === true)).toBe(true)
})

test('bell housing: nothing fits hole 8 as it was read, the others are settled', () => {
  expect(bell.feasible).toBe(false)
  expect(settledIn(bell)).toEqual(holesFrom1(12).filter((hole) => hole !== 8))
  expect(bell.holes['8']).toMatchObject({ verdict: 'contradicted', may: [], best: null })
  expect(bell.conflict).toMatchObject({ holes: ['8'], kinds: [], why: 'nothing in the tray fits hole 8' })
  expect(bell.missing).toBe(1)
  const asRead = bell.pairs.find(({ hole, kind }) => hole === '8' && kind === 'b40')!
  expect(asRead.verdict).toBe('cannot')
  expect(['bottom', 'run-out']).toContain(asRead.line)
})

test('bell housing: the first thing to doubt is the grip at 8, read 10 mm too small', () => {
  expect(bell.conflict?.doubt[0]).toMatchObject({
    statements: [{ what: 'reading', quantity: 'grip', of: '8', place: 'hole' }],
    why: 'the grip of hole 8 may have slipped by 10 mm: 22.5 in place of 12.5 would explain it',
  })
})

test('bell housing: taken as read, 8 would want an M8×30', () => {
  expect(bell.wanted).toEqual([
    { hole: '8', thread: 'M8', lengths: [30], why: 'M8×30 would fill it, you have none to spare' },
  ])
  expect(bell.leftOver).toEqual({ b40: 1 })
})

test('with the slip at 8 put right the bell housing is as it was found', async () => {
  const right = structuredClone(unit)
  right.faces[2]!.holes.find(({ id }) => id === '8')!.grip = { value: 22.5, plusMinus: 0.2 }
  const face = (await place(right)).faces[2]!
  expect(face.feasible).toBe(true)
  expect(face.changes.count).toBe(0)
  expect(face.holes['8']).toMatchObject({ verdict: 'settled', best: 'b40' })
})

test('with the true grip at 11 the control block is settled', async () => {
  const read = structuredClone(unit)
  read.faces[0]!.holes.find(({ id }) => id === '11')!.grip = { value: 20.9, plusMinus: 0.1 }
  const face = (await place(read)).faces[0]!
  expect(settledIn(face)).toEqual(holesFrom1(18))
  expect(face.holes['12']?.best).toBe('c40')
  expect(face.next).toBeNull()
})
