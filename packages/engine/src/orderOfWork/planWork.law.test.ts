import { expect, test } from 'vitest'
import { loadSolver } from '../placement/testing/highs.ts'
import { planWork } from './planWork.ts'
import { brokenRules } from './testing/brokenRules.ts'
import { fewestByModel } from './testing/mixedIntegerPlan.ts'
import { type PlanShape, randomPlan, underWay } from './testing/randomPlan.ts'

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

test('[WO1] on 300 random plans under way, windows running, all that is left is planned, each job after those that it waits for', () => {
  let several = 0
  for (let seed = 1; seed <= 300; seed += 1) {
    const shape = { jobs: 8 + (seed % 20), tools: 3, sides: 2, density: 0.1, windows: 2 + (seed % 6), soaks: seed % 3 }
    const jobs = underWay(seed, randomPlan(seed, { ...shape, ends: seed % 2 === 0 }))
    const left = new Set(jobs.filter(({ done }) => done !== true).map(({ id }) => id))
    const running = jobs.filter(
      ({ done, window }) => done && window?.minutes && window.until.some((id) => left.has(id)),
    )
    if (running.length > 1) several += 1
    const plan = planWork(jobs)
    const said = `seed ${seed}`
    if (plan.clashes.some(({ what }) => what === 'circle')) continue
    expect(new Set(plan.order.map(({ job }) => job)), said).toEqual(left)
    const at = new Map(plan.order.map(({ job }, i) => [job, i]))
    for (const { id, after = [], buries = [] } of jobs)
      for (const earlier of [...after, ...buries])
        if (left.has(earlier)) expect(at.get(earlier), said).toBeLessThan(at.get(id)!)
  }
  expect(several).toBeGreaterThan(60)
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
