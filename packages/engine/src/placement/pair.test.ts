// Long because every line of a fit is tried at its tie, a tenth over and a tenth under.
import { describe, expect, test } from 'vitest'
import type { Hole, Kind, Trial } from '../unit.ts'
import { demandOf, depthBetween, fitRanges, judgePair, kindLevels, sectionOf, together } from './pair.ts'
import { type HoleSpans, type KindSpans, problemsOf } from './problem.ts'
import { plainHole, plainUnit } from './testing/plainFace.ts'

// A bolt 40 long, all but 10 of it thread, sharp at the tip; a hole 25 under the head: it sticks out 15. Each line then holds by:
// engagement 15 − 8 = 7, bolt thread 30 − 8 = 22, hole thread 20 − 8 = 12, overlap 20 − 15 + 30 − 8 = 27, shank 25 − 10 = 15, bottom 25 − 15 = 10,
// run-out 20 − 15 = 5.
const HOLE: Hole = { id: '1', thread: 'M6', grip: 25, threadDepth: 20, bottomDepth: 25, minimumEngagement: 8 }
const KIND: Kind = { id: 'a', thread: 'M6', length: 40, threadLength: 30, tip: 0, count: 1 }

type Changed<T> = { [K in keyof T]?: T[K] | undefined }

function spans(hole: Changed<Hole> = {}, kind: Changed<Kind> = {}, trials: Trial[] = []) {
  const problem = problemsOf(plainUnit([{ ...HOLE, ...hole } as Hole], [{ ...KIND, ...kind } as Kind], { trials }))[0]!
  return {
    hole: problem.holes[0] as HoleSpans,
    kind: problem.kinds[0] as KindSpans,
    trials: problem.trials.map((trial) => trial.spans),
  }
}

const mm = (nm: number | null) => (nm === null ? null : nm / 1e6)

/** Verdict, line, and by how many mm it holds at worst and at best. */
function judged(...of: Parameters<typeof spans>) {
  const { hole, kind, trials } = spans(...of)
  const { verdict, line, worst, best } = judgePair(hole, kind, trials)
  return [verdict, line, mm(worst), mm(best)]
}

const both = ({ lo, hi }: { lo: number; hi: number }) => [mm(lo), mm(hi)]

