import { expect, test } from 'vitest'
import type { Unit } from '../unit.ts'
import { irreducibleHoles } from './conflict.ts'
import { place } from './place.ts'
import { problemsOf } from './problem.ts'
import { plainHole, plainKind, plainUnit } from './testing/plainFace.ts'
import { openTray, taskOf } from './tray.ts'

const trayOf = (unit: Unit) => openTray(problemsOf(unit)[0]!, {})

async function irreducible(unit: Unit, among?: number[]) {
  const tray = trayOf(unit)
  return irreducibleHoles(
    tray.search,
    taskOf(tray, 0, () => 0),
    among ?? unit.faces[0]!.holes.map((_, h) => h),
  )
}

// A ×30 takes grips from 18 to 24, a ×35 from 23 to 29, a ×40 from 28 to 34.
const a = (count: number) => plainKind('a', 30, count)
const b = (count: number) => plainKind('b', 35, count)
const c = (count: number) => plainKind('c', 40, count)

test('holes that can all be filled are no conflict', async () => {
  expect(await irreducible(plainUnit([plainHole('1', 20), plainHole('2', 26)], [a(1), b(1)]))).toBeNull()
})

test('two holes that want the one bolt clash, and the hole with a bolt of its own has no part in it', async () => {
  const unit = plainUnit([plainHole('1', 20), plainHole('2', 26), plainHole('3', 21)], [a(1), b(1)])
  expect(await irreducible(unit)).toEqual([0, 2])
})

test('a hole that nothing fits is the conflict alone, though others clash before it', async () => {
  const unit = plainUnit([plainHole('1', 20), plainHole('2', 21), plainHole('3', 50)], [a(1)])
  expect(await irreducible(unit)).toEqual([2])
})

test('three holes and two bolts: all three are needed for the clash', async () => {
  const unit = plainUnit(
    [plainHole('1', 23.5), plainHole('2', 23.2), plainHole('3', 23.8), plainHole('4', 31)],
    [a(1), b(1), c(1)],
  )
  expect(await irreducible(unit)).toEqual([0, 1, 2])
})

test('only the holes asked about count', async () => {
  const unit = plainUnit([plainHole('1', 20), plainHole('2', 20), plainHole('3', 20)], [a(1)])
  expect(await irreducible(unit, [1])).toBeNull()
  expect(await irreducible(unit, [0, 2])).toEqual([0, 2])
  expect(await irreducible(unit, [0, 1, 2])).toHaveLength(2)
})

test('two holes that one kind’s unknown length ties clash though there are bolts enough', async () => {
  // One length between 30 and 40 would have to reach 6 mm past 33 and no more than 12 past 22.
  const unit = plainUnit(
    [plainHole('1', 22), plainHole('2', 33), plainHole('3', 26)],
    [plainKind('x', { atLeast: 30, atMost: 40 }, 3)],
  )
  // A bolt of 32 to 34 serves 1 and 3, one of 39 to 40 serves 2 alone, 34 at most serves 1.
  expect(await irreducible(unit)).toEqual([1, 2])
})

test('the answer names holes, kinds and how short they are', async () => {
  const face = (await place(plainUnit([plainHole('1', 20), plainHole('2', 26), plainHole('3', 21)], [a(1), b(1)])))
    .faces[0]!
  expect(face.feasible).toBe(false)
  expect(face.conflict).toMatchObject({ holes: ['1', '3'], kinds: ['a'], short: 1 })
  expect(face.conflict?.why).toBe('holes 1 and 3 can take only a, of which there is 1')
  expect(face.holes['1']?.verdict).toBe('contradicted')
  expect(face.holes['2']?.verdict).toBe('settled')
  expect(face.holes['3']?.verdict).toBe('contradicted')
  expect(face.missing).toBe(1)
})

