// Long because every sort of tie has its own hand-worked case, and all are held against one enumeration.
import { describe, expect, test } from 'vitest'
import type { Face, Hole, Kind, Rank, Trial } from '../unit.ts'
import { Coupling, clashesWithinKinds, gasketTies } from './coupling.ts'
import { place } from './place.ts'
import { problemsOf } from './problem.ts'
import { disagreements } from './testing/disagreements.ts'
import { smallUnit } from './testing/generateFace.ts'
import { plainHole, plainKind, plainUnit } from './testing/plainFace.ts'

type Changed<T> = { [K in keyof T]?: T[K] | undefined }

/** `impossible`: pairs "hole kind" that are out from the first; all others count as possible, so that the sums alone decide. */
function coupled(holes: Hole[], kinds: Kind[], more: Partial<Face> = {}, impossible: string[] = []) {
  const problem = problemsOf(plainUnit(holes, kinds, more))[0]!
  const bins = kinds.length + 1
  const pair = (name: string) => {
    const [hole, kind] = name.split(' ')
    return holes.findIndex(({ id }) => id === hole) * bins + kinds.findIndex(({ id }) => id === kind)
  }
  const name = (number: number) => `${holes[Math.floor(number / bins)]!.id} ${kinds[number % bins]!.id}`
  const possible = new Uint8Array(holes.length * bins).map((_, number) => (number % bins < kinds.length ? 1 : 0))
  for (const out of impossible) possible[pair(out)] = 0
  const coupling = new Coupling(problem, possible)
  const clash = (...pairs: string[]) => coupling.clash(pairs.map(pair))?.map(name) ?? null
  const within = () => clashesWithinKinds(problem, possible, coupling).map((set) => set.map(name))
  return { problem, coupling, clash, within, pair }
}

const from = (atLeast: number, atMost: number) => ({ atLeast, atMost })
const M8 = { thread: 'M8' }