describe('with every figure exact the line that holds by least decides', () => {
  const through = { ending: 'through', bottomDepth: undefined } as const
  test.each<[string, Changed<Hole>, Changed<Kind>, string, string, number]>([
    ['as it stands: run-out 20 − 15', {}, {}, 'fits', 'run-out', 5],
    ['engagement just enough', { grip: 32 }, {}, 'fits', 'engagement', 0],
    ['engagement with a tenth over', { grip: 31.9 }, {}, 'fits', 'engagement', 0.1],
    ['engagement a tenth short', { grip: 32.1 }, {}, 'cannot', 'engagement', -0.1],
    ['engagement counts from the mouth', { grip: 30, mouth: 2 }, {}, 'fits', 'engagement', 0],
    ['a mouth a tenth deeper', { grip: 30, mouth: 2.1 }, {}, 'cannot', 'engagement', -0.1],
    ['the tip does not hold', { grip: 30 }, { tip: 2 }, 'fits', 'engagement', 0],
    ['a tip a tenth longer', { grip: 30 }, { tip: 2.1 }, 'cannot', 'engagement', -0.1],
    [
      'bracket, gasket and washer take from the stick-out',
      { bracket: 3, gasket: 1.5 },
      { washer: 2.5 },
      'fits',
      'engagement',
      0,
    ],
    ['a washer a tenth thicker', { bracket: 3, gasket: 1.5 }, { washer: 2.6 }, 'cannot', 'engagement', -0.1],
    ['the shank just stops short', {}, { threadLength: 15 }, 'fits', 'shank', 0],
    ['the shank a tenth short', {}, { threadLength: 15.1 }, 'fits', 'shank', 0.1],
    ['the shank a tenth in', {}, { threadLength: 14.9 }, 'cannot', 'shank', -0.1],
    ['the shank may go as far as the mouth', { mouth: 3 }, { threadLength: 12 }, 'fits', 'shank', 0],
    ['a stack moves the shank out', { bracket: 4 }, { threadLength: 11 }, 'fits', 'shank', 0],
    ['a washer moves the shank out', {}, { threadLength: 11, washer: 4 }, 'fits', 'shank', 0],
    ['the tip just meets the bottom', { threadDepth: 12, bottomDepth: 15 }, { tip: 5 }, 'fits', 'bottom', 0],
    ['the tip a tenth off the bottom', { threadDepth: 12, bottomDepth: 15.1 }, { tip: 5 }, 'fits', 'bottom', 0.1],
    ['the tip a tenth into the bottom', { threadDepth: 12, bottomDepth: 14.9 }, { tip: 5 }, 'cannot', 'bottom', -0.1],
    ['full thread ends with the hole’s', { threadDepth: 15 }, {}, 'fits', 'run-out', 0],
    ['full thread a tenth past the hole’s', { threadDepth: 14.9 }, {}, 'cannot', 'run-out', -0.1],
    ['the tip may stand in the run-out', { threadDepth: 13, bottomDepth: 25 }, { tip: 2 }, 'fits', 'run-out', 0],
    ['the mouth moves the run-out down', { threadDepth: 12, mouth: 3 }, {}, 'fits', 'run-out', 0],
    ['behind has just room', { ...through, threadDepth: 10, behind: 5 }, {}, 'fits', 'behind', 0],
    ['behind a tenth over', { ...through, threadDepth: 10, behind: 5.1 }, {}, 'fits', 'behind', 0.1],
    ['behind a tenth short', { ...through, threadDepth: 10, behind: 4.9 }, {}, 'cannot', 'behind', -0.1],
    [
      'behind counts from the end of the wall',
      { ...through, threadDepth: 9, mouth: 1, behind: 5 },
      {},
      'fits',
      'behind',
      0,
    ],
    ['nothing limits what is not given behind', { ...through, threadDepth: 10 }, {}, 'fits', 'hole thread', 2],
    ['the wall just thick enough', { ...through, threadDepth: 8 }, {}, 'fits', 'hole thread', 0],
    ['the wall a tenth thin', { ...through, threadDepth: 7.9 }, {}, 'cannot', 'hole thread', -0.1],
    ['a bottom is no limit in a through hole', { ending: 'through', bottomDepth: 3 }, {}, 'fits', 'engagement', 7],
    ['room behind is no limit in a blind hole', { behind: 0 }, {}, 'fits', 'run-out', 5],
    // Engagement 7 − 8 and shank 33 − 34 are each 1 short; the thread of 6 is 2 short of 8.
    ['too little thread on the bolt', { grip: 33 }, { threadLength: 6 }, 'cannot', 'bolt thread', -2],
    ['a tip takes from the thread of the bolt', { grip: 33 }, { threadLength: 6, tip: 1 }, 'cannot', 'bolt thread', -3],
    // The wall is 1 short and the shank 1 in: between them 7 − 15 + 14 = 6 of overlap, 2 short of 8.
    [
      'shank and far side leave too little',
      { ...through, threadDepth: 7 },
      { threadLength: 14 },
      'cannot',
      'shank',
      -2,
    ],
    ['a thousandth of a micron decides', { grip: 32.000001 }, {}, 'cannot', 'engagement', -0.000001],
    ['and is enough', { grip: 31.999999 }, {}, 'fits', 'engagement', 0.000001],
  ])('%s', (_, hole, kind, verdict, line, margin) => {
    expect(judged(hole, kind)).toEqual([verdict, line, margin, margin])
  })
})

