import { describe, expect, test } from 'vitest'
import { engagementRange } from '../joints/index.ts'
import { Bug } from '../must.ts'
import { readThread } from '../threads/index.ts'
import type { Face, Hole, Kind, Unit } from '../unit.ts'
import { compatible, FOUND_EMPTY, FOUND_UNKNOWN, pitchSpan, problemsOf, stackOf } from './problem.ts'
import { spanOf } from './span.ts'

const INFINITE = Number.POSITIVE_INFINITY
const mm = (lo: number, hi = lo) => ({ lo: Math.round(lo * 1e6), hi: hi === INFINITE ? hi : Math.round(hi * 1e6) })

const unitOf = (faces: Face[], more: Partial<Unit> = {}): Unit => ({ gripbook: 'unit/1', faces, ...more })
const faceOf = (hole: Partial<Hole> = {}, more: Partial<Face> = {}): Face => ({
  id: 'cover',
  holes: [{ id: '1', thread: 'M6', ...hole }],
  ...more,
})
const holeOf = (hole: Partial<Hole> = {}, more: Partial<Face> = {}, unit: Partial<Unit> = {}) =>
  problemsOf(unitOf([faceOf(hole, more)], unit))[0]!.holes[0]!
const kindOf = (kind: Partial<Kind> = {}) =>
  problemsOf(unitOf([faceOf({}, { kinds: [{ id: 'a', thread: 'M6', ...kind }] })]))[0]!.kinds[0]!
const thread = (name: string) => {
  const read = readThread(name)
  if (!read.ok) throw new Error(name)
  return read.value
}

describe('a hole', () => {
  test('of which nothing is read', () => {
    const face = faceOf()
    expect(problemsOf(unitOf([face]))[0]!.holes).toEqual([
      {
        face,
        source: face.holes[0],
        threads: [thread('M6')],
        needs: [],
        blind: true,
        grip: mm(0, INFINITE),
        bracket: mm(0),
        gasket: mm(0),
        sharesGasket: false,
        mouth: mm(0),
        threadDepth: mm(0, INFINITE),
        bottomDepth: mm(0, INFINITE),
        behind: null,
        engagement: spanOf(engagementRange([thread('M6')], undefined, undefined)),
        asFound: FOUND_UNKNOWN,
        history: 'unknown',
      },
    ])
  })

  test('of which all is read', () => {
    const read = {
      thread: ['M6', '1/4-20'],
      ending: 'through',
      grip: { value: 31.9, plusMinus: 0.1 },
      bracket: 3,
      gasket: { atLeast: 0.5, atMost: 1 },
      mouth: 2,
      threadDepth: { value: 0.5, unit: 'in' },
      bottomDepth: { atLeast: 16 },
      behind: { atMost: 6 },
      needs: ['stud end'],
      minimumEngagement: { nominal: 8 },
    } as const
    expect(holeOf(read as unknown as Hole)).toMatchObject({
      threads: [thread('M6'), thread('1/4-20 UNC')],
      needs: ['stud end'],
      blind: false,
      grip: mm(31.8, 32),
      bracket: mm(3),
      gasket: mm(0.5, 1),
      mouth: mm(2),
      threadDepth: mm(12.7),
      bottomDepth: mm(16, INFINITE),
      behind: mm(0, 6),
      engagement: mm(7.71, 8.29),
    })
    expect(stackOf(holeOf(read as unknown as Hole))).toEqual(mm(35.3, 36))
  })

  test('blind may be said', () => {
    expect(holeOf({ ending: 'blind' }).blind).toBe(true)
  })

  test('takes the face’s gasket unless it has its own', () => {
    expect(holeOf({}, { gasket: 1.5 })).toMatchObject({ gasket: mm(1.5), sharesGasket: true })
    expect(holeOf({ gasket: 0.8 }, { gasket: 1.5 })).toMatchObject({ gasket: mm(0.8), sharesGasket: false })
    expect(holeOf({ gasket: 0.8 })).toMatchObject({ gasket: mm(0.8), sharesGasket: false })
  })

  test('takes the least engagement stated for it, else the face’s, else a range from torque and material', () => {
    expect(holeOf({ minimumEngagement: 7 }, { minimumEngagement: 9 }).engagement).toEqual(mm(7))
    expect(holeOf({}, { minimumEngagement: 9, torque: 10 }).engagement).toEqual(mm(9))
    const range = (material: string | undefined, torque: number | undefined) =>
      spanOf(engagementRange([thread('M6')], material, torque === undefined ? undefined : { lo: torque, hi: torque }))
    expect(holeOf({}, { torque: 100 }).engagement).toEqual(range(undefined, 100))
    expect(holeOf({ torque: 200 }, { torque: 100, material: 'steel' }).engagement).toEqual(range('steel', 200))
    expect(holeOf({ material: 'grey iron' }, { torque: 10, material: 'steel' }).engagement).toEqual(
      range('grey iron', 10),
    )
    expect(range('steel', 200)).not.toEqual(range('steel', 100))
    // 10 kgf·m are 98.0665 N·m, by the definition of the kilogram-force.
    expect(holeOf({ thread: 'M10', torque: { value: 10, unit: 'kgf·m' } }).engagement).toEqual(
      spanOf(engagementRange([thread('M10')], undefined, { lo: 98.0665, hi: 98.0665 })),
    )
  })

  test('was found with a kind, empty, or nobody knows', () => {
    const kinds = [
      { id: 'a', thread: 'M6' },
      { id: 'b', thread: 'M6' },
    ]
    expect(holeOf({ asFound: 'b' }, { kinds }).asFound).toBe(1)
    expect(holeOf({ asFound: 'a' }, { kinds }).asFound).toBe(0)
    expect(holeOf({ asFound: 'none' }, { kinds }).asFound).toBe(FOUND_EMPTY)
    expect(holeOf({}, { kinds }).asFound).toBe(FOUND_UNKNOWN)
    expect(new Set([FOUND_EMPTY, FOUND_UNKNOWN, 0]).size).toBe(3)
    expect(() => holeOf({ asFound: 'c' }, { kinds })).toThrow(Bug)
    expect(() => holeOf({ asFound: 'c' }, { kinds })).toThrow('a name that the file check should have refused')
  })

  test('has the history of its face, else of the unit', () => {
    expect(holeOf({}, { history: 'never opened' }, { history: 'opened before' }).history).toBe('never opened')
    expect(holeOf({}, {}, { history: 'opened before' }).history).toBe('opened before')
  })

  test('a thread that is none is a bug here', () => {
    expect(() => holeOf({ thread: 'X9' })).toThrow('a thread that the file check should have refused')
  })
})