describe('every line of a fit stands in the sums as it stands for a pair alone', () => {
  const HOLE: Hole = { id: '1', thread: 'M6', grip: 25, threadDepth: 20, bottomDepth: 25, minimumEngagement: 8 }
  const KIND: Kind = { id: 'a', thread: 'M6', length: 40, threadLength: 30, tip: 0, count: 1 }
  const through = { ending: 'through', bottomDepth: undefined } as const
  const shortRead: Changed<Hole> = { grip: 2.5, minimumEngagement: 2 }
  const edges: [string, Changed<Hole>, Changed<Kind>, boolean][] = [
    ['as it stands', {}, {}, true],
    ['engagement', { grip: 32 }, {}, true],
    ['engagement', { grip: 32.1 }, {}, false],
    ['engagement at its least', { grip: 34, minimumEngagement: from(6, 9) }, {}, true],
    ['engagement at its least', { grip: 34.1, minimumEngagement: from(6, 9) }, {}, false],
    ['mouth', { grip: 30, mouth: 2 }, {}, true],
    ['mouth', { grip: 30, mouth: 2.1 }, {}, false],
    ['tip', { grip: 30 }, { tip: 2 }, true],
    ['tip', { grip: 30 }, { tip: 2.1 }, false],
    ['stack', { bracket: 3, gasket: 1.5 }, { washer: 2.5 }, true],
    ['stack', { bracket: 3.1, gasket: 1.5 }, { washer: 2.5 }, false],
    ['stack', { bracket: 3, gasket: 1.6 }, { washer: 2.5 }, false],
    ['stack', { bracket: 3, gasket: 1.5 }, { washer: 2.6 }, false],
    ['shank', {}, { threadLength: 15 }, true],
    ['shank', {}, { threadLength: 14.9 }, false],
    ['shank and washer', {}, { threadLength: 11, washer: 4 }, true],
    ['shank and washer', {}, { threadLength: 10.9, washer: 4 }, false],
    ['shank and mouth', { mouth: 3 }, { threadLength: 12 }, true],
    ['shank and mouth', { mouth: 3 }, { threadLength: 11.9 }, false],
    ['bottom', { threadDepth: 12, bottomDepth: 15 }, { tip: 5 }, true],
    ['bottom', { threadDepth: 12, bottomDepth: 14.9 }, { tip: 5 }, false],
    ['run-out', { threadDepth: 15 }, {}, true],
    ['run-out', { threadDepth: 14.9 }, {}, false],
    ['run-out and tip', { threadDepth: 13 }, { tip: 2 }, true],
    ['run-out and tip', { threadDepth: 12.9 }, { tip: 2 }, false],
    ['bottom not known', { threadDepth: 12, bottomDepth: undefined }, { tip: 5 }, true],
    ['behind', { ...through, threadDepth: 10, behind: 5 }, {}, true],
    ['behind', { ...through, threadDepth: 10, behind: 4.9 }, {}, false],
    ['behind and mouth', { ...through, threadDepth: 9, mouth: 1, behind: 5 }, {}, true],
    ['behind not known', { ...through, threadDepth: 10 }, {}, true],
    ['no bottom in a through hole', { ending: 'through', bottomDepth: 3 }, {}, true],
    ['no room behind in a blind hole', { behind: 0 }, {}, true],
    ['head of the thread unknown', shortRead, { length: 12, threadLength: undefined }, true],
    [
      'head of the thread unknown, at its best',
      { ...shortRead, grip: from(0, 0.5) },
      { length: 12, threadLength: undefined },
      true,
    ],
    ['tip unknown, at its best', { grip: 31 }, { tip: undefined }, true],
    ['tip unknown, at its best', { grip: 31.1 }, { tip: undefined }, false],
    ['grip at its best', { grip: from(32, 40) }, {}, true],
    ['grip at its best', { grip: from(32.1, 40) }, {}, false],
    ['length at its best', { grip: 31 }, { length: from(30, 39) }, true],
    ['length at its best', { grip: 31 }, { length: from(30, 38.9) }, false],
    ['washer at its best', { grip: 31 }, { washer: from(1, 3) }, true],
    ['washer at its best', { grip: 31 }, { washer: from(1.1, 3) }, false],
    ['thread length at its best', {}, { threadLength: from(10, 15) }, true],
    ['thread length at its best', {}, { threadLength: from(10, 14.9) }, false],
    ['mouth at its best', { grip: 31, mouth: from(1, 3) }, {}, true],
    ['mouth at its best', { grip: 31, mouth: from(1.1, 3) }, {}, false],
    ['bracket at its best', { grip: 31, bracket: from(1, 3) }, {}, true],
    ['bracket at its best', { grip: 31, bracket: from(1.1, 3) }, {}, false],
    ['gasket at its best', { grip: 31, gasket: from(1, 3) }, {}, true],
    ['gasket at its best', { grip: 31, gasket: from(1.1, 3) }, {}, false],
    ['thread depth at its best', { threadDepth: from(10, 15) }, {}, true],
    ['thread depth at its best', { threadDepth: from(10, 14.9) }, {}, false],
    ['bottom at its best', { threadDepth: 12, bottomDepth: from(12, 15) }, { tip: 5 }, true],
    ['bottom at its best', { threadDepth: 12, bottomDepth: from(12, 14.9) }, { tip: 5 }, false],
    ['room behind at its best', { ...through, threadDepth: 10, behind: from(2, 5) }, {}, true],
    ['room behind at its best', { ...through, threadDepth: 10, behind: from(2, 4.9) }, {}, false],
    ['thread of a certain length in a bolt that is not', {}, { length: from(20, 40), threadLength: 30 }, true],
    // The bolt is as long as its thread at least: 46 sticks out 21, past the 20 of thread.
    ['a thread that makes the bolt too long', {}, { length: from(20, 60), threadLength: 46 }, false],
    ['a thread that makes the bolt just long', {}, { length: from(20, 60), threadLength: 45 }, true],
    ['and the washer has no part in that', { bracket: 0 }, { length: from(20, 60), threadLength: 46, washer: 1 }, true],
    [
      'all but 8 of thread taken by tip',
      { ending: 'through', bottomDepth: undefined, grip: from(10, 60) },
      { threadLength: 12, tip: 4 },
      true,
    ],
    [
      'all but 7.9 of thread taken by tip',
      { ending: 'through', bottomDepth: undefined, grip: from(10, 60) },
      { threadLength: 12, tip: 4.1 },
      false,
    ],
    ['wall of 8', { ...through, threadDepth: 8 }, {}, true],
    ['wall of 7.9', { ...through, threadDepth: 7.9 }, {}, false],
  ]

  test.each(edges)('%s, in a hole that a rank line ties: %o %o', (_, hole, kind, stands) => {
    const { clash, coupling } = coupled(
      [{ ...HOLE, ...hole } as Hole, { id: '2', ...M8 }],
      [{ ...KIND, ...kind } as Kind],
      { ranks: [{ quantity: 'grip', less: '1', more: '2' }] },
      ['2 a'],
    )
    expect([coupling.isTiedHole(0), coupling.isTiedKind(0)]).toEqual([true, true])
    expect(clash('1 a')).toEqual(stands ? null : ['1 a'])
    expect(clash()).toBeNull()
  })

  // A hole whose wall is thinner than the engagement takes no bolt at all, and is not asked about.
  test.each(edges.filter(([name]) => !name.startsWith('wall')))(
    '%s, of a kind that a rank line ties: %o %o',
    (_, hole, kind, stands) => {
      const { clash, coupling } = coupled(
        [{ ...HOLE, ...hole } as Hole],
        [{ ...KIND, ...kind } as Kind, { id: 'm8', ...M8 }],
        { ranks: [{ quantity: 'length', less: 'a', more: 'm8' }] },
        ['1 m8'],
      )
      expect([coupling.isTiedHole(0), coupling.isTiedKind(0), coupling.isTiedKind(1)]).toEqual([false, true, true])
      expect(clash('1 a')).toEqual(stands ? null : ['1 a'])
      expect(clash()).toBeNull()
    },
  )
})

