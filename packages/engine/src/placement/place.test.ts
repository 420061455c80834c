import { expect, test } from 'vitest'
import type { Hole, Kind, Unit } from '../unit.ts'
import { place } from './place.ts'
import { type MixedIntegerSolver, Stopped } from './solver.ts'
import { loadSolver } from './testing/highs.ts'
import { plainHole, plainKind, plainUnit } from './testing/plainFace.ts'

type More = Parameters<typeof plainUnit>[2]
const faceOf = async (holes: Hole[], kinds: Kind[], more: More = {}) =>
  (await place(plainUnit(holes, kinds, more))).faces[0]!

// A ×30 takes grips from 18 to 24, a ×35 from 23 to 29, a ×40 from 28 to 34.
const a = (count?: number) => plainKind('a', 30, count)
const b = (count?: number) => plainKind('b', 35, count)
const c = (count?: number) => plainKind('c', 40, count)

test('the answer names its form', async () => {
  expect((await place(plainUnit([plainHole('1', 20)], [a()]))).gripbook).toBe('placement/1')
})

test('a hole that one kind alone fits is settled, and its likelihood is 1', async () => {
  const face = await faceOf([plainHole('1', 20)], [a(), b()])
  expect(face).toMatchObject({
    face: 'cover',
    feasible: true,
    conflict: null,
    missing: 0,
    wanted: [],
    next: null,
    leftOver: {},
  })
  expect(face.holes['1']).toMatchObject({ verdict: 'settled', may: ['a'], likely: { a: 1 }, best: 'a' })
  expect(face.holes['1']).not.toHaveProperty('asFound')
})

test('a hole that several kinds fit is open, and is not said to be proven', async () => {
  const face = await faceOf([plainHole('1', 23.5)], [a(), b()])
  expect(face.feasible).toBe(true)
  expect(face.holes['1']).toMatchObject({ verdict: 'open', may: ['a', 'b'] })
  expect(face.holes['1']).not.toHaveProperty('proven')
})

test('the counts settle what the readings leave open', async () => {
  const face = await faceOf([plainHole('1', 23.5), plainHole('2', 20)], [a(1), b(1)])
  expect(face.holes['1']).toMatchObject({ verdict: 'settled', best: 'b', likely: { b: 1 } })
})

test('proven: the readings leave no other standard length', async () => {
  // Standard bolts have 1 to 2 mm of tip. At a grip of 20 only the ×30 has 6 mm of thread and stays off the bottom.
  expect((await faceOf([plainHole('1', 20)], [a(), b()])).holes['1']?.proven).toBe(true)
  // With the depths not known a ×35, ×40 and more could be right too, though the tray has none.
  const { threadDepth: _, bottomDepth: __, ...open } = plainHole('1', 20)
  expect((await faceOf([open], [a()])).holes['1']).toMatchObject({ verdict: 'settled', proven: false })
  // The ×30 alone fits; a bolt within 1 mm of that can pass for it, one further off is none.
  const proven = async (length: Kind['length']) =>
    (await faceOf([plainHole('1', 20)], [plainKind('x', length!)])).holes['1']?.proven
  expect(await proven(31)).toBe(true)
  expect(await proven(31.1)).toBe(false)
  expect(await proven(29)).toBe(true)
  expect(await proven(28.9)).toBe(false)
  expect(await proven({ value: 31.1, plusMinus: 0.1 })).toBe(true)
  expect(await proven({ value: 28.9, plusMinus: 0.1 })).toBe(true)
})

test('as found: right where it is the only kind, may stay where others can be too, must change where it cannot', async () => {
  const found = async (grip: number, asFound: string) =>
    (await faceOf([plainHole('1', grip, { asFound })], [a(), b()])).holes['1']?.asFound
  expect(await found(20, 'a')).toEqual({
    kind: 'a',
    verdict: 'right',
    why: 'a was found here and is the only kind that can be',
  })
  expect(await found(23.5, 'a')).toEqual({ kind: 'a', verdict: 'may stay', why: 'a was found here and can stay' })
  expect(await found(20, 'b')).toMatchObject({ kind: 'b', verdict: 'must change' })
  expect(await found(20, 'none')).toEqual({
    kind: 'none',
    verdict: 'must change',
    why: 'found empty, and a bolt belongs here',
  })
})

