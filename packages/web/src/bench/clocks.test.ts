import { clockStarted, clockStopped, fold } from '@gripbook/record'
import { expect, test } from 'vitest'
import { clockState, clockText, nextClock, readMinutes, runningClocks } from './clocks.ts'
import { told } from './testing/told.ts'

test('clocks that run are told with what is left, the one that ends first at the head', () => {
  const { id, events } = told([
    clockStarted({ clock: 'sealant 1', what: 'Sealant open', minutes: 10, face: 'pan' }),
    clockStarted({ clock: 'soaking 1', what: 'Plates soak', minutes: 2 }),
  ])
  const started = Date.parse(events[0]!.at)
  const clocks = runningClocks(fold(id, events), started + 60_000)
  expect(clocks.map(({ clock, left, face }) => [clock, Math.round(left / 1000), face])).toEqual([
    ['soaking 1', 61, null],
    ['sealant 1', 540, 'pan'],
  ])
})

test('a clock that was stopped is told no more', () => {
  const { id, events } = told([
    clockStarted({ clock: 'sealant 1', what: 'Sealant open', minutes: 10 }),
    clockStopped({ clock: 'sealant 1' }),
  ])
  expect(runningClocks(fold(id, events), Date.now())).toEqual([])
})

test('a clock that another device started a moment ahead of this one’s time has not run yet', () => {
  const { id, events } = told([clockStarted({ clock: 'c', what: 'Sealant open', minutes: 10 })])
  expect(runningClocks(fold(id, events), Date.parse(events[0]!.at) - 30_000)[0]!.left).toBe(600_000)
})

test.each([
  [247_000, '4:07'],
  [3_750_000, '1:02:30'],
  [0, '0:00'],
  [-45_500, '+0:45'],
])('%i ms are %s', (left, text) => {
  expect(clockText(left)).toBe(text)
})

test('a clock warns before it runs out', () => {
  expect(clockState({ left: 500_000, minutes: 10 })).toBe('running')
  expect(clockState({ left: 100_000, minutes: 10 })).toBe('soon')
  expect(clockState({ left: 0, minutes: 10 })).toBe('over')
})

test('an id is never given twice', () => {
  expect(nextClock('sealant', [{ type: 'clock-started', body: { clock: 'sealant 1' } }])).toBe('sealant 2')
})

test('minutes are read with a point or a comma, and nothing else is', () => {
  expect(readMinutes('2,5')).toBe(2.5)
  for (const text of ['', '0', '-1', 'five', '99999']) expect(readMinutes(text), text).toBeNull()
})
