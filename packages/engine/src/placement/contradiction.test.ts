import { describe, expect, test } from 'vitest'
import type { Face, Hole, Rank, Trial } from '../unit.ts'
import { setContradictionsAside } from './contradiction.ts'
import { problemsOf } from './problem.ts'
import { plainHole, plainKind, plainUnit } from './testing/plainFace.ts'

const rank = (less: string, more: string, quantity: Rank['quantity'] = 'grip'): Rank => ({ quantity, less, more })
const open = (...ids: string[]) => ids.map((id) => plainHole(id))

/** The sets of lines that clash, and what is left, each line told in a few letters. */
function aside(holes: Hole[], more: Partial<Face>, kinds = [plainKind('a', 30), plainKind('b', 35)]) {
  const problem = problemsOf(plainUnit(holes, kinds, more))[0]!
  const { problem: left, contradictions } = setContradictionsAside(problem)
  const names = (quantity: Rank['quantity'], number: number) =>
    (quantity === 'length' ? problem.kinds : problem.holes)[number]!.source.id
  const rankWords = ({ quantity, less, more }: (typeof problem.ranks)[number]) =>
    `${quantity === 'grip' ? '' : `${quantity} `}${names(quantity, less)}<${names(quantity, more)}`
  const trialWords = ({ source }: (typeof problem.trials)[number]) => `${source.kind} in ${source.hole}`
  expect({ ...left, ranks: [], trials: [] }).toEqual({ ...problem, ranks: [], trials: [] })
  return {
    sets: contradictions.map((set) =>
      set.map((line) => ('rank' in line ? rankWords(line.rank) : trialWords(line.trial))),
    ),
    left: [...left.ranks.map(rankWords), ...left.trials.map(trialWords)],
  }
}

test('no lines, no contradiction', () => {
  expect(aside(open('1'), {})).toEqual({ sets: [], left: [] })
})

test('lines that agree all stay', () => {
  expect(aside(open('1', '2', '3'), { ranks: [rank('1', '2'), rank('2', '3'), rank('1', '3')] })).toEqual({
    sets: [],
    left: ['1<2', '2<3', '1<3'],
  })
})

describe('a ring', () => {
  test('of two or three lines never holds, though a tie of all would', () => {
    expect(aside(open('1', '2'), { ranks: [rank('1', '2'), rank('2', '1')] })).toEqual({
      sets: [['1<2', '2<1']],
      left: [],
    })
    expect(aside(open('1', '2', '3'), { ranks: [rank('1', '2'), rank('2', '3'), rank('3', '1')] }).sets).toEqual([
      ['1<2', '2<3', '3<1'],
    ])
  })

  test('a line of a hole with itself is one', () => {
    expect(aside(open('1', '2'), { ranks: [rank('1', '1'), rank('1', '2')] })).toEqual({
      sets: [['1<1']],
      left: ['1<2'],
    })
  })

  test('lines that lead to it or away have no part in it', () => {
    const ranks = [rank('0', '1'), rank('1', '2'), rank('2', '1'), rank('2', '3')]
    expect(aside(open('0', '1', '2', '3'), { ranks })).toEqual({ sets: [['1<2', '2<1']], left: ['0<1', '2<3'] })
  })

  test('goes in one quantity alone', () => {
    const ranks = [rank('1', '2'), rank('2', '1', 'threadDepth')]
    const holes = [
      plainHole('1', undefined, { threadDepth: { atLeast: 9 }, bottomDepth: 20 }),
      plainHole('2', undefined, { threadDepth: { atLeast: 9 }, bottomDepth: 20 }),
    ]
    expect(aside(holes, { ranks })).toEqual({ sets: [], left: ['1<2', 'threadDepth 2<1'] })
    expect(aside(holes, { ranks: [...ranks, rank('1', '2', 'threadDepth'), rank('2', '1')] })).toEqual({
      sets: [
        ['1<2', '2<1'],
        ['threadDepth 2<1', 'threadDepth 1<2'],
      ],
      left: [],
    })
  })

  test('of holes is not one of kinds with the same numbers', () => {
    const kinds = [plainKind('a', { atLeast: 20 }), plainKind('b', { atLeast: 20 })]
    expect(aside(open('1', '2'), { ranks: [rank('1', '2'), rank('b', 'a', 'length')] }, kinds).sets).toEqual([])
    expect(aside(open('1', '2'), { ranks: [rank('a', 'b', 'length'), rank('b', 'a', 'length')] }, kinds).sets).toEqual([
      ['length a<b', 'length b<a'],
    ])
  })

  test('is told apart from another ring, whichever it comes after', () => {
    const ranks = [rank('1', '2'), rank('3', '4'), rank('2', '1'), rank('4', '3')]
    expect(aside(open('1', '2', '3', '4'), { ranks }).sets).toEqual([
      ['1<2', '2<1'],
      ['3<4', '4<3'],
    ])
  })

  test('that leads to another ring is told apart from it', () => {
    const ranks = [rank('1', '2'), rank('2', '1'), rank('2', '3'), rank('3', '4'), rank('4', '3')]
    expect(aside(open('1', '2', '3', '4'), { ranks })).toEqual({
      sets: [
        ['1<2', '2<1'],
        ['3<4', '4<3'],
      ],
      left: ['2<3'],
    })
    expect(aside(open('1', '2', '3', '4'), { ranks: [...ranks].reverse() })).toEqual({
      sets: [
        ['4<3', '3<4'],
        ['2<1', '1<2'],
      ],
      left: ['2<3'],
    })
  })

  test('two rings that share a hole go together', () => {
    const ranks = [rank('1', '2'), rank('2', '1'), rank('2', '3'), rank('3', '2')]
    expect(aside(open('1', '2', '3'), { ranks }).sets).toEqual([['1<2', '2<1', '2<3', '3<2']])
  })
})