test('as found in a hole that may stay empty can stay, and so can the emptiness', async () => {
  const face = await faceOf([plainHole('1', 20, { asFound: 'a' }), plainHole('2', 20, { asFound: 'none' })], [a(1)])
  expect(face.holes['1']?.asFound?.verdict).toBe('may stay')
  expect(face.holes['2']?.asFound?.verdict).toBe('may stay')
  expect(face.changes.count).toBe(0)
})

test('two bolts in each other’s place are a swap', async () => {
  const holes = [plainHole('1', 20, { asFound: 'b' }), plainHole('2', 26, { asFound: 'a' }), plainHole('3', 31)]
  expect((await faceOf(holes, [a(), b(), c()])).changes).toEqual({
    count: 2,
    cycles: [
      [
        { hole: '1', from: 'b', to: 'a' },
        { hole: '2', from: 'a', to: 'b' },
      ],
    ],
  })
})

test('the fewest changes may not be the likeliest placement', async () => {
  // Units before say b by far; what was found can stay.
  const hole = plainHole('1', 23.5, { asFound: 'a', unitsBefore: { b: 50 } })
  const face = await faceOf([hole], [a(), b()], { weigh: { habit: false } })
  expect(face.holes['1']?.best).toBe('b')
  expect(face.changes).toEqual({ count: 0, cycles: [] })
})

test('of placements alike the one with fewer changes is best', async () => {
  const holes = [plainHole('1', 23.5, { asFound: 'b' }), plainHole('2', 23.5, { asFound: 'a' })]
  const face = await faceOf(holes, [a(1), b(1)])
  expect([face.holes['1']?.best, face.holes['2']?.best]).toEqual(['b', 'a'])
  const other = await faceOf(
    [plainHole('1', 23.5, { asFound: 'a' }), plainHole('2', 23.5, { asFound: 'b' })],
    [a(1), b(1)],
  )
  expect([other.holes['1']?.best, other.holes['2']?.best]).toEqual(['a', 'b'])
})

test('of placements with as few changes the likelier is told', async () => {
  // c was found in 1 and does not fit; a and b do, and units before say b.
  const hole = (unitsBefore: Record<string, number>) => plainHole('1', 23.5, { asFound: 'c', unitsBefore })
  const to = async (unitsBefore: Record<string, number>) =>
    (await faceOf([hole(unitsBefore)], [a(), b(), c()], { weigh: { habit: false, asFound: true } })).changes
      .cycles[0]![0]!.to
  expect(await to({ a: 5 })).toBe('a')
  expect(await to({ b: 5 })).toBe('b')
})

test('a likelihood never costs a change', async () => {
  // b is 201 times as likely in each of three holes, yet a was found in all and can stay.
  const holes = ['1', '2', '3'].map((id) => plainHole(id, 23.5, { asFound: 'a', unitsBefore: { b: 100 } }))
  expect((await faceOf(holes, [a(), b()], { weigh: { habit: false } })).changes.count).toBe(0)
})

test('habit chooses where nothing else does', async () => {
  const best = async (material: string) =>
    (await faceOf([plainHole('1', 23.5)], [a(), b()], { material, weigh: { asFound: false } })).holes['1']?.best
  // 11.5 mm of thread with the ×35, 6.5 with the ×30: 1.9 diameters are usual in cast aluminium, 1.2 in steel.
  expect(await best('cast aluminium')).toBe('b')
  expect(await best('steel')).toBe('a')
})

test('one habit for the face: the best placement keeps to one aim', async () => {
  // Alone hole 1 would be b in aluminium; six holes that can only have little thread say that this designer aimed low.
  const little = Array.from({ length: 6 }, (_, i) => plainHole(`${i + 2}`, 24, { thread: 'M6' }))
  const kinds = [plainKind('a', 30), plainKind('b', 35, 1)]
  const all = [plainHole('1', 23.5), ...little.map((hole) => ({ ...hole, needs: ['seal'] }))]
  const sealed = plainKind('s', 30, undefined, { features: ['seal'] })
  const face = await faceOf(all, [...kinds, sealed], { material: 'cast aluminium', weigh: { asFound: false } })
  expect(face.holes['1']?.best).not.toBe('b')
})

