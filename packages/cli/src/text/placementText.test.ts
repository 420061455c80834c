import { describe, expect, test } from 'vitest'
import { FULL_FACE, face, hole, placement, UNIT } from '../testing/answers.ts'
import { atAGlance } from './glance.ts'
import { placementText } from './placementText.ts'
import { width } from './width.ts'

const plain = { columns: 80, colour: false }
const glance = (answer: Parameters<typeof face>[0]) =>
  atAGlance(face(answer), new Map(UNIT.faces[0]!.kinds!.map((kind) => [kind.id, kind])))

test('the answer of a face reads as a whole', () => {
  expect(placementText(UNIT, placement(FULL_FACE), plain)).toBe(`Pump cover (pump-cover)
───────────────────────
Nothing in the tray fits hole 7. Check the thread depth of hole 7 first. Swap 4
and 9. Taken as read, hole 7 wants M6×30, you have none. Measure hole 1 (grip)
to settle 1.

  4 holes: 2 settled, 1 open, 1 contradicted.
  1  ◐ open          b1 (M6×45) 72 % or b2 (M6×40) 28 %; found b1 (M6×45):
                     ◐ may stay
       b1 or b2 can go here.
  4  ● settled       b1 (M6×45)  found b2 (M6×40): ✗ must change
       b2 too short: only 4.1 mm of thread at best, 7.5 needed.
       b1 fits: 1 mm more thread than needed, at worst.
  7  ✗ contradicted  no bolt
       no kind in the tray fits.
  9  ● settled       b2 (M6×40)  found b1 (M6×45): ✗ must change
       b1 bottoms out: the tip meets the bottom 3.2 mm before the head seats.
       b2 fits: 1 mm more thread than needed, at worst.

Contradiction
  nothing in the tray fits hole 7.
  To doubt, the likeliest first:
  1. 80 %: the thread depth of hole 7 may be wrong.
  2. 20 %: there may be more of b1.

Moves
  · 4 and 9: take both bolts out; b1 (M6×45) into 4, b2 (M6×40) into 9.

To get
  · hole 7: M6×30 would fill it, you have none to spare.

Left over
  · 2 of b3 (M6×25): would fit a hole of Oil pan

Next reading
  · measure the grip of hole 1: likely to settle 1. About one minute.

A check, not a permission: torques, limits and orders of the service manual
rule, and local rules and a licensed professional’s judgement come first.
`)
})

test('holes that another standard length would fill as well are counted apart', () => {
  const settled = (proven: boolean) => hole({ verdict: 'settled', may: ['b1'], proven })
  const text = (holes: Record<string, ReturnType<typeof hole>>) =>
    placementText(UNIT, placement(face({ holes })), plain)
  expect(text({ '1': settled(true), '4': settled(false) })).toContain(
    "2 holes: 2 settled. Readings alone settle 1; for the other 1 the tray's\n  contents count too.",
  )
  expect(text({ '1': settled(false) })).toContain(
    "1 hole: 1 settled. All by readings and the tray's contents together.",
  )
  expect(text({ '1': settled(true) })).toContain('1 hole: 1 settled.\n')
})