describe('one length to a kind', () => {
  // One length of 30 to 40: 22 asks for 28 to 34, 33 for 39 to 45, 26 for 32 to 38.
  const x = (count?: number) => plainKind('x', from(30, 40), count)
  const three = [plainHole('1', 22), plainHole('2', 33), plainHole('3', 26)]

  test('cannot serve two holes that ask for different ones, and the fewest pairs are named', () => {
    const { clash, coupling } = coupled(three, [x()])
    expect(coupling.ties).toBe(true)
    expect(clash('1 x', '2 x')).toEqual(['1 x', '2 x'])
    expect(clash('1 x', '3 x')).toBeNull()
    expect(clash('2 x', '3 x')).toEqual(['2 x', '3 x'])
    expect(clash('3 x', '2 x', '1 x')).toHaveLength(2)
    expect(clash('1 x')).toBeNull()
  })

  test('ties nothing where one bolt serves all, or there is one bolt', () => {
    const served = coupled([plainHole('1', 22), plainHole('3', 26)], [x()])
    expect([served.coupling.ties, served.coupling.isTiedKind(0)]).toEqual([false, false])
    expect(served.coupling.binds(served.pair('1 x'))).toBe(false)
    expect(coupled(three, [x(1)]).coupling.ties).toBe(false)
    expect(coupled(three, [x(2)]).coupling.ties).toBe(true)
    expect(coupled(three, [x()], {}, ['2 x']).coupling.ties).toBe(false)
  })

  test('binds its own pairs and no others, never an empty hole', () => {
    const { coupling, pair } = coupled(three, [plainKind('a', 30), x()], {}, ['2 a', '3 a'])
    expect([coupling.binds(pair('1 x')), coupling.binds(pair('1 a')), coupling.binds(2)]).toEqual([true, false, false])
    expect([coupling.isTiedKind(0), coupling.isTiedKind(1)]).toEqual([false, true])
    expect(coupling.bins).toBe(3)
    expect(coupling.clash([2, pair('2 a')])).toBeNull()
  })

  test('what holes of a tied kind cannot share is known beforehand', () => {
    expect(coupled(three, [x()]).within()).toEqual([
      ['1 x', '2 x'],
      ['2 x', '3 x'],
    ])
    expect(coupled(three, [x()], {}, ['2 x']).within()).toEqual([])
    expect(coupled(three, [plainKind('a', 30), x()], {}, ['2 a', '3 a']).within()).toEqual([
      ['1 x', '2 x'],
      ['2 x', '3 x'],
    ])
    expect(coupled([plainHole('1', 22), plainHole('3', 26)], [x()]).within()).toEqual([])
  })

  test('of a kind with one bolt, or of pairs that are out, nothing is known beforehand', () => {
    expect(coupled(three, [x(1)]).within()).toEqual([])
    expect(coupled([...three, plainHole('4', 33)], [x()], {}, ['2 x']).within()).toEqual([
      ['1 x', '4 x'],
      ['3 x', '4 x'],
    ])
    expect(
      coupled(
        [...three, plainHole('4', 33)],
        [x(), x(1)].map((kind, i) => ({ ...kind, id: 'xy'[i]! })),
      ).within(),
    ).toEqual([
      ['1 x', '2 x'],
      ['1 x', '4 x'],
      ['2 x', '3 x'],
      ['3 x', '4 x'],
    ])
  })

  test('the kind’s own readings count in what is known beforehand', () => {
    const two = [plainHole('1', 22), plainHole('3', 28), plainHole('2', 33)]
    expect(coupled(two, [plainKind('x', from(30, 40))]).within()).toEqual([['1 x', '2 x']])
    expect(coupled(two, [plainKind('x', from(34.1, 40))]).within()).toEqual([
      ['1 x', '3 x'],
      ['1 x', '2 x'],
    ])
  })

  test('a tip and a thread length are one for all bolts of the kind too', () => {
    // Hole 1 leaves a tip of no less than 2, 10 less 8; hole 2 one of no more than 1.
    const holes = [
      plainHole('1', 20, { threadDepth: 8, bottomDepth: 20 }),
      plainHole('2', 23, { threadDepth: 12, bottomDepth: 12 }),
    ]
    const { clash } = coupled(holes, [plainKind('x', 30, 2, { tip: from(0, 3) })])
    expect(clash('1 x', '2 x')).toEqual(['1 x', '2 x'])
    expect(clash('1 x')).toBeNull()
    expect(clash('2 x')).toBeNull()
  })
})