test('a missing bolt is wanted by its standard lengths', async () => {
  const face = await faceOf([plainHole('1', 20), plainHole('2', 30)], [a()])
  expect(face.missing).toBe(1)
  // A grip of 30 wants more than 36 and at most 42 of length.
  expect(face.wanted).toEqual([
    { hole: '2', thread: 'M6', lengths: [40], why: 'M6×40 would fill it, you have none to spare' },
  ])
})

test('a wanted bolt that is sure to fit is named before one that may', async () => {
  // 12 mm of depth hold a ×40 for sure; with a rough grip both ×40 and ×45 may.
  const rough = await faceOf([plainHole('1', { atLeast: 29, atMost: 34 })], [a()])
  expect(rough.wanted[0]).toMatchObject({
    thread: 'M6',
    lengths: [40, 45],
    why: 'M6×40 or M6×45 would fill it, you have none to spare',
  })
})

test('a hole that no standard length fits says so', async () => {
  const face = await faceOf([plainHole('1', 30, { threadDepth: 3, bottomDepth: 3 })], [a()])
  expect(face.wanted).toEqual([
    { hole: '1', thread: 'M6', lengths: [], why: 'no standard length of M6 fits the readings of this hole' },
  ])
})

test('a hole of two candidate threads wants the first that can fill it', async () => {
  const face = await faceOf([plainHole('1', 30, { thread: ['M6', 'M8'] })], [])
  expect(face.wanted[0]).toMatchObject({ thread: 'M6', lengths: [40] })
})

test('only the holes left empty want a bolt', async () => {
  const face = await faceOf([plainHole('1', 20), plainHole('2', 20)], [a(1)])
  expect(face.wanted).toHaveLength(1)
  expect(face.missing).toBe(1)
  const empty = Object.entries(face.holes).find(([, { best }]) => best === null)![0]
  expect(face.wanted[0]?.hole).toBe(empty)
})

test('what is left over is counted, and a kind used up is not', async () => {
  const face = await faceOf([plainHole('1', 20)], [a(3), b(1), c()])
  expect(face.leftOver).toEqual({ a: 2, b: 1 })
  expect((await faceOf([plainHole('1', 20)], [a(1)])).leftOver).toEqual({})
})

test('a bolt that came out and has no place goes back to the tray', async () => {
  const face = await faceOf([plainHole('1', 50, { asFound: 'a' })], [a(1)])
  expect(face.changes).toEqual({ count: 1, cycles: [[{ hole: '1', from: 'a', to: 'none' }]] })
  const filled = await faceOf([plainHole('1', 20, { asFound: 'none' })], [a(1)])
  expect(filled.changes).toEqual({ count: 1, cycles: [[{ hole: '1', from: 'none', to: 'a' }]] })
})

test('every pair is answered, hole by hole in the order of the tray', async () => {
  const face = await faceOf([plainHole('1', 20), plainHole('2', 26)], [b(), a()])
  expect(face.pairs.map(({ hole, kind, verdict }) => `${hole} ${kind} ${verdict}`)).toEqual([
    '1 b cannot',
    '1 a fits',
    '2 b fits',
    '2 a cannot',
  ])
})

test('lines set aside for a contradiction count no more, but the rest does', async () => {
  // The ring says nothing; the third line still keeps a ×40 out of 3 when 4 has a ×30.
  const ranks = [
    { quantity: 'grip' as const, less: '1', more: '2' },
    { quantity: 'grip' as const, less: '2', more: '1' },
    { quantity: 'grip' as const, less: '3', more: '4' },
  ]
  const face = await faceOf(
    [plainHole('1', 20), plainHole('2', 26), plainHole('3'), plainHole('4', 20)],
    [a(), b(), c()],
    { ranks },
  )
  expect(face.holes['3']).toMatchObject({ verdict: 'settled', best: 'a' })
  expect(face.holes['2']?.best).toBe('b')
  expect(face.conflict?.holes).toEqual(['1', '2'])
})

test('a contradiction of lines comes before the holes that cannot be filled', async () => {
  const face = await faceOf([plainHole('1', 26), plainHole('2', 20), plainHole('3', 50)], [a(), b()], {
    ranks: [{ quantity: 'grip', less: '1', more: '2' }],
  })
  expect(face.conflict).toMatchObject({ holes: ['1', '2'], short: 0 })
  expect(face.furtherConflicts).toMatchObject([{ holes: ['3'], short: 1 }])
  expect(face.holes['3']?.verdict).toBe('contradicted')
  expect(face.missing).toBe(1)
})

