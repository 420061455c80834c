import { expect, test } from 'vitest'
import { contractRows } from './contractRows.ts'
import { generateUnit } from './generateUnit.ts'
import { nanometres } from './wholeNanometres.ts'

test('in 500 generated units the true values lie in every stated range and keep every line', () => {
  for (let seed = 1; seed <= 500; seed += 1) {
    const { unit, truth, values } = generateUnit(seed, { stated: true })
    const face = unit.faces[0]!
    // The true values as a face that states them exactly, beside the face as it was read.
    const exact = {
      ...face,
      trials: [],
      holes: face.holes.map(({ behind, ...hole }) => ({
        ...hole,
        ...values.holes[hole.id]!,
        ...(behind === undefined ? { behind: 1000 } : {}),
      })),
      kinds: face.kinds!.map((kind) => ({ ...kind, ...values.kinds[kind.id]! })),
    }
    const rows = contractRows(exact)
    const point = rows.variables.map(({ lo }) => lo)
    const all = [
      ...rows.holeFacts.flat(),
      ...rows.kindFacts.flat(),
      ...rows.rankFacts,
      ...face.holes.flatMap(
        ({ id }, hole) =>
          rows.fitRows(
            hole,
            face.kinds!.findIndex((kind) => kind.id === truth[id]),
            'lowest',
          )!,
      ),
    ]
    for (const { terms, atMost } of all)
      expect(
        terms.reduce((sum, [at, factor]) => sum + factor * point[at]!, 0),
        `seed ${seed}`,
      ).toBeLessThanOrEqual(atMost)

    const stated = contractRows({
      ...face,
      ranks: [...face.holes.map(({ id }) => ({ quantity: 'grip' as const, less: id, more: id }))],
    })
    for (const [hole, { terms }] of stated.rankFacts.entries()) {
      const { lo, hi } = stated.variables[terms[0]![0]]!
      const grip = nanometres(values.holes[face.holes[hole]!.id]!.grip)
      expect(grip).toBeGreaterThanOrEqual(lo)
      expect(grip).toBeLessThanOrEqual(hi)
    }
    for (const kind of face.kinds!) {
      const belong = Object.values(truth).filter((id) => id === kind.id).length
      expect(kind.count).toBeGreaterThanOrEqual(belong)
    }
  }
})