describe('rank lines', () => {
  // A ×30 takes grips from 18 to 24, a ×36 from 24 to 30, a ×40 from 28 to 34.
  const open = [plainHole('1'), plainHole('2')]
  const kinds = [plainKind('a', 30), plainKind('b', 36), plainKind('c', 40), plainKind('d', 36.1)]
  const less = (quantity: Rank['quantity']): Partial<Face> => ({ ranks: [{ quantity, less: '1', more: '2' }] })

  test('of grips: less on the one side, more on the other, and alike', () => {
    const { clash } = coupled(open, kinds, less('grip'))
    expect(clash('1 a', '2 c')).toBeNull()
    expect(clash('1 c', '2 a')).toEqual(['1 c', '2 a'])
    expect(clash('1 b', '2 a')).toBeNull()
    expect(clash('1 d', '2 a')).toEqual(['1 d', '2 a'])
    expect(clash('1 c')).toBeNull()
  })

  test('of grips: a bracket is not grip', () => {
    const { clash } = coupled([plainHole('1', undefined, { bracket: 4 }), plainHole('2')], kinds, less('grip'))
    expect(clash('1 c', '2 a')).toBeNull()
    expect(
      coupled([plainHole('1', undefined, { bracket: 3.9 }), plainHole('2')], kinds, less('grip')).clash('1 c', '2 a'),
    ).toEqual(['1 c', '2 a'])
  })

  test('of thread depths and bottoms', () => {
    // A ×30 at 20 needs 10 of thread, and a bottom at 10.
    const hole = (id: string, more: Partial<Hole>) => plainHole(id, 20, { ...more })
    const deep = (most: number) =>
      coupled(
        [
          hole('1', { threadDepth: { atLeast: 0 }, bottomDepth: 30 }),
          hole('2', { threadDepth: { atMost: most }, bottomDepth: 30, ...M8 }),
        ],
        [plainKind('a', 30)],
        less('threadDepth'),
        ['2 a'],
      )
    expect(deep(10).clash('1 a')).toBeNull()
    expect(deep(9.9).clash('1 a')).toEqual(['1 a'])
    const low = (most: number) =>
      coupled(
        [
          hole('1', { threadDepth: 8, bottomDepth: { atLeast: 0 } }),
          hole('2', { threadDepth: 5, bottomDepth: { atMost: most }, ...M8 }),
        ],
        [plainKind('a', 30, 1, { tip: 2 })],
        less('bottomDepth'),
        ['2 a'],
      )
    expect(low(10).clash('1 a')).toBeNull()
    expect(low(9.9).clash('1 a')).toEqual(['1 a'])
  })

  test('of lengths', () => {
    // 20 asks for 26 to 32, 30 for 36 to 42.
    const { clash, coupling } = coupled(
      [plainHole('1', 20), plainHole('2', 30), plainHole('3', 26)],
      [plainKind('x', from(20, 60), 1), plainKind('y', from(20, 60), 1)],
      { ranks: [{ quantity: 'length', less: 'x', more: 'y' }] },
    )
    expect([coupling.isTiedKind(0), coupling.isTiedKind(1), coupling.isTiedHole(0)]).toEqual([true, true, false])
    expect(clash('1 x', '2 y')).toBeNull()
    expect(clash('2 x', '1 y')).toEqual(['1 y', '2 x'])
    expect(clash('3 x', '1 y')).toBeNull()
  })

  test('that the readings keep by themselves tie nothing', () => {
    const by = (one: number, other: number) =>
      coupled(
        [plainHole('1', { atMost: one }), plainHole('2', { atLeast: other })],
        [plainKind('a', 30, 1)],
        less('grip'),
      ).coupling.ties
    expect([by(24, 25), by(25, 25), by(25, 24.9)]).toEqual([false, false, true])
    const lengths = (size: number) =>
      coupled([plainHole('1', 20)], [plainKind('x', size), plainKind('y', 30)], {
        ranks: [{ quantity: 'length', less: 'x', more: 'y' }],
      }).coupling.ties
    expect([lengths(30), lengths(30.1)]).toEqual([false, true])
  })

  test('against the readings clash with no pair at all', () => {
    const { clash } = coupled([plainHole('1', 26), plainHole('2', 20)], kinds, less('grip'))
    expect(clash()).toEqual([])
    expect(clash('1 b', '2 a')).toEqual([])
  })

  test('reach along a chain', () => {
    const { clash } = coupled([plainHole('1'), plainHole('2'), plainHole('3')], kinds, {
      ranks: [
        { quantity: 'grip', less: '1', more: '2' },
        { quantity: 'grip', less: '2', more: '3' },
      ],
    })
    expect(clash('1 c', '2 b', '3 a')).toEqual(['1 c', '3 a'])
    expect(clash('1 a', '2 b', '3 c')).toBeNull()
  })

  test('a kind that goes in a tied hole is tied with it, another is not', () => {
    const { coupling, pair } = coupled(
      [plainHole('1'), plainHole('2'), plainHole('3', 20)],
      [plainKind('a', 30, 1), plainKind('b', 36, 1)],
      less('grip'),
      ['1 b', '2 b'],
    )
    expect([coupling.isTiedKind(0), coupling.isTiedKind(1)]).toEqual([true, false])
    expect([coupling.isTiedHole(0), coupling.isTiedHole(1), coupling.isTiedHole(2)]).toEqual([true, true, false])
    expect([coupling.binds(pair('3 a')), coupling.binds(pair('3 b')), coupling.binds(pair('1 b'))]).toEqual([
      true,
      false,
      true,
    ])
  })
})