test('a trial that is set aside is said of its pair all the same', async () => {
  const trials = [{ hole: '1', kind: 'a', stickOut: 20 }]
  const face = await faceOf([plainHole('1', 20)], [a()], { trials })
  expect(face.pairs[0]?.verdict).toBe('cannot')
  expect(face.holes['1']?.best).toBe('a')
})

test('what a trial says of the grip settles the other kinds', async () => {
  // A ×40 stood 10 to 11 past the joint face: a grip of 29 to 30, for which a ×35 is too short and a ×40 right.
  const face = await faceOf([plainHole('1')], [b(), c()], {
    trials: [{ hole: '1', kind: 'c', stickOut: { atLeast: 10, atMost: 10.9 } }],
  })
  expect(face.holes['1']).toMatchObject({ verdict: 'settled', best: 'c' })
})

test('holes tied by a trial are weighed together', async () => {
  // x is between 30 and 40 long. Tried in 2 it stood 9 to 10 past the joint face, so where 2 has it, 1 is told its length.
  const x = plainKind('x', { atLeast: 30, atMost: 40 }, 2)
  const face = await faceOf([plainHole('1', 22), plainHole('2', { atLeast: 28, atMost: 33 })], [x, a(1), c(1)], {
    trials: [{ hole: '2', kind: 'x', stickOut: { atLeast: 9, atMost: 10 } }],
  })
  // x is 37 or more by the trial, so 1 cannot have it.
  expect(face.holes['1']).toMatchObject({ verdict: 'settled', best: 'a' })
  expect(face.holes['2']?.likely).toEqual({ x: expect.closeTo(0.5, 9), c: expect.closeTo(0.5, 9) })
})

const m8 = { thread: 'M8' }
const close = (value: number) => expect.closeTo(value, 9)

test('a rank line of lengths ties holes that have no kind in common', async () => {
  // x in 1 is 34 or more, y in 2 is 33 or less, and x is no longer than y. The ways are x d, c y and c d.
  const kinds = [
    plainKind('x', { atLeast: 30, atMost: 40 }),
    c(),
    plainKind('y', { atLeast: 30, atMost: 40 }, undefined, m8),
    plainKind('d', 30, undefined, m8),
  ]
  const face = await faceOf([plainHole('1', 28), plainHole('2', 21, m8)], kinds, {
    ranks: [{ quantity: 'length', less: 'x', more: 'y' }],
  })
  expect(face.holes['1']?.likely).toEqual({ x: close(1 / 3), c: close(2 / 3) })
  expect(face.holes['2']?.likely).toEqual({ y: close(1 / 3), d: close(2 / 3) })
})

test('a trial ties the hole to the holes of the kind', async () => {
  // x was tried in 2, where it may not stay: its grip is 9 to 10 less than x is long. In 1 x is 34 at most. The ways are x p, a p and a q.
  const seal = { features: ['seal'] }
  const kinds = [
    plainKind('x', { atLeast: 30, atMost: 40 }),
    a(),
    plainKind('p', 30, undefined, { ...m8, ...seal }),
    plainKind('q', 40, undefined, { ...m8, ...seal }),
  ]
  const holes = [
    plainHole('1', 22),
    plainHole('2', { atLeast: 20, atMost: 31 }, { thread: ['M6', 'M8'], needs: ['seal'] }),
  ]
  const face = await faceOf(holes, kinds, {
    trials: [{ hole: '2', kind: 'x', stickOut: { atLeast: 9, atMost: 10 } }],
  })
  expect(face.holes['1']?.likely).toEqual({ x: close(1 / 3), a: close(2 / 3) })
  expect(face.holes['2']?.likely).toEqual({ p: close(2 / 3), q: close(1 / 3) })
})

