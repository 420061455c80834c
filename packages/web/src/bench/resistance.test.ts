import type { Pair } from '@gripbook/engine'
import { expect, test } from 'vitest'
import { countOff, FEELS, feelOf, likelyCauses } from './resistance.ts'

const pair = (more: Partial<Pair> = {}): Pair => ({
  hole: '1',
  kind: 'a',
  verdict: 'fits',
  line: 'bottom',
  why: 'the tip stays 1.2 mm above the bottom',
  margin: 1.2,
  turns: [9, 10.5],
  ...more,
})
const causes = (...given: Parameters<typeof likelyCauses>) => likelyCauses(...given).map(({ cause }) => cause)

test('stiff from the first turn: the thread first', () => {
  expect(causes('stiff from the first turn', null, null)[0]).toBe('crossed')
  expect(causes('stiff from the first turn', 1, pair())[0]).toBe('crossed')
})

test('stiff near the end: too long or something in the hole first, then something caught', () => {
  expect(causes('stiff near the end', null, null)).toEqual(['bottomed', 'caught', 'crossed'])
  expect(causes('stiff near the end', 8, pair())[0]).toBe('bottomed')
})

test('springy: something caught between the faces', () => {
  expect(causes('springy', null, null)[0]).toBe('caught')
})

test('a dead stop within the first turns is sooner a crossed thread than one after many', () => {
  const at = (turns: number) => causes('dead stop', turns, pair()).indexOf('crossed')
  expect(at(1)).toBeLessThan(at(7))
})

test('a bolt that cannot belong in the hole is told before all else, with the reason', () => {
  const wrong = pair({ verdict: 'cannot', line: 'bottom', why: 'the tip meets the bottom 2 mm before the head seats' })
  expect(likelyCauses('stiff near the end', 7, wrong)[0]).toEqual({
    cause: 'wrong bolt',
    why: 'the tip meets the bottom 2 mm before the head seats',
  })
})

test('a tip that is near the bottom by the readings leads, but not over a thread that binds at once', () => {
  const close = pair({ close: ['tip near the bottom'] })
  expect(causes('springy', 8, close)[0]).toBe('bottomed')
  expect(causes('stiff from the first turn', 1, close)[0]).toBe('crossed')
})

test('the engine’s sentence is told only where turns were counted and could be expected', () => {
  expect(likelyCauses('dead stop', null, pair()).every(({ why }) => why === null)).toBe(true)
  expect(likelyCauses('dead stop', 4, null).every(({ why }) => why === null)).toBe(true)
  expect(likelyCauses('dead stop', 4, pair()).every(({ why }) => why !== null)).toBe(true)
})

test('a count is judged to half a turn', () => {
  expect([8, 8.5, 10, 11, 11.5].map((turns) => countOff(turns, pair()))).toEqual(['fewer', null, null, null, 'more'])
  expect(countOff(3, null)).toBeNull()
})

test('every feel comes back from the words in which it was kept', () => {
  for (const feel of FEELS) expect(feelOf(feel)).toBe(feel)
  expect(feelOf('gritty')).toBeNull()
})
