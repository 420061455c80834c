import { expect, test } from 'vitest'
import { readPasses, readSpread } from './tightenOptions.ts'

test('passes are read in per cent', () => {
  expect(readPasses('30,60,100')).toEqual({ ok: true, value: [0.3, 0.6, 1] })
  expect(readPasses(' 12.5 % , 100%')).toEqual({ ok: true, value: [0.125, 1] })
  expect(readPasses('100')).toEqual({ ok: true, value: [1] })
})

test.each([
  ['', 'each pass is a figure'],
  ['30,,100', 'each pass is a figure'],
  ['0,100', 'each pass is a figure'],
  ['-30,100', 'each pass is a figure'],
  ['30,110', 'each pass is a figure'],
  ['1e1,100', 'each pass is a figure'],
  ['30;100', 'each pass is a figure'],
  ['60,30,100', 'a pass is not above the one before it.'],
  ['100,100', 'a pass is not above the one before it.'],
  ['30,60', 'the last pass is not at full torque.'],
  [Array.from({ length: 21 }, (_, i) => i + 80).join(','), 'more than 20 passes.'],
])('passes %j are refused with words', (text, said) => {
  const read = readPasses(text)
  expect(read.ok ? '' : read.why).toContain(said)
  expect(read.ok ? '' : read.why).toContain('--passes 30,60,100')
})

test('a spread is read in per cent', () => {
  expect(readSpread('5')).toEqual({ ok: true, value: 0.05 })
  expect(readSpread('2.5 %')).toEqual({ ok: true, value: 0.025 })
  for (const text of ['0', '-1', 'five', '101', 'NaN']) expect(readSpread(text).ok).toBe(false)
})
