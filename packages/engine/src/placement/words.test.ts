import { describe, expect, test } from 'vitest'
import type { Line } from './answer.ts'
import { problemsOf } from './problem.ts'
import { plainHole, plainKind, plainUnit } from './testing/plainFace.ts'
import { list, millimetres, pairWords, quantityWords, spanWords, statementWords } from './words.ts'

const mm = (figure: number) => Math.round(figure * 1e6)

test('a length reads with no more than two decimals and no idle zeros', () => {
  const read = (figure: number) => millimetres(mm(figure))
  expect([3.2, 12, 0.05, 100, 120.5, 0, -0.1].map(read)).toEqual(['3.2', '12', '0.05', '100', '120.5', '0', '-0.1'])
  expect([3.204, 3.206, 0.004, 9.999].map(read)).toEqual(['3.2', '3.21', '0', '10'])
})

test('a span reads with both ends, or one where they read the same', () => {
  expect(spanWords({ lo: mm(31.8), hi: mm(32) })).toBe('31.8 to 32')
  expect(spanWords({ lo: mm(32), hi: mm(32) })).toBe('32')
  expect(spanWords({ lo: mm(32.001), hi: mm(32.002) })).toBe('32')
  expect(spanWords({ lo: mm(32), hi: Number.POSITIVE_INFINITY })).toBe('32 or more')
})

describe('a pair', () => {
  const engagement = { minimumEngagement: { atLeast: 6, atMost: 9 } }
  const problem = problemsOf(
    plainUnit(
      [plainHole('1', 20, { ...engagement, thread: ['M8', '1/4-20 UNC'], needs: ['stud end', 'sealed', 'black'] })],
      [plainKind('a', 30, 1, { thread: ['M6', 'M10×1.25'], features: ['sealed'] })],
    ),
  )[0]!
  const said = (verdict: 'fits' | 'may' | 'cannot', line: Line, worst: number | null, best: number | null) => {
    const nm = (figure: number | null) => figure && (Number.isFinite(figure) ? mm(figure) : figure)
    return pairWords(problem.holes[0]!, problem.kinds[0]!, {
      verdict,
      line,
      worst: nm(worst),
      best: nm(best),
      readings: null,
    })
  }

  test.each<[Line, number | null, string]>([
    ['thread', null, 'thread M6 or M10×1.25 does not go into M8 or 1/4-20 UNC'],
    ['feature', null, 'the hole needs stud end and black'],
    ['engagement', -1.5, 'too short: only 4.5 mm of thread at best, 6 needed'],
    ['engagement', -8, 'too short: only 0 mm of thread at best, 6 needed'],
    ['bolt thread', -1.5, 'the bolt has only 4.5 mm of full thread, 6 needed'],
    ['hole thread', -1.5, 'the hole has only 4.5 mm of full thread, 6 needed'],
    ['bottom', -1.5, 'bottoms out: the tip meets the bottom 1.5 mm before the head seats'],
    ['run-out', -1.5, 'full thread runs 1.5 mm into the unfinished thread at the bottom of the hole'],
    ['behind', -1.5, 'stands 1.5 mm too far out behind the hole'],
    ['shank', -1.5, "shank jams: the unthreaded part reaches 1.5 mm into the hole's thread"],
    ['hole', -1.5, "the hole's own figures contradict each other by 1.5 mm"],
    ['kind', -1.5, "the kind's own figures contradict each other by 1.5 mm"],
    ['together', -1.5, 'no values of the readings keep all lines of a fit at once: 1.5 mm are missing'],
  ])('that cannot, %s by %s', (line, best, words) => {
    expect(said('cannot', line, best === null ? null : best - 1, best)).toBe(words)
  })

  test.each<[Line, number, string]>([
    ['engagement', 0.5, 'fits: 0.5 mm more thread than needed, at worst'],
    ['engagement', 0, 'fits: just the 9 mm of thread that it needs, at worst'],
    ['bolt thread', 0.5, "fits: the bolt's own thread is 0.5 mm longer than needed, at worst"],
    ['hole thread', 0.5, "fits: the hole's thread is 0.5 mm deeper than needed, at worst"],
    ['bottom', 0.5, 'fits: the tip stays 0.5 mm off the bottom, at worst'],
    ['bottom', 0, 'fits: the tip stays 0 mm off the bottom, at worst'],
    ['run-out', 0.5, "fits: full thread ends 0.5 mm before the hole's does, at worst"],
    ['behind', 0.5, 'fits: stands out behind with 0.5 mm to spare, at worst'],
    ['shank', 0.5, "fits: the shank ends 0.5 mm before the hole's thread, at worst"],
  ])('that fits, %s by %s', (line, worst, words) => {
    expect(said('fits', line, worst, worst + 1)).toBe(words)
  })

  test.each<[Line, string]>([
    ['engagement', 'may fit: too little thread by 0.5 mm short at worst, 1.5 mm to spare at best (6 to 9 needed)'],
    ['bolt thread', 'may fit: too little thread on the bolt: 0.5 mm short at worst, 1.5 mm to spare at best'],
    ['hole thread', 'may fit: too little thread in the hole: 0.5 mm short at worst, 1.5 mm to spare at best'],
    ['bottom', 'may fit: the tip may meet the bottom: 0.5 mm short at worst, 1.5 mm to spare at best'],
    [
      'run-out',
      'may fit: full thread may run into the unfinished thread at the bottom: 0.5 mm short at worst, 1.5 mm to spare at best',
    ],
    ['behind', 'may fit: may stand too far out behind: 0.5 mm short at worst, 1.5 mm to spare at best'],
    ['shank', 'may fit: the shank may jam in the thread: 0.5 mm short at worst, 1.5 mm to spare at best'],
  ])('that may, %s', (line, words) => {
    expect(said('may', line, -0.5, 1.5)).toBe(words)
  })

  test('that may, with ends that are not known', () => {
    expect(said('may', 'bottom', Number.NEGATIVE_INFINITY, 1.5)).toBe(
      'may fit: the tip may meet the bottom: not known at worst, 1.5 mm to spare at best',
    )
    expect(said('may', 'bottom', -0.5, Number.POSITIVE_INFINITY)).toBe(
      'may fit: the tip may meet the bottom: 0.5 mm short at worst, ample at best',
    )
  })
})

