import { expect, test } from 'vitest'
import { type Bounds, canHold, greatest, type Row } from './exactLinear.ts'
import { loadSolver } from './highs.ts'
import { random } from './random.ts'

const open: Bounds = { lo: 0, hi: Number.POSITIVE_INFINITY }

test('a tie holds, and one unit past it does not', () => {
  const rows = (most: number): Row[] => [
    {
      terms: [
        [0, 1],
        [1, -1],
      ],
      atMost: 0,
    },
    {
      terms: [
        [1, 1],
        [0, -1],
      ],
      atMost: most,
    },
  ]
  expect(canHold([open, open], rows(0))).toBe(true)
  expect(canHold([open, open], rows(-1))).toBe(false)
})

test('the greatest value is a fraction where it has to be, and has no end where nothing holds it', () => {
  const rows: Row[] = [
    {
      terms: [
        [0, 2],
        [1, 1],
      ],
      atMost: 4,
    },
    {
      terms: [
        [0, 1],
        [1, 2],
      ],
      atMost: 4,
    },
  ]
  expect(
    greatest([open, open], rows, [
      [0, 1],
      [1, 1],
    ]),
  ).toBeCloseTo(8 / 3, 12)
  expect(
    greatest(
      [open, open],
      [
        {
          terms: [
            [0, 1],
            [1, -1],
          ],
          atMost: 3,
        },
      ],
      [[0, 1]],
    ),
  ).toBe(Number.POSITIVE_INFINITY)
  expect(greatest([open], [{ terms: [[0, 1]], atMost: -1 }], [[0, 1]])).toBeNull()
})

test('800 random programs have the same answer from HiGHS', async () => {
  const solve = await loadSolver()
  let held = 0
  for (let seed = 1; seed <= 800; seed += 1) {
    const draw = random(seed)
    const bounds: Bounds[] = Array.from({ length: draw.whole(2, 7) }, () => {
      const lo = draw.whole(0, 20)
      return { lo, hi: lo + draw.whole(0, 30) }
    })
    const terms = () =>
      bounds.flatMap((_, at) => (draw.chance(0.5) ? [[at, draw.pick([-1, 1])] as [number, number]] : []))
    const rows: Row[] = Array.from({ length: draw.whole(2, 9) }, () => ({
      terms: terms(),
      atMost: draw.whole(-6, 30),
    }))
    const objective = terms()
    const sum = (of: Row['terms'], turn = 1) =>
      `0 z ${of.map(([at, factor]) => `${factor * turn < 0 ? '-' : '+'} v${at}`).join(' ')}`
    const lines = rows.map(({ terms: of, atMost }, at) => ` r${at}: ${sum(of)} <= ${atMost}`)
    const ends = bounds.map(({ lo, hi }, at) => ` ${lo} <= v${at} <= ${hi}`)
    const answer = solve(
      `min\n obj: ${sum(objective, -1)}\nst\n${lines.join('\n')}\nbounds\n 0 <= z <= 0\n${ends.join('\n')}\nend\n`,
    )
    const best = greatest(bounds, rows, objective)
    expect(answer.status === 'optimal', `seed ${seed}`).toBe(best !== null)
    expect(canHold(bounds, rows)).toBe(best !== null)
    if (best === null) continue
    held += 1
    const theirs = objective.reduce((total, [at, factor]) => total + factor * (answer.values[`v${at}`] ?? 0), 0)
    expect(best, `seed ${seed}`).toBeCloseTo(theirs, 6)
  }
  expect(held).toBeGreaterThan(200)
})