test('a sheet of unknown thickness ties the holes under it', async () => {
  // The ×30 in 1 wants 4 at most, the ×40 8 at least; the ×30 in 2 4 at most, the ×35 3 to 9. The ways are a d, a e and c e.
  const kinds = [a(), c(), plainKind('d', 30, undefined, m8), plainKind('e', 35, undefined, m8)]
  const face = await faceOf([plainHole('1', 20), plainHole('2', 20, m8)], kinds, { gasket: { atMost: 10 } })
  expect(face.holes['1']?.likely).toEqual({ a: close(2 / 3), c: close(1 / 3) })
  expect(face.holes['2']?.likely).toEqual({ d: close(1 / 3), e: close(2 / 3) })
})

test('a bolt that only may fit is not wanted where one is sure to', async () => {
  // The ×35 has 6 mm of thread at the very best.
  const face = await faceOf([plainHole('1', { atLeast: 28.6, atMost: 30 })], [])
  expect(face.wanted[0]?.lengths).toEqual([40])
})

test('a hole of two threads that no standard length fits is told by its first', async () => {
  const face = await faceOf([plainHole('1', 30, { thread: ['M8', 'M6'], threadDepth: 3, bottomDepth: 3 })], [])
  expect(face.wanted[0]).toMatchObject({ thread: 'M8', lengths: [] })
})

test('holes of a further conflict are open, not contradicted, where a bolt may still go in', async () => {
  const face = await faceOf(
    [plainHole('1', 20), plainHole('2', 20), plainHole('3', 31), plainHole('4', 31)],
    [a(1), c(1)],
  )
  const [first, second] = [face.conflict!, face.furtherConflicts![0]!]
  for (const id of first.holes) expect(face.holes[id]?.verdict).toBe('contradicted')
  for (const id of second.holes) expect(face.holes[id]?.verdict).toBe('open')
  for (const { why } of Object.values(face.holes)) expect(why).toContain('not enough to go round')
})

/** Faces with much that is tied: kinds of unknown length and rank lines. */
const tied = [
  plainUnit(
    [plainHole('1', 22), plainHole('2', 33), plainHole('3', 26), plainHole('4', 30)],
    [plainKind('x', { atLeast: 30, atMost: 40 }, 3), plainKind('y', { atLeast: 30, atMost: 42 }, 2), c(1)],
  ),
  plainUnit([plainHole('1'), plainHole('2'), plainHole('3', 26), plainHole('4')], [a(1), b(2), c(1)], {
    ranks: [
      { quantity: 'grip', less: '1', more: '2' },
      { quantity: 'grip', less: '2', more: '4' },
    ],
    weigh: {},
  }),
  plainUnit([plainHole('1', 22), plainHole('2', 33)], [plainKind('x', { atLeast: 30, atMost: 40 }, 2)]),
]

/** The answer without what may be told in more than one right way. */
async function essence(unit: Unit, tools: Parameters<typeof place>[1] = {}) {
  return (await place(unit, tools)).faces.map((face) => ({
    feasible: face.feasible,
    missing: face.missing,
    changes: face.changes.count,
    may: Object.entries(face.holes).map(([id, { may, verdict }]) => [id, may, verdict]),
    method: face.likelihood.method,
  }))
}

test('a question handed to a solver at once has the same answer', async () => {
  const solve = await loadSolver()
  let asked = 0
  const counting: MixedIntegerSolver = (text) => {
    asked++
    return solve(text)
  }
  for (const [i, unit] of tied.entries()) {
    const own = await essence(unit)
    expect(await essence(unit, { patience: 0, solver: async () => counting }), `unit ${i}`).toEqual(own)
  }
  expect(asked).toBeGreaterThan(5)
})

test('with patience to spare the solver is not loaded', async () => {
  let loaded = 0
  for (const unit of tied)
    await place(unit, {
      solver: async () => {
        loaded++
        return loadSolver()
      },
    })
  expect(loaded).toBe(0)
})

test('a face with ties can be stopped at whatever point, with the solver too', async () => {
  const solve = await loadSolver()
  for (const tools of [{}, { patience: 0, solver: async () => solve }]) {
    let all = 0
    const counted = {
      get aborted() {
        all++
        return false
      },
    }
    await place(tied[2]!, { ...tools, stop: counted })
    expect(all).toBeGreaterThan(3)
    for (const after of [0, 1, 2, all - 1]) {
      let asked = 0
      const stop = {
        get aborted() {
          return asked++ >= after
        },
      }
      await expect(place(tied[2]!, { ...tools, stop }), `after ${after}`).rejects.toThrow(Stopped)
    }
  }
})
