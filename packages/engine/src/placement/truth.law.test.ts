import { expect, test } from 'vitest'
import { place } from './place.ts'
import { generateUnit } from './testing/generateUnit.ts'
import { loadSolver } from './testing/highs.ts'

test('[PL7] 10000 generated units keep their true placement', async () => {
  const solve = await loadSolver()
  const tools = { solver: async () => solve }
  for (let seed = 1; seed <= 10_000; seed += 1) {
    const { unit, truth } = generateUnit(seed)
    const answer = (await place(unit, tools)).faces[0]!
    const excluded = Object.entries(truth).filter(([hole, kind]) => !answer.holes[hole]!.may.includes(kind))
    if (answer.feasible && excluded.length === 0) continue
    expect.fail(
      `seed ${seed}: feasible ${answer.feasible}, true kinds excluded ${JSON.stringify(excluded)}: ${JSON.stringify(unit)}`,
    )
  }
})
