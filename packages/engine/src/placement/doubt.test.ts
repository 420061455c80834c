// Long because every sort of slip that a hand makes has its own small face.
import { expect, test } from 'vitest'
import type { Hole, Kind, Rank, Unit } from '../unit.ts'
import { place } from './place.ts'
import { Stopped } from './solver.ts'
import { plainHole, plainKind, plainUnit } from './testing/plainFace.ts'

async function doubts(holes: Hole[], kinds: Kind[], more: Parameters<typeof plainUnit>[2] = {}) {
  const { conflict } = (await place(plainUnit(holes, kinds, more))).faces[0]!
  return conflict!.doubt.map(({ statements, why, likely }) => ({
    of: statements.map((one) =>
      one.what === 'reading'
        ? `${one.quantity} of ${one.place} ${one.of}`
        : one.what === 'count'
          ? `count of ${one.of}`
          : one.what === 'rank'
            ? `${one.quantity}: ${one.less} < ${one.more}`
            : `trial of ${one.kind} in ${one.hole}`,
    ),
    why,
    likely,
  }))
}

/** Names and weights, the weights as whole parts of `parts`. */
async function parts(of: number, ...face: Parameters<typeof doubts>) {
  return (await doubts(...face)).map((doubt) => [doubt.of.join(' + '), Number((doubt.likely * of).toFixed(9))])
}

// A ×30 takes grips from 18 to 24, a ×35 from 23 to 29, a ×40 from 28 to 34. A reading weighs 1, a slip of ten that explains it 6 more.

test('a grip ten too great: the grip and the length are doubted alike, each told with its slip', async () => {
  expect(await doubts([plainHole('1', 31)], [plainKind('a', 30, 1)])).toEqual([
    {
      of: ['grip of hole 1'],
      why: 'the grip of hole 1 may have slipped by 10 mm: 21 in place of 31 would explain it',
      likely: 0.5,
    },
    {
      of: ['length of kind a'],
      why: 'the length of kind a may have slipped by 10 mm: 40 in place of 30 would explain it',
      likely: 0.5,
    },
  ])
})

test('a grip ten too small slips the other way', async () => {
  const [grip, length] = await doubts([plainHole('1', { value: 11, plusMinus: 0.5 })], [plainKind('a', 30, 1)])
  expect(grip?.why).toBe('the grip of hole 1 may have slipped by 10 mm: 21 in place of 11 would explain it')
  expect(length?.why).toBe('the length of kind a may have slipped by 10 mm: 20 in place of 30 would explain it')
})

test('no figure slips below nothing, though it may slip to nothing', async () => {
  // A ×14 fits at 2 to 8. From 9.5 no ten can be taken; from 12 it can; from 10 a grip of 0 remains, too long by 2.
  const why = async (grip: number, length: number) =>
    (await doubts([plainHole('1', grip)], [plainKind('a', length, 1)])).find(({ of }) => of[0] === 'grip of hole 1')!
      .why
  expect(await why(9.5, 14)).toBe('if the grip of hole 1 was wrong, this could be filled')
  expect(await why(12, 14)).toContain('2 in place of 12')
  expect(await why(10, 12)).toContain('0 in place of 10')
})

test('a reading of which only the least is known has not slipped by ten', async () => {
  const grip = (await doubts([plainHole('1', { atLeast: 31 })], [plainKind('a', 30, 1)]))[1]
  expect(grip).toMatchObject({ of: ['grip of hole 1'], why: 'if the grip of hole 1 was wrong, this could be filled' })
  const found = await doubts([plainHole('1', 31)], [plainKind('a', { atMost: 30 }, 1)])
  expect(found.map(({ of }) => of[0])).toEqual(['grip of hole 1', 'length of kind a'])
})