test('two bolts for three holes "are" two', async () => {
  const unit = plainUnit([plainHole('1', 23.5), plainHole('2', 23.2), plainHole('3', 23.8)], [a(1), b(1)])
  expect((await place(unit)).faces[0]!.conflict?.why).toBe(
    'holes 1, 2 and 3 can take only a or b, of which there are 2',
  )
})

test('a hole that nothing fits has no kinds in its conflict', async () => {
  const face = (await place(plainUnit([plainHole('1', 50)], [a(1)]))).faces[0]!
  expect(face.conflict).toMatchObject({ holes: ['1'], kinds: [], why: 'nothing in the tray fits hole 1' })
  expect(face.feasible).toBe(false)
  expect(face.holes['1']).toMatchObject({ verdict: 'contradicted', may: [], best: null })
})

test('bolts enough, but no length that serves both holes', async () => {
  const unit = plainUnit([plainHole('1', 22), plainHole('2', 33)], [plainKind('x', { atLeast: 30, atMost: 40 }, 2)])
  expect((await place(unit)).faces[0]!.conflict).toMatchObject({
    holes: ['1', '2'],
    kinds: ['x'],
    why: 'holes 1 and 2 cannot all have a bolt of x: lengths, rank lines and counts leave no way',
  })
})

test('lengths of two kinds for three holes, of which no two can have one length', async () => {
  const unit = plainUnit(
    [plainHole('1', 20), plainHole('2', 27), plainHole('3', 34)],
    [plainKind('x', { atLeast: 30, atMost: 40 }, 9), plainKind('y', { atLeast: 30, atMost: 40 }, 9)],
  )
  expect((await place(unit)).faces[0]!.conflict?.why).toBe(
    'holes 1, 2 and 3 cannot all have a bolt of x or y: lengths, rank lines and counts leave no way',
  )
})

test('a kind that only some holes of the conflict can take is named too', async () => {
  const unit = plainUnit([plainHole('1', 23.5), plainHole('2', 23.5), plainHole('3', 20)], [a(1), b(1)])
  expect((await place(unit)).faces[0]!.conflict?.kinds).toEqual(['a', 'b'])
})

test('further conflicts are told of the holes that the best placement fills, not of those left empty', async () => {
  // The one bolt goes to 2, as in every unit before; 1 and 3 stay empty.
  const unit = plainUnit(
    [
      plainHole('1', 20, { unitsBefore: { none: 50 } }),
      plainHole('2', 20, { unitsBefore: { a: 50 } }),
      plainHole('3', 20, { unitsBefore: { none: 50 } }),
    ],
    [a(1)],
    { weigh: { habit: false } },
  )
  const face = (await place(unit)).faces[0]!
  expect(face.holes['2']?.best).toBe('a')
  expect([face.conflict, ...face.furtherConflicts!].map((one) => one!.holes)).toEqual([
    ['1', '2'],
    ['2', '3'],
  ])
})

test('of more than three conflicts the doubts are told for the first three', async () => {
  const threads = ['M5', 'M6', 'M8', 'M10', 'M12']
  const unit = plainUnit(
    threads.flatMap((thread) => [plainHole(`${thread}-1`, 20, { thread }), plainHole(`${thread}-2`, 20, { thread })]),
    threads.map((thread) => plainKind(thread, 30, 1, { thread })),
  )
  const face = (await place(unit)).faces[0]!
  expect([face.conflict, ...face.furtherConflicts!].map((one) => one!.doubt.length > 0)).toEqual([
    true,
    true,
    true,
    false,
    false,
  ])
})

test('two holes short are told as two conflicts, the second without the hole that stays empty for the first', async () => {
  const unit = plainUnit(
    [plainHole('1', 20), plainHole('2', 21), plainHole('3', 31), plainHole('4', 32), plainHole('5', 26)],
    [a(1), b(1), c(1)],
  )
  const face = (await place(unit)).faces[0]!
  expect(face.missing).toBe(2)
  const all = [face.conflict!, ...face.furtherConflicts!].sort((x, y) => (x.holes[0]! < y.holes[0]! ? -1 : 1))
  expect(all.map(({ holes, kinds }) => [holes, kinds])).toEqual([
    [['1', '2'], ['a']],
    [['3', '4'], ['c']],
  ])
  expect(all.every(({ doubt }) => doubt.length > 0)).toBe(true)
})