describe('trials', () => {
  const tried = (trial: { stickOut: number } | { proud: number } | { turns: number }, kind: string): Partial<Face> => ({
    trials: [{ hole: '1', kind, ...trial } as Trial],
  })

  test('a stick-out gives the grip to every other bolt', () => {
    // 9 of a ×40: the grip is 31, so a ×37 is the shortest and a ×43 the longest.
    const kinds = [
      plainKind('c', 40),
      plainKind('s', 37),
      plainKind('l', 43),
      plainKind('t', 36.9),
      plainKind('m', 43.1),
    ]
    const { clash, coupling } = coupled([plainHole('1')], kinds, tried({ stickOut: 9 }, 'c'))
    expect([coupling.isTiedHole(0), coupling.isTiedKind(0)]).toEqual([true, true])
    expect(['1 c', '1 s', '1 l', '1 t', '1 m'].map((pair) => clash(pair))).toEqual([null, null, null, ['1 t'], ['1 m']])
  })

  test('a stick-out gives the length to every other hole', () => {
    // 10 at a grip of 22: 32. A grip of 26 wants 32 to 38, one of 20 26 to 32.
    const holes = [
      plainHole('1', 22),
      plainHole('2', 26),
      plainHole('3', 26.1),
      plainHole('4', 20),
      plainHole('5', 19.9),
    ]
    const { clash } = coupled(holes, [plainKind('x', from(30, 40))], tried({ stickOut: 10 }, 'x'))
    expect(['1 x', '2 x', '3 x', '4 x', '5 x'].map((pair) => clash(pair))).toEqual([null, null, ['3 x'], null, ['5 x']])
  })

  test('a bolt dropped in: past the mouth, less anything up to its tip', () => {
    // 8 proud with a mouth of 1 and a tip of 2: it sticks out 9 to 11, so the grip is 29 to 31. Others need 7 to 13 past the face.
    const hole = plainHole('1', undefined, { mouth: 1, bottomDepth: 13 })
    const kinds = [
      plainKind('c', 40, 1, { tip: 2 }),
      plainKind('s', 36),
      plainKind('l', 44),
      plainKind('t', 35.9),
      plainKind('m', 44.1),
    ]
    const { clash } = coupled([hole], kinds, tried({ proud: 8 }, 'c'))
    expect(['1 s', '1 l', '1 t', '1 m'].map((pair) => clash(pair))).toEqual([null, null, ['1 t'], ['1 m']])
  })

  test('turns of an M6 are millimetres to half a turn', () => {
    // 8 turns of a sharp ×40: 7.5 to 8.5 out, the grip 31.5 to 32.5.
    const kinds = [
      plainKind('c', 40),
      plainKind('s', 37.5),
      plainKind('l', 44.5),
      plainKind('t', 37.4),
      plainKind('m', 44.6),
    ]
    const { clash } = coupled([plainHole('1')], kinds, tried({ turns: 8 }, 'c'))
    expect(['1 s', '1 l', '1 t', '1 m'].map((pair) => clash(pair))).toEqual([null, null, ['1 t'], ['1 m']])
  })

  test('against the readings clash with no pair at all', () => {
    expect(coupled([plainHole('1', 20)], [plainKind('a', 30)], tried({ stickOut: 8 }, 'a')).clash()).toEqual([])
    expect(coupled([plainHole('1', 20)], [plainKind('a', 30)], tried({ stickOut: 10 }, 'a')).clash()).toBeNull()
    expect(coupled([plainHole('1', 20)], [plainKind('a', 30)], tried({ proud: 10.1 }, 'a')).clash()).toEqual([])
    expect(coupled([plainHole('1', 20)], [plainKind('a', 30)], tried({ proud: 9.9 }, 'a')).clash()).toEqual([])
    expect(coupled([plainHole('1', 20)], [plainKind('a', 30)], tried({ proud: 10 }, 'a')).clash()).toBeNull()
  })
})