test('a bolt of the next length, longer or shorter, that got into the kind', async () => {
  // The length weighs 1 and 3 for the neighbour; the grip weighs 1, as no ten helps it.
  expect(await doubts([plainHole('1', 27)], [plainKind('a', 30, 1)])).toEqual([
    { of: ['length of kind a'], why: 'a may be of the neighbour length, 35 mm', likely: 0.8 },
    { of: ['grip of hole 1'], why: 'if the grip of hole 1 was wrong, this could be filled', likely: 0.2 },
  ])
  expect((await doubts([plainHole('1', 16)], [plainKind('a', 30, 1)]))[0]).toEqual({
    of: ['length of kind a'],
    why: 'a may be of the neighbour length, 25 mm',
    likely: 0.8,
  })
})

test('the neighbour length of a length with a tolerance is told by its middle, and none is shorter than nothing', async () => {
  const [length] = await doubts([plainHole('1', 27)], [plainKind('a', { value: 30.2, plusMinus: 0.2 }, 1)])
  expect(length?.why).toBe('a may be of the neighbour length, 35.2 mm')
  const shallow = { threadDepth: 3, bottomDepth: 3, minimumEngagement: 2 }
  const short = (id: string, size: number) => plainKind(id, size, 1, { threadLength: { atMost: 3 } })
  // 7 mm are 5 too many in a hole 3 deep with nothing to clamp; 4 are 1 too many, and there is no bolt of −1.
  expect((await doubts([plainHole('1', 0, shallow)], [short('a', 7)]))[0]).toMatchObject({
    why: 'a may be of the neighbour length, 2 mm',
  })
  expect((await doubts([plainHole('1', 0, shallow)], [short('a', 4)])).map(({ why }) => why)).not.toContain(
    'a may be of the neighbour length, -1 mm',
  )
})

test('a slip of ten is told before a neighbour length where both would explain it', async () => {
  // ×30 at 29.5 to 33: a ×40 fits. A ×25 at 25.5: a ×35 fits and no ×30. At grip 28.5 a ×25 could be a ×35 or, by 5.. only a ×35.
  const wide = { threadDepth: 20, bottomDepth: 20 }
  const kind = plainKind('a', 30, 1, { threadLength: 20 })
  const [first, second] = await doubts([plainHole('1', 26, wide)], [kind])
  // Length: 1, 6 for the ten, 3 for the neighbour. Grip: 1, 6 for the ten.
  expect(first).toEqual({
    of: ['length of kind a'],
    why: 'the length of kind a may have slipped by 10 mm: 40 in place of 30 would explain it',
    likely: 10 / 17,
  })
  expect(second).toMatchObject({ of: ['grip of hole 1'], likely: 7 / 17 })
})

test('two holes for one bolt: the count is doubted first, one more would do', async () => {
  // No reading of one hole or of the one kind helps, so the count is the only doubt.
  expect(await doubts([plainHole('1', 20), plainHole('2', 20)], [plainKind('a', 30, 1)])).toEqual([
    { of: ['count of a'], why: 'a may be miscounted: 2 in place of 1 would explain it', likely: 1 },
  ])
})

test('two bolts short: one more of them still leaves a hole less empty', async () => {
  const face = [[plainHole('1', 20), plainHole('2', 20), plainHole('3', 20)], [plainKind('a', 30, 1)]] as const
  expect(await doubts([...face[0]], [...face[1]])).toEqual([
    { of: ['count of a'], why: 'a may be miscounted: 2 in place of 1 would explain it', likely: 1 },
  ])
})

test('a spare kind makes the readings doubtful too, each by its weight', async () => {
  // Count 2 + 6; length of b 1 + 3 for a neighbour ×30; either grip 1.
  expect(
    await parts(14, [plainHole('1', 20), plainHole('2', 20)], [plainKind('a', 30, 1), plainKind('b', 35, 1)]),
  ).toEqual([
    ['count of a', 8],
    ['length of kind b', 4],
    ['grip of hole 1', 1],
    ['grip of hole 2', 1],
  ])
})

test('a kind counted to none is doubted in its count', async () => {
  expect(await doubts([plainHole('1', 20)], [plainKind('a', 30, 0)])).toEqual([
    { of: ['count of a'], why: 'a may be miscounted: 1 in place of 0 would explain it', likely: 1 },
  ])
})