describe('a kind', () => {
  test('of which nothing is read', () => {
    const face = faceOf({}, { kinds: [{ id: 'a', thread: 'M8' }] })
    expect(problemsOf(unitOf([face]))[0]!.kinds).toEqual([
      {
        face,
        source: face.kinds![0],
        threads: [thread('M8')],
        features: [],
        length: mm(0, INFINITE),
        tip: mm(1.25, 2.5),
        threadLength: null,
        runOut: mm(0, 3.125),
        washer: mm(0),
        count: INFINITE,
      },
    ])
  })

  test('of which all is read', () => {
    const read: Partial<Kind> = {
      length: { nominal: 45 },
      threadLength: 24,
      tip: { atLeast: 0.5, atMost: 1.5 },
      count: 0,
      features: ['stud end'],
      washer: 1.6,
    }
    expect(kindOf(read)).toMatchObject({
      length: mm(44.5, 45.5),
      threadLength: mm(24),
      tip: mm(0.5, 1.5),
      features: ['stud end'],
      washer: mm(1.6),
      count: 0,
    })
  })

  test('has a washer in any of its forms', () => {
    expect(kindOf({ washer: { value: 1.6, plusMinus: 0.1 } }).washer).toEqual(mm(1.5, 1.7))
    expect(kindOf({ washer: { thickness: 2, captive: true } }).washer).toEqual(mm(2))
    expect(kindOf({ washer: { thickness: { value: 2, plusMinus: 0.2 } } }).washer).toEqual(mm(1.8, 2.2))
  })

  test('of several threads has the tip of the finest and the coarsest', () => {
    const either = kindOf({ thread: ['M8', 'M8×1'] })
    expect(either).toMatchObject({ tip: mm(1, 2.5), runOut: mm(0, 3.125) })
    expect(pitchSpan(either.threads)).toEqual({ lo: 1, hi: 1.25 })
  })
})

