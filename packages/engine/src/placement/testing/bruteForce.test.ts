import { expect, test } from 'vitest'
import { intervalOf } from '../../quantity/interval.ts'
import type { Quantity } from '../../quantity/quantity.ts'
import type { Face, Unit } from '../../unit.ts'
import { bruteForce, pairAlone } from './bruteForce.ts'
import { contractRows } from './contractRows.ts'
import { smallUnit } from './generateFace.ts'
import { loadSolver } from './highs.ts'
import { mixedInteger } from './mixedInteger.ts'
import { random } from './random.ts'

const trayOf = (unit: Unit) => [...(unit.faces[0]!.kinds ?? []), ...(unit.kinds ?? [])]

/** Hole A clamps 20 mm, hole B about 30 mm; both M6, 12 mm of thread, bottom at 16 mm. */
const twoHoles: Face = {
  id: 'two',
  minimumEngagement: 6,
  holes: [
    { id: 'A', thread: 'M6', grip: 20, threadDepth: 12, bottomDepth: 16, asFound: 'long' },
    { id: 'B', thread: 'M6', grip: { value: 30, plusMinus: 0.5 }, threadDepth: 12, bottomDepth: 16, asFound: 'short' },
  ],
  kinds: [
    { id: 'short', thread: 'M6', length: 30, tip: 1, count: 1 },
    { id: 'long', thread: 'M6', length: 40, tip: 1, count: 1 },
  ],
}

test('two swapped bolts are two changes', () => {
  const answer = bruteForce(twoHoles)
  expect(answer.may).toEqual({ A: ['short'], B: ['long'] })
  expect(answer.changes).toBe(2)
  expect(answer.missing).toBe(0)
})

test('one bolt too few leaves one hole empty, and the other keeps its own', () => {
  const answer = bruteForce({ ...twoHoles, kinds: [{ ...twoHoles.kinds![0]!, count: 0 }, twoHoles.kinds![1]!] })
  expect(answer.feasible).toBe(false)
  expect(answer.missing).toBe(1)
  expect(answer.may).toEqual({ A: [], B: ['long'] })
  expect(answer.canFill(['A'])).toBe(false)
  expect(answer.canFill(['B'])).toBe(true)
})

test('one length per kind: a kind that could be either length cannot be both', () => {
  const kinds = [{ id: 'k', thread: 'M6', length: { atLeast: 29, atMost: 41 }, tip: 1 }]
  const alone = contractRows({ ...twoHoles, kinds })
  expect([pairAlone(alone, 0, 0), pairAlone(alone, 1, 0)]).toEqual(['may', 'may'])
  const answer = bruteForce({ ...twoHoles, kinds })
  expect(answer.feasible).toBe(false)
  expect(answer.missing).toBe(1)
  expect(answer.may).toEqual({ A: ['k'], B: ['k'] })
})

test('a rank line holds at a tie and excludes past it; a ring never holds', () => {
  const kinds = [{ id: 'k', thread: 'M6', length: 30, tip: 1 }]
  const holes = [
    { id: 'A', thread: 'M6', grip: 20, threadDepth: 12, bottomDepth: 16 },
    { id: 'B', thread: 'M6', grip: { atLeast: 14, atMost: 20 }, threadDepth: 12, bottomDepth: 16 },
  ]
  const face = { id: 'f', minimumEngagement: 6, holes, kinds }
  const line = { quantity: 'grip', less: 'A', more: 'B' } as const
  const back = { quantity: 'grip', less: 'B', more: 'A' } as const
  expect(bruteForce({ ...face, ranks: [line] }).feasible).toBe(true)
  expect(bruteForce({ ...face, ranks: [back] }).feasible).toBe(true)
  expect(bruteForce({ ...face, ranks: [line, back] }).missing).toBeNull()
  expect(
    bruteForce({ ...face, ranks: [{ ...line, less: 'B', more: 'A' }], holes: [{ ...holes[0]!, grip: 13 }, holes[1]!] })
      .missing,
  ).toBeNull()
})

