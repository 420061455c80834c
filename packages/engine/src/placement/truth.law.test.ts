import { expect, test } from 'vitest'
import { place } from './place.ts'
import { generateUnit } from './testing/generateUnit.ts'
import { loadSolver } from './testing/highs.ts'
import { random } from './testing/random.ts'

test('[PL7] 10000 generated units of 6 to 40 holes keep their true placement', async () => {
  const solve = await loadSolver()
  const tools = { solver: async () => solve }
  for (let seed = 1; seed <= 10_000; seed += 1) {
    // Small faces are quick; one in forty is of a usual size and one in two hundred a large one.
    const draw = random(seed)
    const holes = seed % 200 === 0 ? draw.whole(15, 40) : seed % 40 === 0 ? draw.whole(9, 14) : draw.whole(6, 8)
    const { unit, truth } = generateUnit(seed, { holes })
    const answer = (await place(unit, tools)).faces[0]!
    const excluded = Object.entries(truth).filter(([hole, kind]) => !answer.holes[hole]!.may.includes(kind))
    if (answer.feasible && excluded.length === 0) continue
    expect.fail(
      `seed ${seed}: feasible ${answer.feasible}, true kinds excluded ${JSON.stringify(excluded)}: ${JSON.stringify(unit)}`,
    )
  }
})
