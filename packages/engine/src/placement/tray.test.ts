import { describe, expect, test } from 'vitest'
import type { Face, Hole, Kind } from '../unit.ts'
import { problemsOf } from './problem.ts'
import type { Tools } from './solver.ts'
import { plainHole, plainKind, plainUnit } from './testing/plainFace.ts'
import { changeOf, fewestEmpty, judgeAll, mayPairs, openTray, taskOf } from './tray.ts'

// A ×30 takes grips from 18 to 24, a ×35 from 23 to 29, a ×40 from 28 to 34.
const problemOf = (holes: Hole[], kinds: Kind[], more: Partial<Face> = {}) =>
  problemsOf(plainUnit(holes, kinds, more))[0]!
const trayOf = (holes: Hole[], kinds: Kind[], more: Partial<Face> = {}, tools: Tools = {}) =>
  openTray(problemOf(holes, kinds, more), tools)
const x = (count?: number) => plainKind('x', { atLeast: 30, atMost: 40 }, count)
const NO = Number.POSITIVE_INFINITY

describe('an open tray', () => {
  test('knows the pairs that their own readings leave, and of which there is a bolt', () => {
    const tray = trayOf(
      [plainHole('1', 20), plainHole('2', { atLeast: 24, atMost: 26 })],
      [plainKind('a', 30, 1), plainKind('b', 35, 0), plainKind('c', 40, 1)],
    )
    expect(tray.bins).toBe(4)
    // 1: a alone. 2: a at 24, b would fit but there is none. The last bin is the empty hole's, never a pair.
    expect([...tray.possible]).toEqual([1, 0, 0, 0, 1, 0, 0, 0])
    expect(tray.judged.map((judged) => judged?.verdict)).toEqual([
      'fits',
      'cannot',
      'cannot',
      undefined,
      'may',
      'fits',
      'cannot',
      undefined,
    ])
    expect([tray.coupling, tray.clashes]).toEqual([null, []])
  })

  test('leaves out pairs that rank lines alone rule out', () => {
    // The grip of 1 is no less than that of 2, which is 31: no ×30 for 1.
    const tray = trayOf([plainHole('1'), plainHole('2', 31)], [plainKind('a', 30, 1), plainKind('c', 40, 2)], {
      ranks: [{ quantity: 'grip', less: '2', more: '1' }],
    })
    expect([...tray.possible]).toEqual([0, 1, 0, 0, 1, 0])
    // All that is left can stand together: 1 and 2 both at 31.
    expect(tray.coupling).toBeNull()
  })

  test('keeps what is tied where not all that is left can stand together', () => {
    const tied = trayOf([plainHole('1', 22), plainHole('2', 33)], [x(2)])
    expect(tied.coupling).not.toBeNull()
    expect(tied.clashes).toEqual([[0, 2]])
    const free = trayOf([plainHole('1', 22), plainHole('2', 26)], [x(2)])
    expect([free.coupling, free.clashes]).toEqual([null, []])
  })

  test('judges a trial with the pair that was tried and no other', () => {
    const trial = { hole: '1', kind: 'a', stickOut: 13 }
    const judged = judgeAll(
      problemOf([plainHole('1'), plainHole('2')], [plainKind('a', 30, 1), plainKind('b', 35, 1)], { trials: [trial] }),
    )
    expect([0, 1, 3, 4].map((pair) => judged[pair]!.verdict)).toEqual(['cannot', 'may', 'may', 'may'])
  })

  test('takes over what it knows of holes and kinds that are the same', () => {
    const problem = problemOf([plainHole('1', 20), plainHole('2', 26)], [plainKind('a', 30, 1), plainKind('b', 35, 1)])
    const known = openTray(problem, {})
    const holes = [problem.holes[0]!, { ...problem.holes[1]!, grip: { lo: 20e6, hi: 20e6 } }]
    const judged = judgeAll({ ...problem, holes }, known)
    expect(judged[0]).toBe(known.judged[0])
    expect(judged[1]).toBe(known.judged[1])
    expect(judged[3]).not.toBe(known.judged[3])
    expect(judged[3]!.verdict).toBe('fits')
    const kinds = [problem.kinds[0]!, { ...problem.kinds[1]!, length: { lo: 30e6, hi: 30e6 } }]
    const other = judgeAll({ ...problem, kinds }, known)
    expect(other[0]).toBe(known.judged[0])
    expect(other[1]).not.toBe(known.judged[1])
    expect(other[1]!.verdict).toBe('fits')
    expect(openTray({ ...problem, kinds }, {}, known).judged[0]).toBe(known.judged[0])
  })

  test('takes nothing over where a trial is missing', () => {
    const problem = problemOf([plainHole('1')], [plainKind('a', 30, 1)], {
      trials: [{ hole: '1', kind: 'a', stickOut: 13 }],
    })
    const known = openTray(problem, {})
    expect(known.judged[0]!.verdict).toBe('cannot')
    expect(judgeAll({ ...problem, trials: [] }, known)[0]!.verdict).toBe('may')
    expect(judgeAll(problem, known)[0]).toBe(known.judged[0])
  })
})

describe('a task', () => {
  const tray = () => trayOf([plainHole('1', 20), plainHole('2', 23.5)], [plainKind('a', 30, 3), plainKind('b', 35)])

  test('prices what is possible and forbids the rest', () => {
    expect(taskOf(tray(), 0, (pair) => pair + 10)).toEqual({
      items: 2,
      bins: 3,
      cost: Float64Array.from([10, NO, NO, 13, 14, NO]),
      capacity: [3, NO, 0],
    })
  })

  test('lets so many holes be empty, at their price', () => {
    expect(taskOf(tray(), 2, (pair) => pair + 10, 100)).toMatchObject({
      cost: Float64Array.from([10, NO, 112, 13, 14, 115]),
      capacity: [3, NO, 2],
    })
    expect(taskOf(tray(), 1, () => 0).cost).toEqual(Float64Array.from([0, NO, 0, 0, 0, 0]))
  })
})