test('a kind of which there are as many as needed has no count to doubt', async () => {
  expect(await parts(14, [plainHole('1', 31)], [plainKind('a', 30)])).toEqual([
    ['grip of hole 1', 7],
    ['length of kind a', 7],
  ])
})

test('readings of two holes of a conflict in each other’s place', async () => {
  // 2 is shallow. As read both want the one ×35; with the grips exchanged, 1 takes the ×40 too.
  const shallow = { threadDepth: 9, bottomDepth: 9 }
  const face = [
    [plainHole('1', 27), plainHole('2', 29, shallow)],
    [plainKind('b', 35, 1), plainKind('c', 40, 1)],
  ] as const
  const found = await doubts([...face[0]], [...face[1]])
  const grips = found.filter(({ of }) => of[0]!.startsWith('grip'))
  expect(grips.map(({ of, why }) => [of[0], why])).toEqual([
    ['grip of hole 1', 'the grip readings of holes 1 and 2 may stand in each other’s place'.replace('’', "'")],
    ['grip of hole 2', "the grip readings of holes 2 and 1 may stand in each other's place"],
  ])
  // Count 2 + 6, the length of the ×40 1 + 3 for its neighbour, each grip 1 + 2.
  expect(await parts(18, [...face[0]], [...face[1]])).toEqual([
    ['count of b', 8],
    ['length of kind c', 4],
    ['grip of hole 1', 3],
    ['grip of hole 2', 3],
  ])
})

test('a reading that the other hole has not is not exchanged', async () => {
  // The grip of 2 is not read; a rank line says that it is 31 or more, and both then want the one ×40.
  const found = await parts(25, [plainHole('1', 31), plainHole('2')], [plainKind('a', 30, 1), plainKind('c', 40, 1)], {
    ranks: [{ quantity: 'grip', less: '1', more: '2' }],
  })
  // Count 2 + 6; grip 1 and length of the ×30 1 + 6 each, for a grip of 21 and for a ×40; the rank line 3.
  expect(found).toEqual([
    ['count of c', 8],
    ['grip of hole 1', 7],
    ['length of kind a', 7],
    ['grip: 1 < 2', 3],
  ])
})

test('a rank line is told in its words', async () => {
  const found = await doubts([plainHole('1', 31), plainHole('2')], [plainKind('a', 30, 1), plainKind('c', 40, 1)], {
    ranks: [{ quantity: 'grip', less: '1', more: '2' }],
  })
  expect(found[3]?.why).toBe('if "grip of 1 is less than of 2" was wrong, this could be filled')
})

test('a rank line of lengths: both kinds are suspects though the conflict knows one', async () => {
  // The length of x is not known but that it is no less than that of the M8: 50, too long for 1.
  const ranks: Rank[] = [{ quantity: 'length', less: 'm8', more: 'x' }]
  const m8 = { thread: 'M8' }
  const holes = [plainHole('1', 33)]
  const kinds = [plainKind('x', { atMost: 60 }, 1), plainKind('m8', 50, 1, m8)]
  // The length of x is held by the rank line, so it is no doubt; the M8 may be a ×40 or a ×45; the grip may be 43.
  expect(await parts(10 + 7 + 3, holes, kinds, { ranks })).toEqual([
    ['length of kind m8', 10],
    ['grip of hole 1', 7],
    ['length: m8 < x', 3],
  ])
})