describe('with readings between two ends', () => {
  test.each<[string, Changed<Hole>, Changed<Kind>, string, string, number, number]>([
    ['it fits when it fits at worst', { grip: { value: 31, plusMinus: 1 } }, {}, 'fits', 'engagement', 0, 2],
    ['it may when the worst fails', { grip: { value: 31, plusMinus: 1.1 } }, {}, 'may', 'engagement', -0.1, 2.1],
    ['it may when the best just holds', { grip: { value: 33, plusMinus: 1 } }, {}, 'may', 'engagement', -2, 0],
    ['it cannot when the best fails', { grip: { value: 33, plusMinus: 0.9 } }, {}, 'cannot', 'engagement', -1.9, -0.1],
    ['length counts like grip', { grip: 30 }, { length: { value: 38, plusMinus: 1 } }, 'may', 'engagement', -1, 1],
    [
      'a stack adds its doubts',
      {
        grip: { value: 30, plusMinus: 0.5 },
        bracket: { value: 1, plusMinus: 0.2 },
        gasket: { value: 0.5, plusMinus: 0.1 },
      },
      { washer: { value: 0.5, plusMinus: 0.2 } },
      'may',
      'engagement',
      -1,
      1,
    ],
    [
      'the bottom at worst',
      { threadDepth: 12, bottomDepth: { value: 15.5, plusMinus: 0.5 } },
      { tip: 5 },
      'fits',
      'bottom',
      0,
      1,
    ],
    [
      'a tip unknown within its ends',
      { grip: 30.5 },
      { tip: { atLeast: 1, atMost: 2 } },
      'may',
      'engagement',
      -0.5,
      0.5,
    ],
    ['a mouth between two ends', { grip: 30, mouth: { value: 2, plusMinus: 0.3 } }, {}, 'may', 'engagement', -0.3, 0.3],
    [
      'room behind at worst',
      { ending: 'through', threadDepth: 10, behind: { value: 6, plusMinus: 1 } },
      {},
      'fits',
      'behind',
      0,
      2,
    ],
    [
      'engagement itself between two ends: some of it',
      { grip: 32, minimumEngagement: { atLeast: 6, atMost: 10 } },
      {},
      'may',
      'engagement',
      -2,
      2,
    ],
    // Engagement 7 − 10 = −3 and shank 33 + 6 − 40 = −1 at worst, the thread of 6 is 4 under 10; at best 9 is 5 over 4.
    [
      'bolt thread at worst',
      { grip: 33, minimumEngagement: { atLeast: 4, atMost: 10 } },
      { threadLength: { atLeast: 6, atMost: 9 } },
      'may',
      'bolt thread',
      -4,
      5,
    ],
    ['an inch reading is exact', { grip: { value: 1, unit: 'in' } }, { length: 33.4 }, 'fits', 'engagement', 0, 0],
    [
      'an inch reading is exact the other way',
      { grip: { value: 1, unit: 'in' } },
      { length: 33.399999 },
      'cannot',
      'engagement',
      -0.000001,
      -0.000001,
    ],
    // 40 nominal is 39.5 to 40.5: half of IT15 for 30 to 50 mm.
    ['a nominal length has its tolerance', { grip: 32 }, { length: { nominal: 40 } }, 'may', 'engagement', -0.5, 0.5],
  ])('%s', (_, hole, kind, verdict, line, worst, best) => {
    expect(judged(hole, kind)).toEqual([verdict, line, worst, best])
  })
})

test('a least engagement between two ends must be kept at its most to fit, and missed at its least to be out', () => {
  const range = { minimumEngagement: { atLeast: 6, atMost: 10 } }
  expect(judged({ ...range, grip: 30 }).slice(0, 3)).toEqual(['fits', 'engagement', 0])
  expect(judged({ ...range, grip: 34 })).toEqual(['may', 'engagement', -4, 0])
  const [verdict, line, , best] = judged({ ...range, grip: 34.1 })
  expect([verdict, line, best]).toEqual(['cannot', 'engagement', -0.1])
})

