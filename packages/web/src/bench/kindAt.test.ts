import type { FaceAnswer, HoleAnswer } from '@gripbook/engine'
import { expect, test } from 'vitest'
import { belongsBy, kindAt } from './kindAt.ts'
import { otherIn, shortOf } from './short.ts'

const hole = (answer: Partial<HoleAnswer>): HoleAnswer => ({
  verdict: 'settled',
  may: [],
  likely: {},
  best: null,
  why: '',
  ...answer,
})
const answer = (more: Partial<FaceAnswer>): FaceAnswer => ({
  face: 'pan',
  feasible: true,
  holes: {},
  pairs: [],
  conflict: null,
  changes: { count: 0, cycles: [] },
  missing: 0,
  leftOver: {},
  wanted: [],
  next: null,
  likelihood: { method: 'exact' },
  ...more,
})
const KINDS = ['a', 'b', 'c'].map((id) => ({ id, thread: 'M8' }))
const HOLE = { id: '1', thread: 'M8', asFound: 'b' }
const pair = (h: string, kind: string, verdict: 'fits' | 'may' | 'cannot') =>
  ({ hole: h, kind, verdict, line: 'bottom', why: `${kind} in ${h}`, margin: null }) as const

test('what was put there goes before what belongs, and what is settled needs no choice', () => {
  const settled = answer({ holes: { 1: hole({ may: ['a'] }) } })
  expect(kindAt(HOLE, 'c', settled, KINDS)).toEqual({ kind: 'c', choices: [] })
  expect(kindAt(HOLE, undefined, settled, KINDS)).toEqual({ kind: 'a', choices: [] })
})

test('what is open is chosen by the person, the likeliest first and nothing chosen for them', () => {
  const open = answer({
    holes: { 1: hole({ verdict: 'open', may: ['a', 'b'], likely: { a: 0.3, b: 0.7 }, best: 'b' }) },
  })
  expect(kindAt(HOLE, undefined, open, KINDS)).toEqual({
    kind: null,
    choices: [
      { kind: 'b', hint: 'likeliest' },
      { kind: 'a', hint: null },
    ],
  })
})

test('without an answer, and where nothing fits as it was read, the whole tray may be chosen', () => {
  const wrong = answer({ holes: { 1: hole({ verdict: 'contradicted' }) } })
  for (const given of [null, wrong]) {
    const { kind, choices } = kindAt(HOLE, undefined, given, KINDS)
    expect(kind).toBeNull()
    expect(choices.map((choice) => choice.hint)).toEqual([null, 'as found', null])
  }
  expect(kindAt(HOLE, undefined, null, KINDS.slice(0, 1)).kind).toBe('a')
})

test('a contradicted hole stops no bolt: its readings are in doubt', () => {
  const both = answer({ holes: { 1: hole({ verdict: 'contradicted' }), 2: hole({ may: ['a'] }) } })
  expect(belongsBy('pan', both)).toEqual({ belongs: { pan: { 2: ['a'] } } })
  expect(belongsBy('pan', null)).toEqual({})
})

test('another bolt that is in: whether it fits, and which hole would be short of it', () => {
  const known = answer({
    holes: { 1: hole({ may: ['a'] }), 2: hole({ may: ['b'] }) },
    pairs: [pair('1', 'b', 'fits'), pair('1', 'c', 'cannot')],
  })
  expect(otherIn(known, '1', 'b')).toEqual({ verdict: 'fits', why: 'b in 1', shortOf: ['2'] })
  expect(otherIn({ ...known, leftOver: { b: 1 } }, '1', 'b').shortOf).toEqual([])
  expect(otherIn(known, '1', 'c')).toMatchObject({ verdict: 'cannot', shortOf: [] })
  expect(otherIn(null, '1', 'b')).toEqual({ verdict: 'may', why: null, shortOf: [] })
})

test('one short: where the others went, which of them do not belong there, what fits instead, what to get', () => {
  const placed = (kind: string) => ({ placed: { value: kind, event: 'e', who: 'w', at: '' }, steps: {} })
  const known = answer({
    holes: { 1: hole({ may: ['a'] }), 2: hole({ may: ['b'] }), 3: hole({ may: ['a'] }) },
    pairs: [pair('2', 'a', 'cannot'), pair('3', 'a', 'fits'), pair('1', 'c', 'fits'), pair('1', 'b', 'fits')],
    leftOver: { c: 1, b: 0 },
    wanted: [{ hole: '1', thread: 'M8', lengths: [30], why: '' }],
  })
  const face = { id: 'pan', holes: [HOLE], kinds: KINDS }
  const folded = {
    unit: { gripbook: 'unit/1', faces: [face] },
    faces: { pan: { holes: { 1: { steps: {} }, 2: placed('a'), 3: placed('a') } } },
  } as const
  expect(shortOf(folded as never, face, known, '1', 'a')).toEqual({
    placed: ['2', '3'],
    wrong: ['2'],
    wanted: 2,
    instead: ['c'],
    sizes: ['M8×30'],
    otherFaces: [],
  })
})
