import { describe, expect, test } from 'vitest'
import type { Face, Hole, Kind, Unit } from '../unit.ts'
import { fitChance } from './chance.ts'
import { problemsOf } from './problem.ts'
import { plainHole, plainKind } from './testing/plainFace.ts'
import { judgeAll } from './tray.ts'
import { weightsOf } from './weights.ts'

const EMPTY = 1 // the bin of the holes that stay empty

function weighed(holes: Hole[], kinds: Kind[], more: Partial<Face> = {}, unit: Partial<Unit> = {}) {
  const problem = problemsOf({ gripbook: 'unit/1', faces: [{ id: 'cover', holes, kinds, ...more }], ...unit })[0]!
  return { problem, ...weightsOf(problem, judgeAll(problem), kinds.length + EMPTY) }
}
const shares = (own: Float64Array) => [...own].map((log) => Math.exp(-log))
const TARGETS = [1, 1.125, 1.25, 1.375, 1.5, 1.625, 1.75, 1.875, 2, 2.125, 2.25, 2.375, 2.5]
const close = (figures: number[], expected: number[]) => {
  expect(figures).toHaveLength(expected.length)
  figures.forEach((figure, i) => {
    expect(figure).toBeCloseTo(expected[i]!, 9)
  })
}
/** The bell of a middle and a spread over the targets, adding up to 1. */
const bell = (middle: number, spread: number) => {
  const heights = TARGETS.map((target) => Math.exp(-((target - middle) ** 2) / (2 * spread ** 2)))
  return heights.map((height) => height / heights.reduce((a, b) => a + b))
}
const noHabit = { weigh: { habit: false } }

describe('targets of engagement', () => {
  const of = (...materials: (Hole['material'] | undefined)[]) =>
    weighed(
      materials.map((material, i) => plainHole(String(i), 20, material === undefined ? {} : { material })),
      [plainKind('a', 30, 1)],
    ).targets

  test.each<[Hole['material'] | undefined, number, number]>([
    ['cast aluminium', 1.9, 0.4],
    ['wrought aluminium', 1.7, 0.4],
    ['magnesium', 2, 0.4],
    ['grey iron', 1.5, 0.35],
    ['ductile iron', 1.3, 0.3],
    ['steel', 1.2, 0.3],
    [{ name: 'steel', shearStrength: 300 }, 1.2, 0.3],
    ['something else', 1.6, 0.5],
    [undefined, 1.6, 0.5],
  ])('in %s lie about %d diameters, spread %d', (material, middle, spread) => {
    close(of(material), bell(middle, spread))
  })

  test('of several materials lie about their mean, spread as the widest', () => {
    close(of('steel', 'cast aluminium'), bell(1.55, 0.4))
    close(of('steel', 'steel', 'cast aluminium', undefined), bell((1.2 + 1.2 + 1.9 + 1.6) / 4, 0.5))
  })

  test('are those of the face’s material where the hole has none', () => {
    close(weighed([plainHole('1', 20)], [plainKind('a', 30, 1)], { material: 'steel' }).targets, bell(1.2, 0.3))
    close(
      weighed([plainHole('1', 20, { material: 'magnesium' })], [plainKind('a', 30, 1)], { material: 'steel' }).targets,
      bell(2, 0.4),
    )
  })

  test('are one, of no moment, where habit does not count', () => {
    const { targets, habit } = weighed([plainHole('1', 20)], [plainKind('a', 30, 1)], noHabit)
    expect(targets).toEqual([1])
    expect(habit.map((one) => [...one])).toEqual([[0, 0]])
  })
})