test('a pair fits with its last hundredth and may without it', () => {
  const verdict = (grip: number, plusMinus: number) =>
    pairAlone(
      contractRows({
        id: 'f',
        minimumEngagement: 6,
        holes: [{ id: 'A', thread: 'M6', grip: { value: grip, plusMinus }, threadDepth: 9, bottomDepth: 10 }],
        kinds: [{ id: 'k', thread: 'M6', length: 30, tip: 1, threadLength: 28 }],
      }),
      0,
      0,
    )
  expect(verdict(21.5, 1.5)).toBe('fits')
  expect(verdict(21.5, 1.51)).toBe('may')
  expect(verdict(18, 1.99)).toBe('cannot')
  expect(verdict(18, 2)).toBe('may')
})

test('on 300 small faces the enumeration and the mixed-integer model agree', async () => {
  const solve = await loadSolver()
  let compared = 0
  for (let seed = 1; compared < 300; seed += 1) {
    const unit = smallUnit(seed)
    const face = unit.faces[0]!
    const tray = trayOf(unit)
    // The model wants an end on every grip or on every length.
    const unended = (quantity: Quantity | undefined) => intervalOf(quantity).hi === Number.POSITIVE_INFINITY
    if (face.holes.some(({ grip }) => unended(grip)) && tray.some(({ length }) => unended(length))) continue
    compared += 1
    const slow = bruteForce(face, tray)
    const model = mixedInteger(face, solve, tray)
    const said = { feasible: model.feasible(), changes: model.fewestChanges(), missing: model.fewestEmpty() }
    expect(said, `seed ${seed}: ${JSON.stringify(unit)}`).toEqual({
      feasible: slow.feasible,
      changes: slow.changes,
      missing: slow.missing,
    })
    if (!slow.feasible) continue
    for (const { id } of face.holes)
      expect(
        tray.map((kind) => kind.id).filter((kind) => model.may(id, kind)),
        `seed ${seed}, hole ${id}: ${JSON.stringify(unit)}`,
      ).toEqual(slow.may[id])
  }
})

test('no sampled value contradicts the verdict of a pair', () => {
  const seen = { fits: 0, may: 0, cannot: 0 }
  for (let seed = 1; seed <= 150; seed += 1) {
    const unit = smallUnit(seed)
    const rows = contractRows({ ...unit.faces[0]!, ranks: [] }, trayOf(unit))
    const draw = random(seed)
    for (const hole of rows.holes.keys()) {
      for (const kind of rows.kinds.keys()) {
        const verdict = pairAlone(rows, hole, kind)
        seen[verdict] += 1
        if (!rows.compatible(hole, kind) || verdict === 'may') continue
        const trials = rows.trialFacts.filter((trial) => trial.hole === hole && trial.kind === kind)
        const facts = [...rows.holeFacts[hole]!, ...rows.kindFacts[kind]!, ...trials.flatMap((trial) => trial.rows)]
        const lines = rows.fitRows(hole, kind, verdict === 'fits' ? 'highest' : 'lowest')!
        for (let sample = 0; sample < 300; sample += 1) {
          const values = rows.variables.map(({ lo, hi }) =>
            draw.chance(0.3)
              ? lo
              : draw.chance(0.3)
                ? Math.min(hi, 6e7)
                : draw.between(lo, Math.min(hi, Math.max(lo, 6e7))),
          )
          const holds = (row: (typeof lines)[number]) =>
            row.terms.reduce((total, [at, factor]) => total + factor * values[at]!, 0) <= row.atMost + 1e-3
          if (!facts.every(holds)) continue
          expect(lines.every(holds), `seed ${seed}, hole ${hole}, kind ${kind}`).toBe(verdict === 'fits')
        }
      }
    }
  }
  expect(Math.min(...Object.values(seen))).toBeGreaterThan(50)
})
