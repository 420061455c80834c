import { describe, expect, test } from 'vitest'
import type { Hole, Kind } from '../unit.ts'
import { judgePair } from './pair.ts'
import { pairAnswer } from './pairAnswer.ts'
import { problemsOf } from './problem.ts'
import { plainUnit } from './testing/plainFace.ts'

type Changed<T> = { [K in keyof T]?: T[K] | undefined }

/** A bolt that sticks out 15 of a hole with 20 of thread and 8 asked for; it fits with 5 to spare before the run-out. */
function answer(hole: Changed<Hole> = {}, kind: Changed<Kind> = {}) {
  const base: Hole = { id: '1', thread: 'M6', grip: 25, threadDepth: 20, bottomDepth: 25, minimumEngagement: 8 }
  const bolt: Kind = { id: 'a', thread: 'M6', length: 40, threadLength: 30, tip: 0 }
  const problem = problemsOf(plainUnit([{ ...base, ...hole } as Hole], [{ ...bolt, ...kind } as Kind]))[0]!
  return pairAnswer(problem.holes[0]!, problem.kinds[0]!, judgePair(problem.holes[0]!, problem.kinds[0]!))
}

test('the whole of a pair that fits', () => {
  expect(answer()).toEqual({
    hole: '1',
    kind: 'a',
    verdict: 'fits',
    line: 'run-out',
    why: "fits: full thread ends 5 mm before the hole's does, at worst",
    margin: 5,
    turns: [15, 15],
  })
})

test('the whole of a pair that cannot', () => {
  expect(answer({ grip: 33 })).toEqual({
    hole: '1',
    kind: 'a',
    verdict: 'cannot',
    line: 'engagement',
    why: 'too short: only 7 mm of thread at best, 8 needed',
    margin: -1,
  })
})

describe('margin', () => {
  test('is the worst case where it fits, the best where it cannot, both where it may', () => {
    expect(answer({ grip: { value: 30, plusMinus: 1 } }).margin).toBe(1)
    expect(answer({ grip: { value: 34, plusMinus: 1 } }).margin).toBe(-1)
    expect(answer({ grip: { value: 32, plusMinus: 1 } }).margin).toEqual([-1, 1])
  })

  test('is null where no length decides or an end is not known', () => {
    expect(answer({}, { thread: 'M8' }).margin).toBeNull()
    expect(answer({ grip: undefined }).margin).toEqual([null, 32])
    expect(answer({ threadDepth: 12, bottomDepth: undefined }, { tip: 5 }).margin).toEqual([-3, null])
    expect(answer({ grip: undefined }, { length: undefined }).margin).toEqual([null, null])
  })
})

describe('closeness', () => {
  test('the tip within a pitch of the bottom', () => {
    expect(answer({ threadDepth: 15.5, bottomDepth: 15.9 }).close).toEqual(['tip near the bottom'])
    expect(answer({ threadDepth: 15.5, bottomDepth: 16 })).not.toHaveProperty('close')
    expect(answer({ threadDepth: 15.5, bottomDepth: { value: 16.5, plusMinus: 0.6 } }).close).toEqual([
      'tip near the bottom',
    ])
    expect(answer({ thread: 'M8', threadDepth: 15.5, bottomDepth: 16.2 }, { thread: 'M8' }).close).toEqual([
      'tip near the bottom',
    ])
  })

  test('the pitch is the coarsest that the bolt may have', () => {
    const either = { thread: ['M8×1', 'M8'] }
    expect(answer({ ...either, threadDepth: 15.5, bottomDepth: 16.2 }, either).close).toEqual(['tip near the bottom'])
  })

  test('a bottom is near in no through hole', () => {
    expect(answer({ ending: 'through', bottomDepth: 15.1, threadDepth: 15 })).not.toHaveProperty('close')
  })

  test('engagement within a tenth of the least', () => {
    expect(answer({ grip: 31.3 }).close).toEqual(['engagement near the least'])
    expect(answer({ grip: 31.1 })).not.toHaveProperty('close')
    expect(answer({ grip: { value: 31, plusMinus: 0.4 } }).close).toEqual(['engagement near the least'])
    // 9.3 of thread engaged where anything from 6 to 8.5 may be needed: 9.35 is a tenth over the most of that.
    expect(answer({ grip: 30.7, minimumEngagement: { atLeast: 6, atMost: 8.5 } }).close).toEqual([
      'engagement near the least',
    ])
    expect(answer({ grip: 30.6, minimumEngagement: { atLeast: 6, atMost: 8.5 } })).not.toHaveProperty('close')
  })

  test('a stick-out two pitches past a through hole’s last full thread', () => {
    const through = { ending: 'through', bottomDepth: undefined } as const
    expect(answer({ ...through, threadDepth: 12.9 }).close).toEqual(['long stick-out'])
    expect(answer({ ...through, threadDepth: 13 })).not.toHaveProperty('close')
    expect(answer({ ...through, threadDepth: 12, mouth: 1 })).not.toHaveProperty('close')
    expect(answer({ ...through, threadDepth: 12, mouth: 0.9 }).close).toEqual(['long stick-out'])
    expect(answer({ ...through, threadDepth: { value: 12.5, plusMinus: 0.5 } })).not.toHaveProperty('close')
    expect(answer({ ...through, grip: { value: 25, plusMinus: 0.5 }, threadDepth: 13.2 }).close).toEqual([
      'long stick-out',
    ])
  })

  test('several things are said in turn, and nothing of a pair that only may', () => {
    expect(answer({ grip: 31.9, threadDepth: 8.1, bottomDepth: 8.2 }).close).toEqual([
      'tip near the bottom',
      'engagement near the least',
    ])
    expect(answer({ grip: { value: 31.9, plusMinus: 0.2 } })).not.toHaveProperty('close')
  })
})

describe('turns', () => {
  test('are the stick-out less mouth and tip, in pitches', () => {
    expect(answer({ mouth: { atLeast: 1, atMost: 2 } }, { tip: { atLeast: 0.5, atMost: 1 } }).turns).toEqual([12, 14])
    expect(answer({ grip: { value: 25, plusMinus: 1 } }).turns).toEqual([14, 16])
    expect(answer({ thread: 'M8' }, { thread: 'M8' }).turns).toEqual([12, 12])
  })

  test('are told to a tenth', () => {
    expect(answer({ grip: 24.84 }).turns).toEqual([15.2, 15.2])
  })

  test('a pitch that is not certain gives both ends', () => {
    expect(answer({ thread: ['M8', 'M8×1'] }, { thread: ['M8', 'M8×1'] }).turns).toEqual([12, 15])
  })

  test('are told where it may fit and not where it cannot', () => {
    expect(answer({ grip: { value: 32, plusMinus: 1 } }).turns).toEqual([7, 9])
    expect(answer({ grip: 33 })).not.toHaveProperty('turns')
    expect(answer({}, { thread: 'M8' })).not.toHaveProperty('turns')
  })

  test('are not told where nothing limits the stick-out', () => {
    expect(answer({ grip: undefined }).turns).toEqual([0, 40])
    expect(answer({}, { length: undefined })).not.toHaveProperty('turns')
  })
})
