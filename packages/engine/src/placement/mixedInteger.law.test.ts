import { expect, test } from 'vitest'
import { place } from './place.ts'
import { loadSolver } from './testing/highs.ts'
import { mixedInteger } from './testing/mixedInteger.ts'
import { troubledUnit } from './testing/troubledUnit.ts'

test('[PL2] on 200 faces of 15 to 25 holes the answer is that of one mixed-integer model of the whole face', async () => {
  const solve = await loadSolver()
  const tools = { solver: async () => solve }
  let feasible = 0
  for (let seed = 1; seed <= 200; seed += 1) {
    const unit = troubledUnit(seed)
    const face = unit.faces[0]!
    const answer = (await place(unit, tools)).faces[0]!
    const model = mixedInteger(face, solve)
    const said = `seed ${seed}: ${JSON.stringify(unit)}`
    const missing = model.fewestEmpty()
    expect(answer.feasible, said).toBe(missing === 0)
    if (missing !== null) expect(answer.missing, said).toBe(missing)
    if (!answer.feasible) continue
    feasible += 1
    expect(answer.changes.count, said).toBe(model.fewestChanges())
    const order = face.kinds!.map(({ id }) => id)
    const may = Object.entries(answer.holes).map(([id, hole]) => [id, order.filter((kind) => hole.may.includes(kind))])
    expect(Object.fromEntries(may), said).toEqual(model.everyMay())
  }
  expect(feasible).toBeGreaterThan(60)
  expect(feasible).toBeLessThan(180)
})