test('a change is what is not as found; what nobody knows is none', () => {
  const tray = trayOf(
    [
      plainHole('1', 20, { asFound: 'a' }),
      plainHole('2', 20, { asFound: 'b' }),
      plainHole('3', 20, { asFound: 'none' }),
      plainHole('4', 20),
    ],
    [plainKind('a', 30), plainKind('b', 30)],
  )
  expect(Array.from({ length: 12 }, (_, pair) => changeOf(tray, pair))).toEqual([0, 1, 1, 1, 0, 1, 1, 1, 0, 0, 0, 0])
})

describe('the fewest empty holes', () => {
  const empty = async (holes: Hole[], kinds: Kind[], more: Partial<Face> = {}) => {
    const tray = trayOf(holes, kinds, more)
    const found = await fewestEmpty(tray)
    return found && [found.empty, [...found.placement.bin]]
  }

  test('are none where every hole has a bolt', async () => {
    expect(
      await empty([plainHole('1', 20), plainHole('2', 23.5)], [plainKind('a', 30, 1), plainKind('b', 35, 1)]),
    ).toEqual([0, [0, 1]])
  })

  test('are those for which there is none', async () => {
    expect(
      (await empty([plainHole('1', 20), plainHole('2', 20), plainHole('3', 20)], [plainKind('a', 30, 1)]))![0],
    ).toBe(2)
    expect(await empty([plainHole('1', 20), plainHole('2', 50)], [plainKind('a', 30, 2)])).toEqual([1, [0, 1]])
    expect(await empty([plainHole('1', 50)], [plainKind('a', 30, 2)])).toEqual([1, [1]])
  })

  test('are one where one length cannot serve two', async () => {
    expect((await empty([plainHole('1', 22), plainHole('2', 33)], [x(2)]))![0]).toBe(1)
  })

  test('there is no answer where a line is against the readings, whatever stays empty', async () => {
    const ranks: Face['ranks'] = [{ quantity: 'grip', less: '2', more: '1' }]
    expect(await empty([plainHole('1', 20), plainHole('2', 26)], [plainKind('a', 30, 2)], { ranks })).toBeNull()
  })
})

describe('pairs that stand in some placement', () => {
  const may = async (holes: Hole[], kinds: Kind[], more: Partial<Face> = {}) => {
    const tray = trayOf(holes, kinds, more)
    const { empty, placement } = (await fewestEmpty(tray))!
    return [...(await mayPairs(tray, empty, placement))]
  }

  test('by counts: a bolt that another hole must have is not open', async () => {
    const kinds = [plainKind('a', 30, 1), plainKind('b', 35, 1)]
    expect(await may([plainHole('1', 20), plainHole('2', 23.5)], kinds)).toEqual([1, 0, 0, 0, 1, 0])
    expect(await may([plainHole('1', 23.5), plainHole('2', 23.5)], kinds)).toEqual([1, 1, 0, 1, 1, 0])
  })

  test('either of two holes may be the empty one', async () => {
    expect(await may([plainHole('1', 20), plainHole('2', 20)], [plainKind('a', 30, 1)])).toEqual([1, 1, 1, 1])
  })

  test('with what is tied: grips in order leave the shorter bolt to the shorter grip', async () => {
    // One ×30 and one ×40 for two grips that nobody read: the rank line says which.
    const kinds = [plainKind('a', 30, 1), plainKind('c', 40, 1)]
    const ranks: Face['ranks'] = [{ quantity: 'grip', less: '1', more: '2' }]
    expect(await may([plainHole('1'), plainHole('2')], kinds, { ranks })).toEqual([1, 0, 0, 0, 1, 0])
    expect(
      await may([plainHole('1'), plainHole('2')], [plainKind('a', 30, 2), plainKind('c', 40, 2)], { ranks }),
    ).toEqual([1, 1, 0, 1, 1, 0])
  })

  test('with one length: the hole that it does not suit takes the other kind', async () => {
    // x may be long or short, and 3 takes x alone, at 32 to 38: then 2, from 39 on, cannot have it.
    const only = { needs: ['black'] }
    const kinds = [{ ...x(3), features: ['black'] }, plainKind('l', 40, 2), plainKind('s', 30, 2)]
    expect(await may([plainHole('1', 22), plainHole('2', 33), plainHole('3', 26, only)], kinds)).toEqual([
      1, 0, 1, 0, 0, 1, 0, 0, 1, 0, 0, 0,
    ])
  })

  test('with what is tied: every pair that is open is found, whichever was seen first', async () => {
    // One length of x for all: 2 and 3 never both, 1 with either; y and z go in everywhere.
    const kinds = [
      { ...x(3), features: ['black'] },
      plainKind('y', { atLeast: 28, atMost: 45 }, 3),
      plainKind('z', 40, 1),
    ]
    const all = await may([plainHole('1', 22), plainHole('2', 33), plainHole('3', 26), plainHole('4', 22)], kinds)
    // z fits 2 alone. x and y each have one length: where x has 1 and 4 (28 to 34), 2 is left to y or z, and so on; nothing else is out.
    expect(all).toEqual([1, 1, 0, 0, 1, 1, 1, 0, 1, 1, 0, 0, 1, 1, 0, 0])
  })
})