describe('the designer’s habit', () => {
  test('weighs how far the engagement is from the target, in half steps to the next length', () => {
    // 10 of thread in at grip 20; half the step from 30 to 35 is 2.5.
    const { habit } = weighed([plainHole('1', 20)], [plainKind('a', 30, 1)])
    expect(habit).toHaveLength(13)
    close(
      habit.map((one) => one[0]!),
      TARGETS.map((target) => ((10 - 6 * target) / 2.5) ** 2 / 2),
    )
    expect(habit.every((one) => one[1] === 0)).toBe(true)
  })

  const first = (hole: Partial<Hole>, kind: Partial<Kind> = {}) =>
    weighed([plainHole('1', 20, { threadDepth: 14, bottomDepth: 14, ...hole })], [plainKind('a', 30, 1, kind)])
      .habit[0]![0]!
  const bent = (engaged: number, halfStep = 2.5, diameter = 6) => ((engaged - diameter) / halfStep) ** 2 / 2

  test('takes the middle of what is read', () => {
    expect(first({ grip: { atLeast: 20, atMost: 23 } })).toBeCloseTo(bent(8.5), 9)
    expect(first({}, { tip: { atLeast: 1, atMost: 2 } })).toBeCloseTo(bent(8.5), 9)
    expect(first({ mouth: 1, bottomDepth: 15 })).toBeCloseTo(bent(9), 9)
  })

  test('no more than the hole’s thread is engaged, and none is none', () => {
    expect(first({ ending: 'through', threadDepth: 7 })).toBeCloseTo(bent(7), 9)
    expect(first({ ending: 'through', threadDepth: { atLeast: 7, atMost: 8 } })).toBeCloseTo(bent(7.5), 9)
    expect(first({ ending: 'through', threadDepth: { atLeast: 7 } })).toBeCloseTo(bent(10), 9)
    // Grip 20 to 50 with a bolt of 30: from −20 to 10, in the middle 5 short of the face.
    expect(first({ grip: { atLeast: 20, atMost: 50 } })).toBeCloseTo(bent(0), 9)
  })

  test('takes the least where there is no most', () => {
    // A length of 30 or more: 10 or more engaged, up to the thread of 14.
    expect(first({}, { length: { atLeast: 30 } })).toBeCloseTo(bent(10), 9)
  })

  test('steps as the standard lengths do', () => {
    // From 70 to 80 the step is 10, from 16 to 20 it is 4. Below the first length and past the last it is taken as 5.
    expect(first({ grip: 60 }, { length: 70 })).toBeCloseTo(bent(10, 5), 9)
    expect(first({ grip: 6 }, { length: 16 })).toBeCloseTo(bent(10, 2), 9)
    expect(first({ grip: 9.5 }, { length: 19.5 })).toBeCloseTo(bent(10, 2), 9)
    expect(first({ grip: 10 }, { length: 20 })).toBeCloseTo(bent(10, 2.5), 9)
    expect(first({ grip: 120 }, { length: 130 })).toBeCloseTo(bent(10, 2.5), 9)
    expect(
      first({ grip: 0, threadDepth: 7, bottomDepth: 7, minimumEngagement: 1 }, { length: 7, threadLength: 7 }),
    ).toBeCloseTo(bent(7, 2.5), 9)
  })

  test('goes by the thinnest thread that the hole may have', () => {
    expect(first({ thread: ['M8', 'M6'] })).toBeCloseTo(bent(10), 9)
    expect(first({ thread: 'M8' }, { thread: 'M8' })).toBeCloseTo(bent(10, 2.5, 8), 9)
  })

  test('weighs what may be, not what cannot', () => {
    const { habit, own } = weighed([plainHole('1', 20)], [plainKind('a', 60, 1), plainKind('b', 30, 1)])
    expect(habit[0]![0]).toBe(0)
    expect(habit[0]![1]).toBeGreaterThan(0)
    expect(own[0]).toBe(0)
  })
})

describe('what was found', () => {
  const three = [plainKind('a', 30, 1), plainKind('b', 30, 1), plainKind('c', 30, 1)]
  const found = (hole: Partial<Hole>, more: Partial<Face> = noHabit, unit: Partial<Unit> = {}, kinds = three) =>
    shares(weighed([plainHole('1', 20, hole)], kinds, more, unit).own)

  test('is right but for a chance that hangs on the history, shared among the other kinds', () => {
    close(found({ asFound: 'b' }), [0.05, 0.9, 0.05, 1])
    close(found({ asFound: 'b' }, { ...noHabit, history: 'never opened' }), [0.005, 0.99, 0.005, 1])
    close(found({ asFound: 'b' }, { ...noHabit, history: 'opened before' }), [0.125, 0.75, 0.125, 1])
    close(found({ asFound: 'b' }, noHabit, { history: 'opened before' }), [0.125, 0.75, 0.125, 1])
  })

  test('an empty hole speaks for no kind', () => {
    close(found({ asFound: 'none' }), [0.05, 0.05, 0.05, 1])
  })

  test('what nobody knows weighs nothing, nor does the only kind', () => {
    close(found({}), [1, 1, 1, 1])
    close(found({ asFound: 'a' }, noHabit, {}, [plainKind('a', 30, 1)]), [1, 1])
    close(found({ asFound: 'b' }, noHabit, {}, three.slice(0, 2)), [0.1, 0.9, 1])
  })

  test('does not count where the face says so', () => {
    close(found({ asFound: 'b' }, { weigh: { asFound: false } }), [1, 1, 1, 1])
    close(found({ asFound: 'b' }, { weigh: { asFound: true, habit: false } }), [0.05, 0.9, 0.05, 1])
  })
})