test('one conflict alone has no further ones', async () => {
  const face = (await place(plainUnit([plainHole('1', 20), plainHole('2', 21)], [a(1)]))).faces[0]!
  expect(face).not.toHaveProperty('furtherConflicts')
})

test('three holes for one bolt: two conflicts of two holes', async () => {
  const face = (await place(plainUnit([plainHole('1', 20), plainHole('2', 21), plainHole('3', 22)], [a(1)]))).faces[0]!
  expect(face.missing).toBe(2)
  expect(face.conflict?.holes).toHaveLength(2)
  expect(face.furtherConflicts).toHaveLength(1)
})

test('a ring of rank lines is a conflict of lines: every hole is filled all the same', async () => {
  const unit = plainUnit([plainHole('1', 20), plainHole('2', 26)], [a(1), b(1)], {
    ranks: [
      { quantity: 'grip', less: '1', more: '2' },
      { quantity: 'grip', less: '2', more: '1' },
    ],
  })
  const face = (await place(unit)).faces[0]!
  expect(face.feasible).toBe(false)
  expect(face.missing).toBe(0)
  expect(face.conflict).toEqual({
    holes: ['1', '2'],
    kinds: [],
    short: 0,
    why: '"grip of 1 is less than of 2" and "grip of 2 is less than of 1" cannot all be true',
    doubt: [
      {
        statements: [{ what: 'rank', quantity: 'grip', less: '1', more: '2' }],
        why: 'without "grip of 1 is less than of 2" the rest can be true',
        likely: 0.5,
      },
      {
        statements: [{ what: 'rank', quantity: 'grip', less: '2', more: '1' }],
        why: 'without "grip of 2 is less than of 1" the rest can be true',
        likely: 0.5,
      },
    ],
  })
  expect(face.holes['1']).toMatchObject({ verdict: 'contradicted', best: 'a' })
})

test('a rank line against the readings is a conflict of itself', async () => {
  const unit = plainUnit([plainHole('1', 20), plainHole('2', 26)], [a(1), b(1)], {
    ranks: [{ quantity: 'grip', less: '2', more: '1' }],
  })
  expect((await place(unit)).faces[0]!.conflict).toMatchObject({
    holes: ['2', '1'],
    kinds: [],
    short: 0,
    why: '"grip of 2 is less than of 1" contradicts the readings',
    doubt: [{ likely: 1 }],
  })
})

test('a rank line of lengths against the lengths is told with its kinds, though no hole has a part in it', async () => {
  const unit = plainUnit([plainHole('1', 20), plainHole('2', 26)], [a(1), b(1)], {
    ranks: [{ quantity: 'length', less: 'b', more: 'a' }],
  })
  const face = (await place(unit)).faces[0]!
  expect(face.conflict).toMatchObject({
    holes: [],
    kinds: ['b', 'a'],
    why: '"length of b is less than of a" contradicts the readings',
  })
  expect(face.feasible).toBe(false)
  expect(face.holes['1']?.verdict).toBe('settled')
})

test('a trial against the readings is a conflict of hole and kind, and the pair is judged with what was said', async () => {
  const unit = plainUnit([plainHole('1', 20)], [a(1)], { trials: [{ hole: '1', kind: 'a', stickOut: 8 }] })
  const face = (await place(unit)).faces[0]!
  expect(face.conflict).toMatchObject({
    holes: ['1'],
    kinds: ['a'],
    short: 0,
    why: 'the trial of a in hole 1 contradicts the readings',
    doubt: [{ statements: [{ what: 'trial', hole: '1', kind: 'a' }], likely: 1 }],
  })
  expect(face.pairs[0]).toMatchObject({ verdict: 'cannot', line: 'together' })
})