describe('what is left out', () => {
  test('a grip that is not known has no worst end', () => {
    // Nothing clamped: 40 out, 20 past the run-out. Much clamped: engagement fails without end.
    expect(judged({ grip: undefined })).toEqual(['may', 'engagement', Number.NEGATIVE_INFINITY, 32])
  })

  test('a length that is not known fits at its best', () => {
    // No longer than its thread of 30 it sticks out 5, and the shank leaves 20 − 5 + 30 of overlap, 37 over 8. Long, it leaves nothing.
    expect(judged({}, { length: undefined })).toEqual(['may', 'shank', Number.NEGATIVE_INFINITY, 37])
  })

  test('a tip is 1 to 2 pitches', () => {
    expect(judged({ grip: 30 }, { tip: undefined })).toEqual(['fits', 'engagement', 0, 1])
    expect(judged({ grip: 30.1 }, { tip: undefined })).toEqual(['may', 'engagement', -0.1, 0.9])
    expect(judged({ grip: 31.1 }, { tip: undefined })).toEqual(['cannot', 'engagement', -1.1, -0.1])
  })

  test('a tip of a pitch of 1.25 is 1.25 to 2.5', () => {
    expect(judged({ grip: 29.5, thread: 'M8' }, { thread: 'M8', tip: undefined })).toEqual([
      'fits',
      'engagement',
      0,
      1.25,
    ])
  })

  test('a thread goes to the head less a run-out of 0 to 2.5 pitches', () => {
    // 12 long with 2 clamped; the shank ends 0 to 2.5 under the head.
    const short = { threadLength: undefined, length: 12 }
    expect(judged({ grip: 2.5, minimumEngagement: 2 }, short)).toEqual(['fits', 'shank', 0, 2.5])
    expect(judged({ grip: 2, minimumEngagement: 2 }, short)).toEqual(['may', 'shank', -0.5, 2])
    expect(judged({ grip: 0, minimumEngagement: 2 }, short)).toEqual(['may', 'shank', -2.5, 0])
  })

  test('the run-out of a short bolt ends with the bolt', () => {
    // 2 long: of the run-out of up to 2.5 no more than 2 is there, so the shank needs no more than 2.
    const { hole, kind } = spans({ grip: 0.5, minimumEngagement: 0 }, { threadLength: undefined, length: 2 })
    expect(both(depthBetween(judgePair(hole, kind).readings!, 3, 0))).toEqual([0, 2])
  })

  test('a bottom is never higher than mouth and thread together', () => {
    // Tip 5, so that full thread ends at 10: with 12 of thread the bottom may be at 12, 3 too high, or anywhere below.
    const unknown = { threadDepth: 12, bottomDepth: undefined }
    expect(judged(unknown, { tip: 5 })).toEqual(['may', 'bottom', -3, Number.POSITIVE_INFINITY])
    expect(judged({ ...unknown, mouth: 1 }, { tip: 5 })).toEqual(['may', 'bottom', -2, Number.POSITIVE_INFINITY])
    expect(judged({ ...unknown, threadDepth: 15 }, { tip: 5 })).toEqual(['fits', 'bottom', 0, Number.POSITIVE_INFINITY])
  })

  test('thread depth is no more than the bottom leaves', () => {
    expect(judged({ threadDepth: undefined })).toEqual(['may', 'run-out', -15, 10])
    expect(judged({ threadDepth: undefined, bottomDepth: 14 })).toEqual(['cannot', 'bottom', -1, -1])
    expect(judged({ threadDepth: undefined, bottomDepth: 14 }, { tip: 1 })).toEqual(['cannot', 'bottom', -1, -1])
  })
})

describe('figures that contradict each other', () => {
  test('a bottom higher than the thread goes', () => {
    expect(judged({ bottomDepth: 19.9 })).toEqual(['cannot', 'hole', -0.1, -0.1])
    expect(judged({ bottomDepth: 21, mouth: 2 })).toEqual(['cannot', 'hole', -1, -1])
    expect(judged({ bottomDepth: 20 })[0]).toBe('fits')
  })

  test('a thread longer than the bolt', () => {
    expect(judged({}, { threadLength: 40.1 })).toEqual(['cannot', 'kind', -0.1, -0.1])
    expect(judged({}, { threadLength: 40 })[0]).toBe('fits')
    expect(judged({}, { threadLength: 40.1, washer: 1 })).toEqual(['cannot', 'kind', -0.1, -0.1])
  })

  test('the hole is told before the kind', () => {
    expect(judged({ bottomDepth: 15 }, { threadLength: 50 })[1]).toBe('hole')
  })

  test('no readings are told of a pair that contradicts itself or does not go together', () => {
    const readings = (...of: Parameters<typeof spans>) => {
      const { hole, kind, trials } = spans(...of)
      return judgePair(hole, kind, trials).readings
    }
    expect(readings({ bottomDepth: 15 })).toBeNull()
    expect(readings({}, { threadLength: 50 })).toBeNull()
    expect(readings({}, { thread: 'M8' })).toBeNull()
    expect(readings({}, {}, [{ hole: '1', kind: 'a', stickOut: 14 }])).toBeNull()
    expect(readings({ grip: 50 })).not.toBeNull()
  })

  test('each line alone could hold and not all of them at once', () => {
    // 8 of thread and a tip of 2 want 10; the bottom is at 9.5, wherever the joint face lies.
    const hole = { grip: { atLeast: 20, atMost: 40 }, threadDepth: 9, bottomDepth: 9.5 }
    expect(judged(hole, { tip: 2 })).toEqual(['cannot', 'together', -0.5, -0.5])
    expect(judged({ ...hole, bottomDepth: 10 }, { tip: 2 })[0]).toBe('may')
  })
})

