import type { Assumption, OrderAnswer } from '@gripbook/engine'
import { expect, test } from 'vitest'
import { COVERED, order, tightening } from '../testing/tightening.ts'
import { evenEnough, evenWhen, percentOf } from './spreadWords.ts'
import { tighteningText } from './tighteningText.ts'
import { width } from './width.ts'

const plain = { columns: 80, colour: false }
const textOf = (answer: Parameters<typeof tightening>[0] = {}) =>
  tighteningText(COVERED, tightening(answer), 0.05, plain)
const flowing = (answer: Parameters<typeof tightening>[0] = {}) => textOf(answer).replace(/\s+/g, ' ')

test('the answer of a face with a stated order reads as a whole', () => {
  expect(textOf()).toBe(`Side cover (side)
─────────────────
Keep to the manual’s order in 2 visits of 2 passes: it rules. It leaves the
clamp uneven by 22 %. The most even of the others, corners first, leaves 10 %.
The passes leave 22 %; 2 rounds at full torque after them bring it to 3 %,
within the 5 % wanted.

Before the wrench
  · Start all bolts by hand, dowels and what locates first: 2.
  · Run all down until the heads touch, in each visit its own.

The order, as the manual states it
  Visit 1
    Pass 1, 50 %:   3, 1, 2
    Pass 2, 100 %:  3, 1, 2
  Visit 2
    Pass 1, 50 %:   4
    Pass 2, 100 %:  4
  Then round the edge at full torque until no bolt turns: 2 rounds in the sums.

Torque, pass by pass
  · 5, then 10 N·m: bolts 1, 2 and 4
  · 10, then 20 N·m: bolt 3

All orders             passes     over bed   rounds   bow mm   way m
→ the manual’s order     22 %   18 to 25 %      3 %    0.012     1.2
  corners first          10 %    7 to 12 %      3 %    0.004     2.2
  passes, rounds: how uneven the clamp is after the passes and after the last
  rounds, greatest less least over the mean; over bed: the same after the passes
  from the softest to the stiffest bed.

Lowest and highest
  · After the passes: bolt 1 80 % of its target (4.0 of 5.0 kN), bolt 2 102 % of
    its target (5.1 of 5.0 kN).
  · After the last rounds: bolt 1 100 % of its target (5.0 of 5.0 kN), bolt 4
    103 % of its target (5.2 of 5.0 kN).

What this takes for granted
  · An estimate that ranks orders, no promise of kN: the cover counts as an
    elastic plate on an even bed, and a real casting has walls and ribs.
  · Flat covers only: a warped cover, or sealant that must flow out, is not in
    the sums. They are why shops work from the middle outward.
  · Target load from the torque at middling friction: all bolts.
  · Friction is taken as the same in all bolts. Clean threads and the same oil
    on all of them make it so; one dry thread among them can move its load more
    than any order does.
  · Grid of 4 mm; the sink under a bolt is right to about 1.2 % of the greatest.

The manual’s order, passes and torques rule; this is a check on them. Local
rules and a licensed professional’s judgement come first.
`)
})