test('rank lines reach along a chain, and a line from elsewhere has no part in it', async () => {
  // 1 lies no lower than 4, which lies no lower than 3, read as 31: too much for the ×30.
  const m8 = { thread: 'M8' }
  const holes = [
    plainHole('1'),
    plainHole('3', 31, m8),
    plainHole('4', undefined, m8),
    plainHole('5', 31, m8),
    plainHole('6', undefined, m8),
  ]
  const kinds = [plainKind('a', 30, 1), plainKind('e', 40, 9, m8), plainKind('f', 30, 9, m8)]
  const ranks: Rank[] = [
    { quantity: 'grip', less: '5', more: '6' },
    { quantity: 'grip', less: '3', more: '4' },
    { quantity: 'grip', less: '4', more: '1' },
  ]
  expect(await parts(7 + 7 + 3 + 3, holes, kinds, { ranks })).toEqual([
    ['grip of hole 3', 7],
    ['length of kind a', 7],
    ['grip: 3 < 4', 3],
    ['grip: 4 < 1', 3],
  ])
})

test('a trial is doubted, with the kind and the hole that it names', async () => {
  // A stick-out of 9 puts the joint face at 31, so 1 wants the ×40 that 2 wants too.
  const found = await doubts([plainHole('1'), plainHole('2', 31)], [plainKind('a', 30, 1), plainKind('c', 40, 1)], {
    trials: [{ hole: '1', kind: 'c', stickOut: 9 }],
  })
  expect(found.map(({ of }) => of[0])).toEqual(['count of c', 'grip of hole 2', 'length of kind a', 'trial of c in 1'])
  const all = 8 + 7 + 7 + 2
  expect(found.map(({ likely }) => Math.round(likely * all))).toEqual([8, 7, 7, 2])
  expect(found[3]?.why).toBe('if the trial of c in hole 1 was wrong, this could be filled')
})

test('two statements together where no single one is enough', async () => {
  // The bolt has 5 mm of thread where 6 are asked for, and its stick-out is −1.
  expect(await doubts([plainHole('1', 31)], [plainKind('a', 30, 1, { threadLength: 5 })])).toEqual([
    {
      of: ['grip of hole 1', 'threadLength of kind a'],
      why: 'if the grip of hole 1 and the thread length of kind a were wrong, this could be filled',
      likely: 0.5,
    },
    {
      of: ['length of kind a', 'threadLength of kind a'],
      why: 'if the length of kind a and the thread length of kind a were wrong, this could be filled',
      likely: 0.5,
    },
  ])
})

test('three statements together, and never four', async () => {
  const kind = plainKind('a', 30, 1, { threadLength: 5 })
  const three = await doubts([plainHole('1', 31, { threadDepth: 5 })], [kind])
  expect(three.map(({ of }) => of)).toEqual([
    ['grip of hole 1', 'threadDepth of hole 1', 'threadLength of kind a'],
    ['threadDepth of hole 1', 'length of kind a', 'threadLength of kind a'],
  ])
  expect(three.map(({ likely }) => likely)).toEqual([0.5, 0.5])
  expect(await doubts([plainHole('1', 31, { threadDepth: 5, bottomDepth: 5 })], [kind])).toEqual([])
})

test('a count and a reading may be wrong together', async () => {
  // None of the kind is left, and its thread is too short.
  const found = await doubts([plainHole('1', 20)], [plainKind('a', 30, 0, { threadLength: 5 })])
  expect(found.map(({ of, likely }) => [of.join(), likely])).toEqual([['threadLength of kind a,count of a', 1]])
})

test('a gasket sheet that the holes share is wrong in all of them at once', async () => {
  // 15 where 5 are meant: both holes are short, and one sheet explains both.
  const holes = [plainHole('1', 16), plainHole('2', 17)]
  const face = (await place(plainUnit(holes, [plainKind('a', 30, 2)], { gasket: 15 }))).faces[0]!
  const gasket = face.conflict!.doubt.find(
    ({ statements }) => 'quantity' in statements[0]! && statements[0].quantity === 'gasket',
  )
  expect(gasket?.why).toBe(
    'the gasket thickness of hole 1 may have slipped by 10 mm: 5 in place of 15 would explain it',
  )
})

test('a shared sheet set right mends a clash that either hole alone would leave', async () => {
  // With a sheet of 15 both holes want the one ×40; with 5 both could have a ×30, of which there are two.
  const found = await doubts([plainHole('1', 16), plainHole('2', 16)], [plainKind('a', 30, 2), plainKind('d', 60, 0)], {
    gasket: 15,
  })
  expect(found.map(({ of }) => of[0])).toContain('gasket of hole 1')
})