describe('one gasket sheet', () => {
  const kinds = [plainKind('a', 30, 1), plainKind('c', 40, 1)]
  const sheet = { gasket: from(0, 10) }

  test('is as thick at one hole as at another', () => {
    // At a grip of 20 a ×40 asks for a sheet of 8 or more, a ×30 for one of 4 or less.
    const { clash, problem } = coupled([plainHole('1', 20), plainHole('2', 20), plainHole('3', 24)], kinds, sheet)
    expect(gasketTies(problem)).toEqual([
      [0, 1],
      [0, 2],
    ])
    expect(clash('1 c', '2 a')).toEqual(['1 c', '2 a'])
    expect(clash('1 c')).toBeNull()
    expect(clash('2 a')).toBeNull()
    // At 24 a ×30 takes none at all, and a ×40 from 4 on: 4 suits both.
    expect(clash('2 a', '3 c')).toBeNull()
    expect(clash('1 c', '3 c')).toBeNull()
  })

  test('of certain thickness, or one to each hole, ties nothing', () => {
    const two = [plainHole('1', 20), plainHole('2', 20)]
    expect(coupled(two, kinds, { gasket: 4 }).coupling.ties).toBe(false)
    const own = two.map((hole) => ({ ...hole, ...sheet }))
    expect(coupled(own, kinds).coupling.ties).toBe(false)
    expect(coupled([plainHole('1', 20)], kinds, sheet).coupling.ties).toBe(false)
    expect(gasketTies(coupled(own, kinds).problem)).toEqual([])
  })

  test('has no part in a hole with a sheet of its own, though another line ties that', () => {
    const holes = [plainHole('1', 20), plainHole('2', 20, sheet), plainHole('3', 20)]
    const ranks: Rank[] = [{ quantity: 'threadDepth', less: '2', more: '9' }]
    const deep = plainHole('9', 20, { ...M8, threadDepth: from(5, 12), gasket: 0 })
    const { clash } = coupled([...holes, deep], kinds, { ...sheet, ranks }, ['9 a', '9 c'])
    expect(clash('1 c', '2 a')).toBeNull()
    expect(clash('1 c', '3 a')).toEqual(['1 c', '3 a'])
  })

  test('each face has its own', () => {
    const face = (id: string): Face => ({ id, holes: [plainHole('1', 20), plainHole('2', 20)], gasket: from(0, 10) })
    const problem = problemsOf({ gripbook: 'unit/1', faces: [face('one'), face('two')], kinds })[0]!
    expect(gasketTies(problem)).toEqual([
      [0, 1],
      [2, 3],
    ])
    const bins = 3
    const coupling = new Coupling(
      problem,
      new Uint8Array(4 * bins).map((_, pair) => (pair % bins < 2 ? 1 : 0)),
    )
    expect(coupling.clash([1, 2 * bins])).toBeNull()
    expect(coupling.clash([1, bins])).toEqual([1, bins])
    expect(coupling.clash([2 * bins + 1, 3 * bins])).toEqual([2 * bins + 1, 3 * bins])
  })
})