describe('units before', () => {
  const kinds = [plainKind('a', 30, 1), plainKind('b', 30, 1), plainKind('c', 60, 1)]
  const before = (unitsBefore: Record<string, number>, more: Partial<Face> = noHabit) =>
    shares(weighed([plainHole('1', 20, { unitsBefore })], kinds, more).own)

  test('weigh as often as a kind was seen, and half a time more for each that is possible', () => {
    // Two kinds fit; 6 + 2 seen, half for each: 9.
    close(before({ a: 6, b: 2 }), [6.5 / 9, 2.5 / 9, 1, 1])
    close(before({ a: 6 }), [6.5 / 7, 0.5 / 7, 1, 1])
    close(before({ a: 6, none: 1, c: 3 }), [6.5 / 11, 0.5 / 11, 1, 1])
    close(before({}), [0.5, 0.5, 1, 1])
  })

  test('a kind named like something that every object has was still never seen', () => {
    const odd = [plainKind('toString', 30, 1), plainKind('b', 30, 1)]
    const { own } = weighed([plainHole('1', 20, { unitsBefore: { b: 3 } })], odd, noHabit)
    close(shares(own), [0.5 / 4, 3.5 / 4, 1])
  })

  test('multiply with what was found', () => {
    const { own } = weighed([plainHole('1', 20, { unitsBefore: { a: 1 }, asFound: 'a' })], kinds.slice(0, 2), noHabit)
    close(shares(own), [0.9 * (1.5 / 2), 0.1 * (0.5 / 2), 1])
  })
})

describe('a pair that only may fit', () => {
  test('weighs as the share of the readings that let it', () => {
    const { own, problem } = weighed([plainHole('1', { atLeast: 20, atMost: 28 })], [plainKind('a', 30, 1)], noHabit)
    const share = fitChance(problem.holes[0]!, problem.kinds[0]!)
    expect(share).toBeGreaterThan(0.4)
    expect(share).toBeLessThan(0.6)
    close(shares(own), [share, 1])
  })

  test('and never nothing', () => {
    // 24 is the most that fits: one figure of a wide span.
    const { own, problem } = weighed([plainHole('1', { atLeast: 24, atMost: 60 })], [plainKind('a', 30, 1)], noHabit)
    expect(fitChance(problem.holes[0]!, problem.kinds[0]!)).toBe(0)
    close(shares(own), [1e-6, 1])
  })
})

test('where neither counts, every placement counts the same', () => {
  const { own, targets, habit } = weighed(
    [plainHole('1', { atLeast: 20, atMost: 28 }, { asFound: 'a', unitsBefore: { a: 4 } })],
    [plainKind('a', 30, 1), plainKind('b', 30, 1)],
    { weigh: { habit: false, asFound: false } },
  )
  expect([...own]).toEqual([0, 0, 0])
  expect(targets).toEqual([1])
  expect([...habit[0]!]).toEqual([0, 0, 0])
})

test('a tray of two faces weighs each by its own wish', () => {
  const hole = () => plainHole('1', 20, { asFound: 'a' })
  const problem = problemsOf({
    gripbook: 'unit/1',
    faces: [
      { id: 'one', holes: [hole()], weigh: { habit: false, asFound: true } },
      { id: 'two', holes: [hole()], weigh: { habit: true, asFound: false } },
      { id: 'three', holes: [hole()], weigh: { habit: false, asFound: false } },
    ],
    kinds: [plainKind('a', 30, 2), plainKind('b', 30, 2)],
  })[0]!
  const { own, habit, targets } = weightsOf(problem, judgeAll(problem), 3)
  expect(targets).toHaveLength(13)
  close(shares(own), [0.9, 0.1, 1, 1, 1, 1, 1, 1, 1])
  close([...habit[0]!], [0, 0, 0, 1.28, 1.28, 0, 0, 0, 0])
})