describe('at a glance', () => {
  const right = { kind: 'b1', verdict: 'right', why: '' } as const
  test.each<[string, Parameters<typeof face>[0], string]>([
    [
      'all as found',
      { holes: { '1': hole({ verdict: 'settled', may: ['b1'], asFound: right }) } },
      'Nothing to change: every bolt sat where it belongs.',
    ],
    [
      'all settled, nothing known of before',
      { holes: { '1': hole({ verdict: 'settled', may: ['b1'] }) } },
      'Every hole has its bolt.',
    ],
    [
      'an open hole and no reading that helps',
      { holes: { '1': hole({ verdict: 'open', may: ['b1', 'b2'] }) } },
      'Nothing must change. One hole is open still.',
    ],
    [
      'a bolt from the tray',
      { changes: { count: 1, cycles: [[{ hole: '4', from: 'b3', to: 'b2' }]] } },
      'Put b2 (M6×40) in 4.',
    ],
    [
      'an empty hole filled',
      { changes: { count: 1, cycles: [[{ hole: '4', from: 'none', to: 'b2' }]] } },
      'Put b2 (M6×40) in 4.',
    ],
    [
      'a hole that must be empty',
      { changes: { count: 1, cycles: [[{ hole: '4', from: 'b2', to: 'none' }]] } },
      'Empty 4.',
    ],
    [
      'three in a round',
      {
        changes: {
          count: 3,
          cycles: [
            [
              { hole: '1', from: 'b1', to: 'b2' },
              { hole: '4', from: 'b2', to: 'b3' },
              { hole: '7', from: 'b3', to: 'b1' },
            ],
          ],
        },
      },
      'Move round 1 → 7 → 4 → 1.',
    ],
    [
      'a chain from the tray',
      {
        changes: {
          count: 2,
          cycles: [
            [
              { hole: '1', from: 'b1', to: 'b2' },
              { hole: '4', from: 'b3', to: 'b1' },
            ],
          ],
        },
      },
      'Put b2 (M6×40) in 1, move the bolt of 1 to 4.',
    ],
    [
      'a bolt of which there are too few',
      { wanted: [{ hole: '7', thread: 'M6', lengths: [40], why: '' }] },
      'Hole 7 wants M6×40, you have too few.',
    ],
    [
      'several that would do',
      { wanted: [{ hole: '7', thread: 'M6', lengths: [30, 35], why: '' }] },
      'Hole 7 wants M6×30 or M6×35, you have none.',
    ],
    [
      'none that would do',
      { wanted: [{ hole: '7', thread: 'M6', lengths: [], why: '' }] },
      'Hole 7 stays empty: no standard M6 fits it as it was read.',
    ],
    [
      'two holes that clash',
      {
        conflict: {
          holes: ['1', '4'],
          kinds: ['b1'],
          short: 1,
          why: 'holes 1 and 4 can take only b1, of which there is 1',
          doubt: [{ statements: [{ what: 'count', of: 'b1' }], why: '', likely: 1 }],
        },
      },
      'Holes 1 and 4 can take only b1, of which there is 1. Count b1 again first.',
    ],
    [
      'ranks that clash',
      {
        conflict: {
          holes: ['1', '4', '7'],
          kinds: [],
          short: 0,
          why: '“grip of 1 is less than of 4” and “grip of 4 is less than of 1” cannot all be true',
          doubt: [{ statements: [{ what: 'rank', quantity: 'grip', less: '1', more: '4' }], why: '', likely: 1 }],
        },
      },
      '“grip of 1 is less than of 4” and “grip of 4 is less than of 1” cannot all be true. Compare the grip of 1 and 4 again first.',
    ],
    [
      'a reading by turns',
      {
        next: {
          reading: { quantity: 'turns', of: '4', place: 'hole', kind: 'b1' },
          bits: 1,
          settles: [],
          minutes: 0.5,
          why: '',
        },
      },
      'Count the turns of b1 in hole 4 next: it says most of what is still open.',
    ],
  ])('%s', (_what, answer, said) => {
    expect(glance(answer).replaceAll('\u00a0', ' ')).toBe(said)
  })
})

test('a round of three is told so that two hands can do it', () => {
  const cycles = [
    [
      { hole: '1', from: 'b1', to: 'b2' },
      { hole: '4', from: 'b2', to: 'b3' },
      { hole: '7', from: 'b3', to: 'b1' },
    ],
  ]
  const text = placementText(UNIT, placement(face({ changes: { count: 3, cycles } })), { columns: 200, colour: false })
  expect(text.replace(/\s+/g, ' ')).toContain(
    '1, 4, 7: take b1 (M6×45) out of 1 and lay it aside; b2 (M6×40) from 4 into 1; b3 (M6×25) from 7 into 4; the one laid aside into 7.',
  )
})

test('no line is wider than the screen, whatever the names are', () => {
  const tall = '油圧制御弁本体締結穴その一'
  const long = 'Vorgelegewellenlagerdeckelverschraubung'.repeat(3)
  const unit = structuredClone(UNIT)
  unit.faces[0]!.name = `変速機カバー ${long}`
  unit.faces[0]!.holes[0]!.id = tall
  unit.faces[0]!.kinds![0]!.id = long
  const answer = structuredClone(FULL_FACE)
  answer.holes[tall] = hole({
    verdict: 'settled',
    may: [long],
    asFound: { kind: 'b2', verdict: 'must change', why: long },
  })
  for (const columns of [30, 47, 80, 100]) {
    for (const line of placementText(unit, placement(answer), { columns, colour: false }).split('\n')) {
      expect(width(line), line).toBeLessThanOrEqual(columns)
    }
  }
})

test('colour only adds to what stands there without it', () => {
  const coloured = placementText(UNIT, placement(FULL_FACE), { columns: 80, colour: true })
  expect(coloured).toContain('\u001b[31m✗ contradicted\u001b[0m')
  const bare = coloured.split('\u001b').map((piece, i) => (i === 0 ? piece : piece.replace(/^\[\d+m/, '')))
  expect(bare.join('')).toBe(placementText(UNIT, placement(FULL_FACE), plain))
})

test('what is empty is not printed', () => {
  const text = placementText(
    UNIT,
    placement(face({ holes: { '1': hole({ verdict: 'settled', may: ['b1'] }) } })),
    plain,
  )
  for (const title of ['Moves', 'To get', 'Left over', 'Next reading', 'Contradiction', 'How sure', 'found'])
    expect(text).not.toContain(title)
})

test('sampled shares say how far off they may be', () => {
  const text = placementText(UNIT, placement(face({ likelihood: { method: 'sampled', standardError: 0.006 } })), plain)
  expect(text).toContain('The shares are sampled, each within about 1.2 points of a hundred.')
})
