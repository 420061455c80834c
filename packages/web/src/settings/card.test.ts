import { expect, test } from 'vitest'
import { ASSUMED, CARD, firstWidth, layingFor, scaleOf } from './card.ts'

test('a phone takes the short side of the card, a wider screen the long one', () => {
  expect(layingFor(390).side).toBe('short')
  expect(layingFor(820)).toMatchObject({ side: 'long', across: CARD.long })
})

test('the outline never grows beyond the screen', () => {
  for (const room of [280, 320, 390, 600, 860, 1280]) {
    const laying = layingFor(room)
    expect(laying.most).toBeLessThanOrEqual(Math.max(room, laying.least + 1))
    expect(laying.least).toBeLessThan(laying.most)
    expect(firstWidth(laying, 99)).toBe(laying.most)
  }
})

test('what was kept before is where the outline begins', () => {
  const laying = layingFor(860)
  expect(firstWidth(laying, null)).toBe(Math.round(CARD.long * ASSUMED))
  expect(scaleOf(firstWidth(laying, 5.2), laying)).toBeCloseTo(5.2, 1)
})

test('an outline of 324 pixels across the short side makes 6 pixels a millimetre', () => {
  expect(scaleOf(324, { across: CARD.short })).toBeCloseTo(6.002, 3)
})