describe('trials', () => {
  const tried = (trial: { turns: number } | { proud: number } | { stickOut: number }, name: string | string[] = 'M8') =>
    problemsOf(
      unitOf([
        faceOf({ thread: 'M8' }, { kinds: [{ id: 'a', thread: name }], trials: [{ hole: '1', kind: 'a', ...trial }] }),
      ]),
    )[0]!.trials[0]!.spans

  test('turns are right to half a turn, in the pitch of the bolt', () => {
    expect(tried({ turns: 8 })).toEqual({ pastMouth: mm(9.375, 10.625) })
    expect(tried({ turns: 0 })).toEqual({ pastMouth: mm(0, 0.625) })
    expect(tried({ turns: 8 }, ['M8×1', 'M8'])).toEqual({ pastMouth: mm(7.5, 10.625) })
  })

  test('proud is what is past the mouth, stick-out what is past the face', () => {
    expect(tried({ proud: 3.2 })).toEqual({ pastMouth: mm(3.2) })
    expect(tried({ stickOut: 3.2 })).toEqual({ stickOut: mm(3.2) })
  })
})

describe('a unit of two faces', () => {
  const one: Face = {
    id: 'one',
    holes: [
      { id: '1', thread: 'M6', asFound: 'b' },
      { id: '2', thread: 'M6' },
    ],
    kinds: [
      { id: 'a', thread: 'M6' },
      { id: 'b', thread: 'M6' },
    ],
    ranks: [
      { quantity: 'grip', less: '2', more: '1' },
      { quantity: 'length', less: 'a', more: 'b' },
    ],
  }
  const two: Face = {
    id: 'two',
    holes: [
      { id: '2', thread: 'M6' },
      { id: '1', thread: 'M6', asFound: 'a' },
    ],
    kinds: [
      { id: 'c', thread: 'M6' },
      { id: 'a', thread: 'M6' },
    ],
    ranks: [
      { quantity: 'bottomDepth', less: '2', more: '1' },
      { quantity: 'length', less: 'c', more: 'a' },
    ],
    trials: [{ hole: '1', kind: 'a', stickOut: 3 }],
  }

  test('with a tray for each face is two problems', () => {
    const problems = problemsOf(unitOf([one, two]))
    expect(problems.map(({ holes, kinds }) => [holes.length, kinds.map(({ source }) => source.id)])).toEqual([
      [2, ['a', 'b']],
      [2, ['c', 'a']],
    ])
    expect(problems[1]!.ranks).toEqual([
      { quantity: 'bottomDepth', less: 0, more: 1, face: two },
      { quantity: 'length', less: 0, more: 1, face: two },
    ])
    expect(problems[1]!.trials).toMatchObject([{ hole: 1, kind: 1, face: two, source: two.trials![0] }])
    expect(problems[0]!.trials).toEqual([])
    expect(problemsOf(unitOf([one, two], { kinds: [] }))).toHaveLength(2)
  })

  test('with a tray that they share is one problem, and names keep to their face', () => {
    const shared = { id: 's', thread: 'M6' }
    const problems = problemsOf(
      unitOf([one, { ...two, trials: [...two.trials!, { hole: '2', kind: 's', stickOut: 4 }] }], { kinds: [shared] }),
    )
    expect(problems).toHaveLength(1)
    const { holes, kinds, ranks, trials } = problems[0]!
    expect(kinds.map(({ source, face }) => [source.id, face?.id])).toEqual([
      ['a', 'one'],
      ['b', 'one'],
      ['c', 'two'],
      ['a', 'two'],
      ['s', undefined],
    ])
    expect(holes.map(({ source, face, asFound }) => [source.id, face.id, asFound])).toEqual([
      ['1', 'one', 1],
      ['2', 'one', FOUND_UNKNOWN],
      ['2', 'two', FOUND_UNKNOWN],
      ['1', 'two', 3],
    ])
    expect(ranks.map(({ quantity, less, more }) => [quantity, less, more])).toEqual([
      ['grip', 1, 0],
      ['length', 0, 1],
      ['bottomDepth', 2, 3],
      ['length', 2, 3],
    ])
    expect(trials.map(({ hole, kind }) => [hole, kind])).toEqual([
      [3, 3],
      [2, 4],
    ])
    // A face's own kinds are for its own holes alone; the shared one is for all.
    expect(holes.map((hole) => kinds.map((kind) => compatible(hole, kind)))).toEqual([
      ['yes', 'yes', 'other face', 'other face', 'yes'],
      ['yes', 'yes', 'other face', 'other face', 'yes'],
      ['other face', 'other face', 'yes', 'yes', 'yes'],
      ['other face', 'other face', 'yes', 'yes', 'yes'],
    ])
  })

  test('a rank line of a name that is not there is a bug', () => {
    expect(() => problemsOf(unitOf([{ ...one, ranks: [{ quantity: 'grip', less: '9', more: '1' }] }]))).toThrow(Bug)
    expect(() => problemsOf(unitOf([{ ...one, ranks: [{ quantity: 'length', less: 'a', more: '1' }] }]))).toThrow(Bug)
  })
})