test('a gasket of its own is doubted for its hole alone', async () => {
  // 1 lies under a sheet of 15 of its own. Set aside, it leaves 2, which is short under the shared one, as it was.
  const found = await doubts([plainHole('1', 16, { gasket: 15 }), plainHole('2', 20)], [plainKind('a', 30, 2)], {
    gasket: 0,
  })
  expect(found.map(({ of }) => of[0])).toEqual(['grip of hole 1', 'gasket of hole 1'])
})

test('every reading of a hole and of a kind is a suspect when it was stated, and none that was not', async () => {
  const why = async (hole: Partial<Hole>, kind: Partial<Kind> = {}) =>
    (await doubts([plainHole('1', 20, hole)], [plainKind('a', 30, 1, kind)])).map(({ of, why: words }) => [
      of.join(),
      words,
    ])
  expect(Object.fromEntries(await why({ bracket: 10 }))['bracket of hole 1']).toBe(
    'the bracket thickness of hole 1 may have slipped by 10 mm: 0 in place of 10 would explain it',
  )
  expect(Object.fromEntries(await why({ mouth: 10, bottomDepth: 22 }))['mouth of hole 1']).toBe(
    'the mouth depth of hole 1 may have slipped by 10 mm: 0 in place of 10 would explain it',
  )
  expect(Object.fromEntries(await why({ threadDepth: 5 }))['threadDepth of hole 1']).toBe(
    'if the thread depth of hole 1 was wrong, this could be filled',
  )
  expect(Object.fromEntries(await why({ threadDepth: 8, bottomDepth: 8 }))).not.toHaveProperty('bottomDepth of hole 1')
  expect(Object.fromEntries(await why({ threadDepth: { atLeast: 6 }, bottomDepth: 8 }))['bottomDepth of hole 1']).toBe(
    'the bottom depth of hole 1 may have slipped by 10 mm: 18 in place of 8 would explain it',
  )
  expect(Object.fromEntries(await why({}, { tip: 10 }))['tip of kind a']).toBe(
    'the tip length of kind a may have slipped by 10 mm: 0 in place of 10 would explain it',
  )
  expect(Object.fromEntries(await why({}, { washer: 10 }))['washer of kind a']).toBe(
    'the washer thickness of kind a may have slipped by 10 mm: 0 in place of 10 would explain it',
  )
  expect(Object.fromEntries(await why({}, { threadLength: 2 }))['threadLength of kind a']).toBe(
    'the thread length of kind a may have slipped by 10 mm: 12 in place of 2 would explain it',
  )
})

test('room behind a through hole that was read too small is no limit when set aside', async () => {
  const { bottomDepth: _, ...through } = plainHole('1', 20, { ending: 'through', threadDepth: 6, behind: 1 })
  const found = await doubts([through], [plainKind('a', 30, 1)])
  expect(found.find(({ of }) => of[0] === 'behind of hole 1')?.why).toBe(
    'the room behind of hole 1 may have slipped by 10 mm: 11 in place of 1 would explain it',
  )
})

test('a kind whose thread does not go in is no suspect', async () => {
  const found = await doubts([plainHole('1', 31)], [plainKind('a', 30, 1), plainKind('m8', 30, 1, { thread: 'M8' })])
  expect(found.flatMap(({ of }) => of)).toEqual(['grip of hole 1', 'length of kind a'])
})

test('where nothing stated could be wrong there is no doubt to tell', async () => {
  expect(await doubts([plainHole('1', 20)], [plainKind('m8', 30, 1, { thread: 'M8' })])).toEqual([])
})

test('a shared sheet that one hole needs thick and another thin is no doubt', async () => {
  // 1 wants a sheet of 2 to 8, 2 one of 12 to 18: there is one sheet.
  const found = await doubts([plainHole('1', 16), plainHole('2', 6)], [plainKind('a', 30, 2)], { gasket: 15 })
  expect(found.map(({ of }) => of[0])).toEqual(['grip of hole 1'])
})