test('no line is wider than the screen, and colour changes nothing but colour', () => {
  const assumptions: Assumption[] = [
    { what: 'aluminium' },
    { what: 'bolt stiffness', holes: ['1', '2'] },
    { what: 'usual torque', holes: ['3'] },
    { what: 'unit load' },
    { what: 'thick', bendingLength: 4.2 },
    { what: 'left out', holes: ['4'] },
    { what: 'lift-off', share: 0.031 },
  ]
  for (const columns of [40, 60, 80, 200]) {
    const text = tighteningText(COVERED, tightening({ assumptions }), 0.05, { columns, colour: false })
    expect(Math.max(...text.split('\n').map(width)), `${columns}`).toBeLessThanOrEqual(Math.min(80, columns))
  }
  const coloured = tighteningText(COVERED, tightening(), 0.05, { columns: 80, colour: true })
  expect(coloured).toContain('\u001b[1m')
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the codes are what is taken out
  expect(coloured.replace(/\u001b\[\d+m/g, '')).toBe(textOf())
})

test('a pattern is advised where the search found nothing truly better, with both figures', () => {
  const orders = [
    order({ kind: 'cross', spread: 0.051 }),
    order({ kind: 'round', spread: 0.3 }),
    order({ kind: 'found', spread: 0.049 }),
  ]
  expect(flowing({ orders, advice: { why: 'pattern', order: 0, found: 2 } })).toContain(
    'Tighten crosswise in 2 visits of 2 passes. It leaves the clamp uneven by 5.1 %. The search found nothing truly better: 4.9 % in an order that is harder to remember.',
  )
})

test('where nothing was searched for, or nothing new found, nothing is said of a search', () => {
  const said = flowing({ orders: [order({ kind: 'rails' })], advice: { why: 'pattern', order: 0 } })
  expect(said).toContain('None of the others is truly better.')
  expect(said).toContain('Tighten from the middle of the long sides outward')
})

test('a found order is advised with what it is better than', () => {
  const orders = [order({ kind: 'spiral', spread: 0.2 }), order({ kind: 'found', spread: 0.06 })]
  expect(flowing({ orders, advice: { why: 'found', order: 1, against: 0 } })).toContain(
    'Tighten in the order that was found by search in 2 visits of 2 passes. It leaves the clamp uneven by 6 %, where “from the middle outward” leaves 20 %.',
  )
})

test('bolts that are not run down first are told, and so is what nobody knows', () => {
  const { snug: _, ...loose } = COVERED.faces[0]!
  const text = tighteningText({ ...COVERED, faces: [loose] }, tightening(), 0.05, plain).replace(/\s+/g, ' ')
  expect(text).toContain('The file does not say that this is done ("snug")')
  const unknown = flowing({ assumptions: [{ what: 'unit load' }, { what: 'left out', holes: ['4'] }] })
  expect(unknown).toContain('Mind · Neither thread nor torque is known')
  expect(unknown).toContain('The stated order never comes to bolt 4.')
  expect(unknown).toContain('bolt 1 80 % of its target, bolt 2 102 % of its target.')
})

test('figures from a grid that could not be made fine enough are minded, not taken for granted', () => {
  const said = flowing({ accuracy: { error: 0.31, grid: 20 }, assumptions: [] })
  expect(said).toContain('Mind · Grid of 20 mm; the sink under a bolt is right to about 31 % of the greatest.')
  expect(said.split('Grid of').length).toBe(2)
})

test('what has settled and what still turned is said', () => {
  const settled = { loads: [3000, 4000, 8000, 4000], spread: 0.28 }
  const said = flowing({
    orders: [order({ settled, lastRounds: { count: 10, still: false, loads: [5000, 5100, 9000, 5150], spread: 0.1 } })],
  })
  expect(said).toContain('After the passes, when the surfaces have settled: bolt 1 60 % of its target (3.0 of 5.0 kN)')
  expect(said).toContain('in the sums some still turned after 10 rounds.')
})

test('lines that must stay straight have their bow', () => {
  expect(flowing({ orders: [order({ bows: [{ name: 'valve bore', bow: 0.0042 }] })] })).toContain(
    'Bow · valve bore: 0.004 mm from straight.',
  )
})

test('a torque that is no single figure is not multiplied', () => {
  const face = { ...COVERED.faces[0]!, torque: { atLeast: 9, atMost: 11 } }
  const text = tighteningText({ ...COVERED, faces: [face] }, tightening(), 0.05, plain)
  expect(text).toContain('10, then 20 N·m: bolt 3')
  expect(text).not.toContain('5, then 10 N·m')
})

const ONE_VISIT = order({ passes: order().passes.slice(0, 2), spreads: [0.4, 0.222] })

test.each<[string, Partial<OrderAnswer>, boolean, string]>([
  [
    'by the passes',
    { spreads: [0.2, 0.04], spread: 0.04 },
    true,
    '2 passes leave 4 %, within the 5 % wanted. After the first: 20 %.',
  ],
  [
    'in one pass, just so',
    { passes: ONE_VISIT.passes.slice(1), spreads: [0.05], spread: 0.05 },
    true,
    'One pass leaves 5 %, within the 5 % wanted.',
  ],
  [
    'only by the last rounds',
    {},
    true,
    '2 passes leave 22 %; 2 rounds at full torque after them bring it to 3 %, within the 5 % wanted. After the first: 40 %.',
  ],
  [
    'never',
    { kind: 'cross', lastRounds: { count: 3, still: true, loads: [], spread: 0.08 } },
    false,
    'It stays above the 5 % wanted: 22 % after 2 passes, 8 % after the last rounds. More rounds change nothing: no bolt turns any more, and a wrench loosens none. After the first: 40 %.',
  ],
])('the clamp comes to what is wanted %s', (_how, answer, reached, said) => {
  const one = { ...ONE_VISIT, ...answer }
  expect(evenEnough(one, 0.05)).toBe(reached)
  expect(evenWhen(one, 0.05)).toBe(said)
})

test('shares are rounded to what can be trusted, and nothing is called even that is not', () => {
  expect([0, 0.0001, 0.0123, 0.0994, 0.0996, 0.37, 1.5].map(percentOf)).toEqual([
    '0 %',
    'under 0.1 %',
    '1.2 %',
    '9.9 %',
    '10 %',
    '37 %',
    '150 %',
  ])
})