describe('thread and features', () => {
  test('another thread does not go in', () => {
    expect(judged({}, { thread: 'M8' })).toEqual(['cannot', 'thread', null, null])
    expect(judged({ thread: 'M8' }, { thread: 'M8×1' })).toEqual(['cannot', 'thread', null, null])
  })

  test('one thread in common is enough', () => {
    expect(judged({ thread: ['M8', 'M6'] })[0]).toBe('fits')
    expect(judged({ thread: ['M8', '1/4-20 UNC'] })[1]).toBe('thread')
    expect(judged({}, { thread: ['1/4-20 UNC', 'M6'] })[0]).toBe('fits')
  })

  test('the same thread written two ways is the same', () => {
    expect(judged({ thread: 'M6×1' })[0]).toBe('fits')
  })

  test('every feature that the hole needs, and no matter what else the kind has', () => {
    expect(judged({ needs: ['stud end'] })).toEqual(['cannot', 'feature', null, null])
    expect(judged({ needs: ['stud end'] }, { features: ['sealed', 'stud end'] })[0]).toBe('fits')
    expect(judged({ needs: ['stud end', 'sealed'] }, { features: ['stud end'] })[1]).toBe('feature')
    expect(judged({}, { features: ['stud end'] })[0]).toBe('fits')
  })

  test('the thread is told before the feature', () => {
    expect(judged({ needs: ['stud end'] }, { thread: 'M8' })[1]).toBe('thread')
  })
})

describe('trials', () => {
  const tried = (
    trial: { stickOut: number } | { proud: number | { value: number; plusMinus: number } } | { turns: number },
  ) => [{ hole: '1', kind: 'a', ...trial } as Trial]

  test('a stick-out tells what the grip did not', () => {
    expect(judged({ grip: undefined }, {}, tried({ stickOut: 8 }))).toEqual(['fits', 'engagement', 0, 0])
    expect(judged({ grip: undefined }, {}, tried({ stickOut: 20 }))).toEqual(['fits', 'run-out', 0, 0])
    expect(judged({ grip: undefined }, {}, tried({ stickOut: 20.1 }))).toEqual(['cannot', 'run-out', -0.1, -0.1])
  })

  test('a stick-out does not count the mouth', () => {
    expect(judged({ grip: undefined, mouth: 2 }, {}, tried({ stickOut: 10 }))).toEqual(['fits', 'engagement', 0, 0])
  })

  test('a bolt dropped in stands proud by what is past the mouth, less some of its tip', () => {
    expect(judged({ grip: undefined, mouth: 2 }, {}, tried({ proud: 8 }))).toEqual(['fits', 'engagement', 0, 0])
    expect(judged({ grip: undefined, mouth: 2 }, {}, tried({ proud: 7.9 }))).toEqual([
      'cannot',
      'engagement',
      -0.1,
      -0.1,
    ])
    // 8 proud with a tip of 2: the tip is 8 to 10 past the mouth, full thread 6 to 8.
    expect(judged({ grip: undefined }, { tip: 2 }, tried({ proud: 8 }))).toEqual(['may', 'engagement', -2, 0])
    expect(judged({ grip: undefined }, {}, tried({ proud: { value: 9, plusMinus: 1 } }))).toEqual([
      'fits',
      'engagement',
      0,
      2,
    ])
  })

  test('turns are right to half a turn', () => {
    expect(judged({ grip: undefined }, {}, tried({ turns: 8.5 }))).toEqual(['fits', 'engagement', 0, 1])
    expect(judged({ grip: undefined }, {}, tried({ turns: 8 }))).toEqual(['may', 'engagement', -0.5, 0.5])
    expect(judged({ grip: undefined }, {}, tried({ turns: 7.4 }))).toEqual(['cannot', 'engagement', -1.1, -0.1])
  })

  test('a trial that the readings do not allow leaves nothing, by so much', () => {
    expect(judged({}, {}, tried({ stickOut: 14 }))).toEqual(['cannot', 'together', -1, -1])
    expect(judged({}, {}, tried({ stickOut: 15 }))[0]).toBe('fits')
    expect(judged({}, {}, tried({ proud: 15.2 }))).toEqual(['cannot', 'together', -0.2, -0.2])
    expect(judged({}, {}, tried({ proud: 14.8 }))).toEqual(['cannot', 'together', -0.2, -0.2])
    expect(judged({}, {}, tried({ proud: 15 }))[0]).toBe('fits')
  })

  test('two trials narrow together', () => {
    const two = [...tried({ turns: 8 }), ...tried({ turns: 9 })]
    // 7.5 to 8.5 and 8.5 to 9.5: just 8.5.
    expect(judged({ grip: undefined }, {}, two)).toEqual(['fits', 'engagement', 0.5, 0.5])
  })
})