test('a grip set right leaves the other holes under the same sheet alone', async () => {
  const found = await doubts([plainHole('1', 16), plainHole('2', 12)], [plainKind('a', 30, 1), plainKind('b', 35, 1)], {
    gasket: 15,
  })
  expect(found.find(({ of }) => of[0] === 'grip of hole 1')?.why).toContain('6 in place of 16')
})

test('a gasket of its own set right leaves the shared sheet alone', async () => {
  const found = await doubts([plainHole('1', 16, { gasket: 15 }), plainHole('2', 6)], [plainKind('a', 30, 2)], {
    gasket: 15,
  })
  expect(found.find(({ of }) => of[0] === 'gasket of hole 1')?.why).toContain('5 in place of 15')
})

test('the sheet of one face set right leaves the sheet of another alone', async () => {
  const unit: Unit = {
    gripbook: 'unit/1',
    kinds: [plainKind('a', 30, 2)],
    faces: [
      { id: 'pump', gasket: 15, holes: [plainHole('1', 16)] },
      { id: 'block', gasket: 20, holes: [plainHole('1', 0.5)] },
    ],
  }
  const [pump] = (await place(unit)).faces
  const told = pump!.conflict!.doubt.map(({ why }) => why)
  expect(told).toContain('the gasket thickness of hole 1 may have slipped by 10 mm: 5 in place of 15 would explain it')
})

test('a figure below nothing explains nothing, though the sums would come out', async () => {
  // A ×6 at a grip of −5 would have 11 mm of thread.
  const [grip] = await doubts([plainHole('1', 5)], [plainKind('a', 6, 1, { threadLength: 6 })])
  expect(grip).toMatchObject({ of: ['length of kind a'] })
  const found = await doubts([plainHole('1', 5)], [plainKind('a', 6, 1, { threadLength: 6 })])
  expect(found.find(({ of }) => of[0] === 'grip of hole 1')?.why).toBe(
    'if the grip of hole 1 was wrong, this could be filled',
  )
})

test('a length of which only the least is known has no neighbour length', async () => {
  // From 26 on it would fit; it is 31 or more. The grip may be 28.
  expect(await parts(8, [plainHole('1', 18)], [plainKind('x', { atLeast: 31 }, 1)])).toEqual([
    ['grip of hole 1', 7],
    ['length of kind x', 1],
  ])
})

test('a neighbour length speaks for the length alone, not for the thread length', async () => {
  // 12 mm go in and 7 are threaded: 17 of thread would do, and so would a ×27, with 7 in.
  expect(await parts(12, [plainHole('1', 20)], [plainKind('a', 32, 1, { threadLength: 7 })])).toEqual([
    ['threadLength of kind a', 7],
    ['length of kind a', 4],
    ['grip of hole 1', 1],
  ])
})

test('two rank lines of which either is enough for the conflict are no single doubt', async () => {
  const m8 = { thread: 'M8' }
  const holes = [plainHole('1'), plainHole('3', 31, m8), plainHole('4', 31, m8)]
  const kinds = [plainKind('a', 30, 1), plainKind('e', 40, 9, m8), plainKind('f', 30, 9, m8)]
  const ranks: Rank[] = [
    { quantity: 'grip', less: '3', more: '1' },
    { quantity: 'grip', less: '4', more: '1' },
  ]
  expect((await doubts(holes, kinds, { ranks })).map(({ of }) => of)).toEqual([['length of kind a']])
})

test('two trials of which either is enough for the conflict are no single doubt', async () => {
  const found = await doubts([plainHole('1'), plainHole('2', 31)], [plainKind('a', 30, 1), plainKind('c', 40, 1)], {
    trials: [
      { hole: '1', kind: 'c', stickOut: 9 },
      { hole: '1', kind: 'c', stickOut: { atLeast: 8.9, atMost: 9.1 } },
    ],
  })
  expect(found.map(({ of }) => of[0])).toEqual(['count of c', 'grip of hole 2', 'length of kind a'])
})