test('quantities have the names of the trade, and a name that is none stays', () => {
  const named =
    'grip bracket gasket mouth threadDepth bottomDepth behind minimumEngagement length threadLength tip washer turns'
  expect(named.split(' ').map(quantityWords)).toEqual([
    'grip',
    'bracket thickness',
    'gasket thickness',
    'mouth depth',
    'thread depth',
    'bottom depth',
    'room behind',
    'least engagement',
    'length',
    'thread length',
    'tip length',
    'washer thickness',
    'turns',
  ])
  expect(quantityWords('colour')).toBe('colour')
})

test('statements are named as they were stated', () => {
  expect(statementWords({ what: 'reading', quantity: 'threadDepth', of: '3', place: 'hole' })).toBe(
    'the thread depth of hole 3',
  )
  expect(statementWords({ what: 'reading', quantity: 'tip', of: 'long', place: 'kind' })).toBe(
    'the tip length of kind long',
  )
  expect(statementWords({ what: 'count', of: 'long' })).toBe('the count of long')
  expect(statementWords({ what: 'rank', quantity: 'bottomDepth', less: '3', more: '1' })).toBe(
    '"bottom depth of 3 is less than of 1"',
  )
  expect(statementWords({ what: 'trial', hole: '4', kind: 'long' })).toBe('the trial of long in hole 4')
})

test('a list reads with commas and a last word', () => {
  expect([[], ['1'], ['1', '2'], ['1', '2', '3']].map((names) => list(names))).toEqual([
    '',
    '1',
    '1 and 2',
    '1, 2 and 3',
  ])
  expect(list(['a', 'b', 'c'], 'or')).toBe('a, b or c')
})
