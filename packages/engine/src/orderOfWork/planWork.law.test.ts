import { expect, test } from 'vitest'
import { loadSolver } from '../placement/testing/highs.ts'
import { planWork } from './planWork.ts'
import { brokenRules } from './testing/brokenRules.ts'
import { fewestByModel } from './testing/mixedIntegerPlan.ts'
import { type PlanShape, randomPlan } from './testing/randomPlan.ts'

const LARGE: PlanShape = { jobs: 60, tools: 6, sides: 3, density: 0.12, windows: 2, soaks: 2 }

test('[WO1] on 30 random plans of 60 jobs the order keeps all rules', () => {
  let proven = 0
  let clashing = 0
  for (let seed = 1; seed <= 30; seed += 1) {
    const jobs = randomPlan(seed, { ...LARGE, density: [0.05, 0.12, 0.25][seed % 3]! })
    const plan = planWork(jobs)
    const said = `seed ${seed}`
    expect(plan.atLeast, said).toBeLessThanOrEqual(plan.toolChanges + plan.turns)
    if (plan.proven) proven += 1
    if (!plan.feasible) {
      clashing += 1
      continue
    }
    expect(brokenRules(jobs, plan), said).toEqual([])
  }
  expect(clashing).toBeLessThan(20)
  expect(proven).toBeGreaterThan(5)
})

test('[WO2] on 60 plans of up to 10 jobs the changes of tools and turns are the least, by one mixed-integer model', async () => {
  const solve = await loadSolver()
  let kept = 0
  for (let seed = 1; seed <= 60; seed += 1) {
    const jobs = randomPlan(seed, {
      jobs: seed % 20 === 0 ? 10 : 5 + (seed % 3),
      tools: 3,
      sides: 2,
      density: 0.2,
      windows: seed % 3,
      soaks: seed % 2,
      ends: seed % 4 < 2,
    })
    const plan = planWork(jobs)
    const least = fewestByModel(jobs, solve)
    const said = `seed ${seed}: ${JSON.stringify(jobs)}`
    expect(plan.feasible, said).toBe(least !== null)
    if (least === null) continue
    kept += 1
    expect(brokenRules(jobs, plan), said).toEqual([])
    expect(plan.toolChanges + plan.turns, said).toBe(least)
    expect(plan.proven, said).toBe(true)
  }
  expect(kept).toBeGreaterThan(40)
  expect(kept).toBeLessThan(60)
})