test('a trial in a hole of no conflict is doubted for the kind that it tells of', async () => {
  // Tried in 3, x is 40 long: too much for 1. 3 has a bolt of its own.
  const found = await doubts(
    [plainHole('1', 20), plainHole('3', 31, { asFound: 'c' })],
    [plainKind('x', 40, 1, { length: { atLeast: 20 } }), plainKind('c', 40, 1)],
    { trials: [{ hole: '3', kind: 'x', stickOut: 9 }] },
  )
  expect(found.map(({ of }) => of[0])).toContain('trial of x in 3')
})

test('a trial in a hole of the conflict is doubted though its kind does not go in there', async () => {
  const found = await doubts(
    [plainHole('1', undefined, { needs: ['stud end'] })],
    [plainKind('s', 30, 1, { features: ['stud end'] }), plainKind('c', 40, 1)],
    { trials: [{ hole: '1', kind: 'c', stickOut: 9 }] },
  )
  expect(found.map(({ of }) => of[0])).toContain('trial of c in 1')
})

test('where more than twelve statements could be wrong, none is told how', async () => {
  const kinds = (count: number) => Array.from({ length: count }, (_, i) => plainKind(`k${i + 1}`, 30, 1))
  const twelve = await doubts([plainHole('1', 31)], kinds(11))
  expect(twelve).toHaveLength(12)
  expect(twelve[0]?.why).toContain('21 in place of 31')
  const thirteen = await doubts([plainHole('1', 31)], kinds(12))
  expect(thirteen).toHaveLength(13)
  for (const { why, likely } of thirteen) {
    expect(why).toContain('wrong, this could be filled')
    expect(likely).toBeCloseTo(1 / 13, 12)
  }
})

test('where more than six holes clash their readings are not looked for in each other’s place', async () => {
  const clash = async (others: number) => {
    const holes = [
      plainHole('1', 27),
      plainHole('2', 29, { threadDepth: 9, bottomDepth: 9 }),
      ...Array.from({ length: others }, (_, i) => plainHole(`${i + 3}`, 26)),
    ]
    return (await doubts(holes, [plainKind('b', 35, others + 1), plainKind('c', 40, 1)])).find(
      ({ of }) => of[0] === 'grip of hole 1',
    )?.why
  }
  expect(await clash(4)).toBe("the grip readings of holes 1 and 2 may stand in each other's place")
  expect(await clash(5)).toBe('if the grip of hole 1 was wrong, this could be filled')
})

test('the search for doubts gives up after a number of tries', async () => {
  // Four statements would have to be wrong at once, of some thirty.
  const hole = plainHole('1', 60, { bracket: 0, gasket: 0, mouth: 0, threadDepth: 5, bottomDepth: 5 })
  const kinds = [1, 2, 3, 4, 5].map((i) => plainKind(`k${i}`, 30, 1, { threadLength: 5, washer: 0 }))
  let asked = 0
  const stop = {
    get aborted() {
      asked++
      return false
    },
  }
  const [face] = (await place(plainUnit([hole], kinds), { stop })).faces
  expect(face!.conflict?.doubt).toEqual([])
  expect(asked).toBeGreaterThan(100)
  expect(asked).toBeLessThan(400)
})

test('the search for doubts stops when told to, at whatever point', async () => {
  const unit = plainUnit([plainHole('1', 31)], [plainKind('a', 30, 1, { threadLength: 5 })])
  let all = 0
  await place(unit, {
    stop: {
      get aborted() {
        all++
        return false
      },
    },
  })
  expect(all).toBeGreaterThan(10)
  for (let after = 0; after < all; after++) {
    let asked = 0
    const stop = {
      get aborted() {
        return asked++ >= after
      },
    }
    await expect(place(unit, { stop }), `after ${after}`).rejects.toThrow(Stopped)
  }
})