test('the readings tell stick-out, engagement and room to the bottom', () => {
  const { hole, kind } = spans(
    { grip: { value: 25, plusMinus: 1 }, mouth: 2, bottomDepth: { value: 25, plusMinus: 0.5 } },
    { tip: { atLeast: 1, atMost: 2 }, washer: 0.5 },
  )
  const section = sectionOf(judgePair(hole, kind).readings!)
  expect(both(section.stickOut)).toEqual([13.5, 15.5])
  expect(both(section.engaged)).toEqual([9.5, 12.5])
  expect(both(section.toBottom)).toEqual([9, 12])
})

describe('the values with which a pair can still fit', () => {
  const ranges = (...of: Parameters<typeof spans>) => {
    const { hole, kind } = spans(...of)
    const found = fitRanges(hole, kind)
    return found && Object.fromEntries(Object.entries(found).map(([quantity, span]) => [quantity, both(span)]))
  }

  test('of a quantity that is not known, all others being exact', () => {
    expect(ranges({ grip: undefined })!.grip).toEqual([20, 32])
    expect(ranges({ threadDepth: undefined })!.threadDepth).toEqual([15, 25])
    expect(ranges({ bottomDepth: undefined })!.bottomDepth).toEqual([20, Number.POSITIVE_INFINITY])
    expect(ranges({}, { length: undefined })!.length).toEqual([33, 45])
  })

  test('of figures that are certain, just those', () => {
    expect(ranges()).toEqual({ grip: [25, 25], threadDepth: [20, 20], bottomDepth: [25, 25], length: [40, 40] })
  })

  test('a washer, a bracket and a gasket are not grip', () => {
    const stack = { bracket: 2, gasket: 0.5 }
    expect(ranges({ ...stack, grip: undefined }, { washer: { value: 1, plusMinus: 0.1 } })!.grip).toEqual([16.4, 28.6])
    expect(ranges({ ...stack, grip: { atLeast: 17, atMost: 25 } }, { washer: 1 })!.grip).toEqual([17, 25])
    expect(ranges({ ...stack, grip: { atLeast: 10, atMost: 29 } }, { washer: 1 })!.grip).toEqual([16.5, 28.5])
  })

  test('with the least engagement that may be needed', () => {
    expect(ranges({ grip: undefined, minimumEngagement: { atLeast: 5, atMost: 9 } })!.grip).toEqual([20, 35])
  })

  test('none where the pair cannot fit or its figures contradict each other', () => {
    expect(ranges({ grip: 33 })).toBeNull()
    expect(ranges({ bottomDepth: 19 })).toBeNull()
    expect(ranges({}, { threadLength: 41 })).toBeNull()
    expect(ranges({ grip: { atLeast: 20, atMost: 40 }, threadDepth: 9, bottomDepth: 9.5 }, { tip: 2 })).toBeNull()
  })
})

