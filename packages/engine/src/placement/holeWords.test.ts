import { expect, test } from 'vitest'
import type { Pair } from './answer.ts'
import { asFoundWhy, type HoleFacts, holeWhy } from './holeWords.ts'

const pair = (
  kind: string,
  verdict: Pair['verdict'],
  why: string,
  margin: Pair['margin'] = null,
  line: Pair['line'] = 'engagement',
): Pair => ({
  hole: '1',
  kind,
  verdict,
  line,
  why,
  margin,
})

const facts = (pairs: Pair[], may: string[], more: Partial<HoleFacts> = {}): HoleFacts => ({
  pairs,
  may,
  contradicted: false,
  mayBeEmpty: false,
  ...more,
})

const fits = pair('a', 'fits', 'fits: 2 mm to spare', 2)
const near = pair('b', 'cannot', 'too short by 1', -1)
const far = pair('c', 'cannot', 'too short by 6', -6)
const thread = pair('d', 'cannot', 'thread M8 does not go into M6', null, 'thread')
const feature = pair('e', 'cannot', 'the hole needs stud end', null, 'feature')

test('the only kind that fits is told with the one that fails by least', () => {
  expect(holeWhy(facts([fits, far, near], ['a']))).toBe('fits: 2 mm to spare; b too short by 1')
  expect(holeWhy(facts([near, fits, far], ['a']))).toBe('fits: 2 mm to spare; b too short by 1')
})

test('the only kind of its thread is told alone', () => {
  expect(holeWhy(facts([fits, thread], ['a']))).toBe('fits: 2 mm to spare')
  expect(holeWhy(facts([fits], ['a']))).toBe('fits: 2 mm to spare')
})

test('a kind that only wants a feature is named when no length is nearer', () => {
  expect(holeWhy(facts([fits, feature, thread], ['a']))).toBe('fits: 2 mm to spare; e the hole needs stud end')
  expect(holeWhy(facts([fits, feature, far], ['a']))).toBe('fits: 2 mm to spare; c too short by 6')
  expect(holeWhy(facts([fits, far, feature], ['a']))).toBe('fits: 2 mm to spare; c too short by 6')
})

test('a kind left by the counts is told with those that would fit but cannot be spared', () => {
  const second = pair('b', 'may', 'may fit', [-1, 2])
  const third = pair('c', 'fits', 'fits')
  expect(holeWhy(facts([fits, second], ['a']))).toBe('b would fit too, but cannot be spared from other holes')
  expect(holeWhy(facts([fits, second, third, far], ['a']))).toBe(
    'b or c would fit too, but cannot be spared from other holes',
  )
})

test('several kinds that can go in are listed', () => {
  expect(holeWhy(facts([fits, pair('b', 'fits', ''), pair('c', 'may', '')], ['a', 'b', 'c']))).toBe(
    'a, b or c can go here',
  )
})

test('bolts that do not go round', () => {
  const text = 'a or b would fit, but there are not enough to go round'
  const pairs = [fits, pair('b', 'may', ''), far]
  expect(holeWhy(facts(pairs, ['a'], { contradicted: true }))).toBe(text)
  expect(holeWhy(facts(pairs, ['a'], { mayBeEmpty: true }))).toBe(text)
})

test('nothing fits: the nearest is named, or that none has the thread', () => {
  expect(holeWhy(facts([far, near], [], { contradicted: true }))).toBe(
    'no kind in the tray fits; nearest is b: too short by 1',
  )
  expect(holeWhy(facts([thread], [], { contradicted: true }))).toBe('no kind in the tray has its thread')
  expect(holeWhy(facts([], []))).toBe('no kind in the tray has its thread')
})

test('what was found is right, may stay, or must change for a reason', () => {
  const pairs = [fits, near, far]
  expect(asFoundWhy('a', 'right', facts(pairs, ['a']))).toBe('a was found here and is the only kind that can be')
  expect(asFoundWhy('a', 'may stay', facts(pairs, ['a', 'x']))).toBe('a was found here and can stay')
  expect(asFoundWhy('c', 'must change', facts(pairs, ['a']))).toBe('c too short by 6')
  expect(asFoundWhy('a', 'must change', facts(pairs, ['x']))).toBe(
    'a would fit here, but then another hole would go without its bolt',
  )
  expect(asFoundWhy('none', 'must change', facts(pairs, ['a']))).toBe('found empty, and a bolt belongs here')
})
