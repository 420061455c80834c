import { expect, test } from 'vitest'
import { place } from './place.ts'
import { disagreements } from './testing/disagreements.ts'
import { smallUnit } from './testing/generateFace.ts'
import { loadSolver } from './testing/highs.ts'

test('[PL1] [PL9] [PL10] [PL11] on 2000 random small faces the answer is that of enumerating all placements', async () => {
  const solve = await loadSolver()
  const tools = { solver: async () => solve }
  const seen = { feasible: 0, not: 0, open: 0, changed: 0 }
  for (let seed = 1; seed <= 2000; seed += 1) {
    const unit = smallUnit(seed)
    const answer = (await place(unit, tools)).faces[0]!
    expect(disagreements(unit, answer), `seed ${seed}: ${JSON.stringify(unit)}`).toEqual([])
    seen[answer.feasible ? 'feasible' : 'not'] += 1
    if (answer.feasible && Object.values(answer.holes).some(({ verdict }) => verdict === 'open')) seen.open += 1
    if (answer.changes.count > 0) seen.changed += 1
  }
  expect(Math.min(...Object.values(seen))).toBeGreaterThan(300)
})