describe('one bolt in several holes', () => {
  const demand = (hole: Changed<Hole>) => demandOf(spans(hole).hole)
  const at = (demand: Float64Array | null, deep: number, high: number) => mm(demand![deep * 4 + high]!)

  test('a hole asks so much of a bolt: tip, full thread and shank under the head', () => {
    const asked = demand({})
    expect(at(asked, 1, 0)).toBe(50) // the tip no deeper than the bottom, 25 + 25
    expect(at(asked, 2, 0)).toBe(45) // full thread no deeper than the hole's, 25 + 20
    expect(at(asked, 0, 2)).toBe(-33) // and 8 at least past the mouth
    expect(at(asked, 3, 0)).toBe(25) // the shank no deeper than the mouth
    expect(at(asked, 3, 2)).toBe(-8) // 8 of thread on the bolt
    expect(at(asked, 0, 1)).toBe(Number.POSITIVE_INFINITY)
  })

  test('a hole that no bolt fits asks for nothing', () => {
    expect(demand({ threadDepth: 7.9 })).toBeNull()
    expect(demand({ threadDepth: 8 })).not.toBeNull()
    expect(demand({ bottomDepth: 19 })).toBeNull()
  })

  const served = (length: Kind['length'], ...grips: number[]) => {
    const holes = grips.map((grip) => demandOf(problemsOf(plainUnit([plainHole('1', grip)], []))[0]!.holes[0]!)!)
    return together(kindLevels(spans({}, { length, threadLength: 12 }).kind), ...holes)
  }

  test('one length serves two holes or does not', () => {
    // A grip wants 6 to 12 more than itself: 22 asks for 28 to 34, 28 for 34 to 40.
    const unknown = { atLeast: 30, atMost: 40 }
    expect(served(unknown, 22, 28)).toBe(true)
    expect(served(unknown, 22, 28.1)).toBe(false)
    expect(served(unknown, 22, 25, 28)).toBe(true)
    expect(served({ atLeast: 34, atMost: 40 }, 22, 28)).toBe(true)
    expect(served({ atLeast: 34.1, atMost: 40 }, 22, 28)).toBe(false)
    expect(served({ atLeast: 20, atMost: 33.9 }, 22, 28)).toBe(false)
    expect(served(unknown)).toBe(true)
  })

  const levels = (kind: Changed<Kind>) => {
    const own = kindLevels(spans({}, kind).kind)
    return (deep: number, high: number) => mm(own[deep * 4 + high]!)
  }

  test('a kind’s levels stand under the face of its washer', () => {
    const own = levels({ tip: { atLeast: 1, atMost: 2 }, washer: { atLeast: 1, atMost: 1.5 } })
    expect([own(1, 0), own(0, 1)]).toEqual([39, -38.5])
    expect([own(1, 2), own(2, 1)]).toEqual([2, -1])
    expect([own(1, 3), own(3, 1)]).toEqual([30, -30])
    expect(own(0, 3)).toBe(1.5) // the thread ends at or below the head, 1.5 above the washer's face
    expect(own(3, 0)).toBe(Number.POSITIVE_INFINITY)
  })

  test('a thread of which only the least is known is no longer than the bolt', () => {
    expect(levels({ threadLength: { atLeast: 30 } })(1, 3)).toBe(40)
  })

  test('a kind threaded to the head has its run-out there', () => {
    const own = levels({ threadLength: undefined, washer: { atLeast: 1, atMost: 1.5 } })
    expect([own(3, 0), own(0, 3)]).toEqual([1.5, 1.5])
    expect([own(1, 3), own(3, 1)]).toEqual([40, -37.5])
    expect(levels({ threadLength: undefined, length: 2 })(3, 1)).toBeCloseTo(0, 12)
  })
})