describe('figures that contradict each other in one place do not drag the rest down', () => {
  test('a hole with a bottom above its thread', () => {
    const ranks: Rank[] = [{ quantity: 'grip', less: '1', more: '2' }]
    const { clash } = coupled(
      [plainHole('1'), plainHole('2', from(20, 40), { bottomDepth: 11 })],
      [plainKind('a', 30, 1)],
      { ranks },
      ['2 a'],
    )
    expect(clash()).toBeNull()
    expect(clash('1 a')).toBeNull()
  })

  test('a kind with a thread longer than itself', () => {
    const ranks: Rank[] = [{ quantity: 'length', less: 'x', more: 'y' }]
    const { clash } = coupled(
      [plainHole('1', 20)],
      [plainKind('x', from(20, 40), 1), plainKind('y', 30, 1, { threadLength: 31 })],
      { ranks },
      ['1 y'],
    )
    expect(clash()).toBeNull()
    expect(clash('1 x')).toBeNull()
  })

  test('but a bottom that is only perhaps above the thread holds the thread up', () => {
    // The thread of 2 goes no deeper than its bottom at 9.9, and that of 1 no deeper than the thread of 2.
    const ranks: Rank[] = [{ quantity: 'threadDepth', less: '1', more: '2' }]
    const at = (bottom: number) =>
      coupled(
        [
          plainHole('1', 20, { threadDepth: from(5, 20), bottomDepth: 20 }),
          plainHole('2', 20, { threadDepth: from(5, 12), bottomDepth: bottom, ...M8 }),
        ],
        [plainKind('a', 30, 1)],
        { ranks },
        ['2 a'],
      ).clash('1 a')
    expect(at(10)).toBeNull()
    expect(at(9.9)).toEqual(['1 a'])
  })
})

test('the same question is answered the same, in whatever order', () => {
  const { clash } = coupled([plainHole('1', 22), plainHole('2', 33)], [plainKind('x', from(30, 40))])
  const first = clash('1 x', '2 x')
  expect(clash('2 x', '1 x')).toEqual(first)
  expect(clash('1 x')).toBeNull()
  expect(clash('1 x', '2 x')).toEqual(first)
})

// Faces with rank lines, trials, rough lengths or one sheet, that the enumeration is quick on.
const TIED = [
  2, 7, 10, 43, 77, 82, 96, 97, 99, 107, 112, 118, 122, 145, 150, 156, 160, 163, 173, 186, 188, 189, 200, 209, 220, 227,
  277, 280,
]

test('on small faces where much is tied the answer is that of enumerating all placements', async () => {
  for (const seed of TIED) {
    const unit = smallUnit(seed)
    const answer = (await place(unit)).faces[0]!
    expect(disagreements(unit, answer), `seed ${seed}`).toEqual([])
  }
})