describe('against the readings', () => {
  test('a line alone', () => {
    const ranks = [rank('1', '2'), rank('2', '1')]
    expect(aside([plainHole('1', 26), plainHole('2', 20)], { ranks: ranks.slice(0, 1) })).toEqual({
      sets: [['1<2']],
      left: [],
    })
    expect(aside([plainHole('1', 26), plainHole('2', 26)], { ranks: ranks.slice(0, 1) }).sets).toEqual([])
    expect(aside([plainHole('1', 26), plainHole('2', 25.9)], { ranks: ranks.slice(0, 1) }).sets).toEqual([['1<2']])
  })

  test('a chain of lines, without those that have no part in it', () => {
    const holes = [plainHole('1', 26), plainHole('2'), plainHole('3', 20), plainHole('4')]
    expect(aside(holes, { ranks: [rank('4', '1'), rank('1', '2'), rank('4', '2'), rank('2', '3')] })).toEqual({
      sets: [['1<2', '2<3']],
      left: ['4<1', '4<2'],
    })
  })

  test('a ring is set aside before what the readings are against', () => {
    const holes = [plainHole('1', 26), plainHole('2', 20), plainHole('3'), plainHole('4')]
    expect(aside(holes, { ranks: [rank('1', '2'), rank('3', '4'), rank('4', '3')] })).toEqual({
      sets: [['3<4', '4<3'], ['1<2']],
      left: [],
    })
  })

  test('two lines that each are against them are two contradictions', () => {
    const holes = [plainHole('1', 26), plainHole('2', 20), plainHole('3', 21)]
    expect(aside(holes, { ranks: [rank('1', '2'), rank('1', '3')] }).sets).toHaveLength(2)
  })

  test('a trial', () => {
    const trial = (stickOut: number): Trial => ({ hole: '1', kind: 'a', stickOut })
    expect(aside([plainHole('1', 20)], { trials: [trial(10)] })).toEqual({ sets: [], left: ['a in 1'] })
    expect(aside([plainHole('1', 20)], { trials: [trial(9.9)] })).toEqual({ sets: [['a in 1']], left: [] })
  })

  test('two trials of one hole, of which either alone could be true', () => {
    const trials: Trial[] = [
      { hole: '1', kind: 'a', stickOut: 10 },
      { hole: '1', kind: 'b', stickOut: 10 },
    ]
    expect(aside([plainHole('1')], { trials }).sets).toEqual([['a in 1', 'b in 1']])
  })

  test('a rank line with a trial', () => {
    // The trial says 20 for 1, and 2 is read as 19.
    const found = aside([plainHole('1'), plainHole('2', 19)], {
      ranks: [rank('1', '2')],
      trials: [{ hole: '1', kind: 'a', stickOut: 10 }],
    })
    expect(found).toEqual({ sets: [['1<2', 'a in 1']], left: [] })
  })

  test('what no bolt can do is no contradiction of lines', () => {
    // A grip of 50 takes no bolt here, and the line about it is true.
    expect(aside([plainHole('1', 20), plainHole('2', 50)], { ranks: [rank('1', '2')] })).toEqual({
      sets: [],
      left: ['1<2'],
    })
  })
})
